/**
 * Stations along a drive with its finished heights and grades.
 *
 * Units   metres; grades rise over run, positive climbs towards the building.
 */
import type { Vehicle } from "../document/schema";
import { type Point, pointAlong } from "../geometry";
import type {
  DriveNodeResult,
  DriveResult,
  DriveStation,
  UndersideResult,
  VerticalCurve,
} from "../solve/results";
import {
  type DriveLine,
  type DriveNode,
  driveHeight,
  drivePieces,
  gradeChange,
  type LinearHeight,
} from "./drive-line";
import { tightestPlaces } from "./underside";

/** Distance between stations, m; bends and the landing's edge are stations as well. */
const stationSpacing = 1.5;

/** What of the stations doesn't depend on the floor. */
export interface DriveProfile {
  readonly line: DriveLine;
  readonly distances: readonly number[];
  readonly places: readonly Point[];
  readonly existing: readonly number[];
  readonly heights: readonly LinearHeight[];
}

/** Lays the stations out; `groundHeight` answers for the ground as it is. */
export function driveProfile(line: DriveLine, groundHeight: (at: Point) => number): DriveProfile {
  const distances = stations(line.length, [
    ...line.distances,
    line.length - line.landing,
    ...line.nodes.flatMap(({ at, half }) => (half > 0 ? [at - half, at, at + half] : [at])),
  ]);
  const places = distances.map((distance) => pointAlong(line.line, distance).at);
  return {
    line,
    distances,
    places,
    existing: places.map(groundHeight),
    heights: distances.map((distance) => driveHeight(line, distance)),
  };
}

/** Even stations from 0 to `length` with the breaks among them, no two closer than a centimetre. */
export function stations(length: number, breaks: readonly number[]): number[] {
  const pieces = Math.max(1, Math.round(length / stationSpacing));
  const even = Array.from({ length: pieces + 1 }, (_, i) => (length * i) / pieces);
  const kept = breaks.filter((distance) => distance >= 0 && distance <= length);
  const tooNear = (a: number) => kept.some((b) => Math.abs(a - b) < 0.3);
  const all = [...kept, ...even.filter((distance) => !tooNear(distance))].sort((a, b) => a - b);
  return all.filter((distance, i) => i === 0 || distance - (all[i - 1] as number) > 0.01);
}

/** What a drive is held against. */
export interface DriveLimits {
  readonly steepest: number;
  readonly vehicle: Vehicle | null;
}

const noDriveLimits: DriveLimits = { steepest: Number.POSITIVE_INFINITY, vehicle: null };

/** The drive at a floor height. */
export function driveResult(
  profile: DriveProfile,
  floor: number,
  limits: DriveLimits = noDriveLimits,
): DriveResult {
  const { line, distances, places, existing, heights } = profile;
  const finished = heights.map(({ base, share }) => base + share * floor);
  const list = distances.map((distance, i): DriveStation => {
    const next = distances[i + 1];
    const rise = (finished[i + 1] ?? 0) - (finished[i] as number);
    return {
      distance,
      at: [...(places[i] as Point)],
      existing: existing[i] as number,
      finished: finished[i] as number,
      grade: next === undefined ? null : rise / (next - distance),
    };
  });
  const pieces = drivePieces(line, floor);
  // Between its curves a drive runs at its pieces' grades, and nowhere steeper.
  const steepest = pieces.reduce((best, one) => (Math.abs(one.grade) > Math.abs(best.grade) ? one : best));
  const straightFrom = Math.min(
    steepest.from + (line.nodes[pieces.indexOf(steepest)]?.half ?? 0),
    steepest.to,
  );
  return {
    id: line.drive.id,
    name: line.drive.name,
    length: line.length,
    steepest: Math.abs(steepest.grade),
    steepestAt: [...pointAlong(line.line, straightFrom).at],
    climbs: steepest.grade >= 0,
    stations: list,
    nodes: line.nodes.map((node) => nodeResult(line, node, floor)),
    pieces: pieces.map((piece) => ({
      ...piece,
      over: Math.abs(piece.grade) > limits.steepest + 1e-9,
    })),
    curves: line.nodes.flatMap((node, i) => (node.half > 0 ? verticalCurve(line, i, floor) : [])),
    underside: limits.vehicle && undersideResult(line, floor, limits.vehicle),
  };
}

function heightAt(line: DriveLine, distance: number, floor: number): number {
  const { base, share } = driveHeight(line, distance);
  return base + share * floor;
}

function nodeResult(line: DriveLine, node: DriveNode, floor: number): DriveNodeResult {
  return {
    kind: node.kind,
    distance: node.at,
    at: [...pointAlong(line.line, node.at).at],
    height: node.base + node.share * floor,
    index: node.index,
    follows: node.kind === "break" && line.drive.breaks[node.index]?.height === null,
    curve: 2 * node.half,
    shortened: line.shortened.includes(node),
  };
}

/**
 * Elements of the parabola at a node. It lies A · L / 8 off the break (A the change of grade, L its length); its highest
 * or lowest place is −g₁ · L / A from its start.
 */
function verticalCurve(line: DriveLine, i: number, floor: number): VerticalCurve[] {
  const node = line.nodes[i] as DriveNode;
  const change = gradeChange(line.nodes, i);
  const bend = change.base + change.share * floor;
  const gradeIn = drivePieces(line, floor)[i - 1]?.grade;
  if (gradeIn === undefined || Math.abs(bend) < 1e-9) return [];
  const length = 2 * node.half;
  const [from, to] = [node.at - node.half, node.at + node.half];
  const turn = (-gradeIn * length) / bend;
  const inside = turn > 0 && turn < length;
  return [
    {
      kind: bend < 0 ? "crest" : "sag",
      from,
      at: node.at,
      to,
      gradeIn,
      gradeOut: gradeIn + bend,
      lengthPerPercent: length / (100 * Math.abs(bend)),
      offset: (bend * length) / 8,
      turning: inside ? { distance: from + turn, height: heightAt(line, from + turn, floor) } : null,
    },
  ];
}

/** The road is carried on at its own grade, the floor inside the door level. */
function undersideResult(line: DriveLine, floor: number, vehicle: Vehicle): UndersideResult {
  const { drive, length, roadHeight } = line;
  const end = heightAt(line, length, floor);
  const along = (t: number) =>
    t < 0 ? roadHeight + drive.roadGrade * t : t > length ? end : heightAt(line, t, floor);
  const parts = tightestPlaces(along, length, vehicle).map(({ part, room, distance }) => ({
    part,
    room,
    distance,
    at: [...pointAlong(line.line, distance).at] as [number, number],
  }));
  return { vehicle: vehicle.name, passes: parts.every(({ room }) => room >= 0), parts };
}
