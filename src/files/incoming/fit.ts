/**
 * How what comes in fits what the plan has already: how far beside it and how much above it lies, and the shift by a point
 * that both know. All in metres, on the plan; x east, y north, z up.
 */
import type { Project } from "../../document/schema";
import type { Results } from "../../solve/results";
import { type Bounds, boundsOf, type Incoming } from "./incoming";

/** A point of the plan that may be in the file too. */
export interface KnownPoint {
  readonly name: string;
  readonly x: number;
  readonly y: number;
  /** Null while it has no height. */
  readonly z: number | null;
}

/** Metres east, north and up. */
export type Shift = readonly [number, number, number];

export interface Apart {
  /** Between the two boxes, 0 where they meet, m. */
  readonly distance: number;
  /** By how much the file's heights lie above the plan's, or below (negative), 0 where they meet, m. */
  readonly above: number;
}

/** What the plan has that was placed: marks, the building's corners, shots. */
export function knownPoints({ survey }: Project, results: Pick<Results, "survey" | "corners">): KnownPoint[] {
  const marks = survey.marks.flatMap(({ name, at, height }): KnownPoint[] =>
    at === null ? [] : [{ name, x: at[0], y: at[1], z: height.m }],
  );
  const corners = results.corners.map(
    ({ name, x, y }): KnownPoint => ({ name: `corner ${name}`, x, y, z: null }),
  );
  const row = new Map(survey.shots.map(({ id }, i) => [id, i + 1]));
  const shots = results.survey.points.flatMap(({ shot, name, kind, at, height }): KnownPoint[] =>
    at === null || kind === "check" || kind === "mark"
      ? []
      : [{ name: name || `row ${row.get(shot)}`, x: at[0], y: at[1], z: height }],
  );
  return [...marks, ...corners, ...shots];
}

/** Own judgement: nearer than this nobody needs to be asked, m. */
const NEAR_BESIDE = 50;
const NEAR_ABOVE = 5;

/**
 * How far off a file lies, where that is so far that one would ask; else null, as for a plan that has nothing placed.
 * Far: farther than the plan is across (at least 50 m), or higher or lower by more than 5 m; own judgement, no source.
 */
export function farApart(bounds: Bounds | null, plan: readonly KnownPoint[]): Apart | null {
  const own = boxOf(plan);
  if (bounds === null || own === null) return null;
  const distance = Math.hypot(
    gap(own.minX, own.maxX, bounds.minX, bounds.maxX),
    gap(own.minY, own.maxY, bounds.minY, bounds.maxY),
  );
  const heights = [own.minZ, own.maxZ, bounds.minZ, bounds.maxZ];
  const above = heights.some(Number.isNaN) ? 0 : gap(own.minZ, own.maxZ, bounds.minZ, bounds.maxZ);
  const across = Math.hypot(own.maxX - own.minX, own.maxY - own.minY);
  const isFar = distance > Math.max(NEAR_BESIDE, across) || Math.abs(above) > NEAR_ABOVE;
  return isFar ? { distance, above } : null;
}

/** From one stretch to the other: 0 where they meet, negative where the other lies below. */
function gap(low: number, high: number, otherLow: number, otherHigh: number): number {
  if (otherLow > high) return otherLow - high;
  return otherHigh < low ? otherHigh - low : 0;
}

function boxOf(points: readonly KnownPoint[]): Bounds | null {
  const column = (pick: (point: KnownPoint) => number) => Float64Array.from(points, pick);
  const parts = {
    names: [],
    x: column(({ x }) => x),
    y: column(({ y }) => y),
    z: column(({ z }) => z ?? Number.NaN),
  };
  const none = new Float64Array(0);
  return boundsOf(parts, [], { x: none, y: none, z: none, triangles: new Uint32Array(0) });
}

/** The mark or point of the file by its name, or by its row counted from 1 where no name is the same; null: there is none. */
export function pointNamed(
  { points, marks }: Pick<Incoming, "points" | "marks">,
  typed: string,
): KnownPoint | null {
  const wanted = typed.trim().toLowerCase();
  if (wanted === "") return null;
  const mark = marks.names.findIndex((name) => name.trim().toLowerCase() === wanted);
  if (mark >= 0) {
    const [x, y, z] = [marks.x[mark] ?? 0, marks.y[mark] ?? 0, marks.z[mark] ?? Number.NaN];
    return { name: marks.names[mark] ?? "", x, y, z: Number.isNaN(z) ? null : z };
  }
  const named = points.names.findIndex((name) => name.trim().toLowerCase() === wanted);
  const i = named >= 0 ? named : /^\d+$/.test(wanted) ? Number(wanted) - 1 : -1;
  const [x, y, z = Number.NaN] = [points.x[i], points.y[i], points.z[i]];
  if (x === undefined || y === undefined) return null;
  return { name: points.names[i] || `row ${i + 1}`, x, y, z: Number.isNaN(z) ? null : z };
}

/** Brings the file's point onto the plan's; up or down too where both have a height. */
export function shiftBetween(inFile: KnownPoint, onPlan: KnownPoint): Shift {
  const up = inFile.z === null || onPlan.z === null ? 0 : onPlan.z - inFile.z;
  return [onPlan.x - inFile.x, onPlan.y - inFile.y, up];
}

/** All of it moved by the shift; the answer is a new one. */
export function shifted(incoming: Incoming, [dx, dy, dz]: Shift): Incoming {
  const moved = <T extends { x: Float64Array; y: Float64Array; z: Float64Array }>(part: T): T => ({
    ...part,
    x: part.x.map((x) => x + dx),
    y: part.y.map((y) => y + dy),
    z: part.z.map((z) => z + dz),
  });
  const by = [dx, dy, dz];
  const lines = incoming.lines.map((line) => ({
    ...line,
    xyz: line.xyz.map((value, i) => value + (by[i % 3] ?? 0)),
  }));
  const points = moved(incoming.points);
  const marks = moved(incoming.marks);
  const faces = moved(incoming.faces);
  return { ...incoming, points, marks, lines, faces, bounds: boundsOf(points, lines, faces, marks) };
}
