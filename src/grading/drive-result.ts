/**
 * Stations along a drive with its finished heights and grades.
 *
 * Units   metres; grades rise over run, positive climbs towards the building.
 */
import { type Point, pointAlong } from "../geometry";
import type { DriveResult, DriveStation } from "../solve/results";
import { type DriveLine, driveHeight, type LinearHeight } from "./drive-line";

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
  const distances = stations(line.length, [...line.distances, line.length - line.landing]);
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

/** The drive at a floor height. */
export function driveResult(profile: DriveProfile, floor: number): DriveResult {
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
  const steepest = list.reduce((best, one) => (steepness(one) > steepness(best) ? one : best));
  return {
    id: line.drive.id,
    name: line.drive.name,
    length: line.length,
    steepest: steepness(steepest),
    steepestAt: steepest.at,
    climbs: (finished[finished.length - 1] as number) > (finished[0] as number),
    stations: list,
  };
}

function steepness(station: DriveStation): number {
  return Math.abs(station.grade ?? 0);
}
