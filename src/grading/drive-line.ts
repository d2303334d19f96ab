/**
 * The long section of a drive: from the road by one even grade to the landing in front of the door.
 *
 * Units   metres; grades rise over run, positive climbs towards the building.
 * Method  The sill lies under the floor, the landing falls away from the door, one even grade joins the
 *         landing to the road. Every height along it is therefore base + share · floor, with the share
 *         growing from 0 at the road to 1 at the landing: nothing has to be laid out again for another floor.
 * Source  First principles.
 */
import type { Drive } from "../document/schema";
import { cornerDistances, type Point } from "../geometry";
import { type Segments, segmentsOf } from "./wall-distance";

/** A drive's last point may lie this far off its door, m: it is drawn by hand. */
export const doorGap = 0.6;

export interface DriveLine {
  readonly drive: Drive;
  readonly line: readonly Point[];
  readonly segments: Segments;
  /** Distance from the road of every point of the line. */
  readonly distances: Float64Array;
  readonly length: number;
  readonly roadHeight: number;
  /** Landing in front of the door as built in: 0 where there is no door or no room for it. */
  readonly landing: number;
  /** The sill below the floor; null: no door, the drive ends on the ground as it is. */
  readonly sillBelowFloor: number | null;
  /** Height where a drive without a door ends. */
  readonly endHeight: number;
}

export interface DriveSite {
  readonly roadHeight: number;
  readonly endHeight: number;
  readonly sillBelowFloor: number | null;
}

/** Lays a drive out. The line must have a length; points repeated on the spot are passed over. */
export function layDrive(drive: Drive, site: DriveSite): DriveLine {
  const line = withoutRepeats(drive.line);
  const distances = cornerDistances(line);
  const length = distances[distances.length - 1] ?? 0;
  const wanted = site.sillBelowFloor === null ? 0 : drive.landing.length;
  return {
    drive,
    line,
    segments: segmentsOf(line.slice(1).map((end, i) => ({ start: line[i] as Point, end }))),
    distances,
    length,
    roadHeight: site.roadHeight,
    // A landing that takes the whole line would leave no run to join the road: then it is all one grade.
    landing: wanted < length ? wanted : 0,
    sillBelowFloor: site.sillBelowFloor,
    endHeight: site.endHeight,
  };
}

/** Height along the drive is base + share · floor. */
export interface LinearHeight {
  readonly base: number;
  readonly share: number;
}

export function driveHeight(line: DriveLine, distance: number): LinearHeight {
  const t = Math.min(Math.max(distance, 0), line.length);
  if (line.sillBelowFloor === null) {
    const share = t / line.length;
    return { base: line.roadHeight * (1 - share) + line.endHeight * share, share: 0 };
  }
  const fall = line.drive.landing.fall;
  const run = line.length - line.landing;
  if (t > run) return { base: -line.sillBelowFloor - fall * (line.length - t), share: 1 };
  const share = t / run;
  const topBelowFloor = line.sillBelowFloor + fall * line.landing;
  return { base: line.roadHeight * (1 - share) - topBelowFloor * share, share };
}

/** Grade between the road and the landing at a floor height. */
export function mainGrade(line: DriveLine, floor: number): number {
  const run = line.length - line.landing;
  const top = driveHeight(line, run);
  return (top.base + top.share * floor - line.roadHeight) / run;
}

/** The floor height at which the run from the road has this grade; null for a drive without a door. */
export function floorForGrade(line: DriveLine, grade: number): number | null {
  if (line.sillBelowFloor === null) return null;
  const run = line.length - line.landing;
  return line.roadHeight + grade * run + line.sillBelowFloor + line.drive.landing.fall * line.landing;
}

/** The line without points that repeat the one before; fewer than two are left when it has no length. */
export function withoutRepeats(line: readonly Point[]): readonly Point[] {
  return line.filter((point, i) => {
    const before = line[i - 1];
    return !before || Math.hypot(point[0] - before[0], point[1] - before[1]) > 1e-9;
  });
}
