/**
 * Each door's sill against the ground and the drive outside, and the steps that a walk door needs.
 *
 * Units   metres; falls and grades rise over run.
 * Method  Risers = the drop divided by the most that a riser may have, rounded up, all alike. The road is reckoned as level
 *         for the change of grade where the drive leaves it.
 * Source  IRC R311.7.5 (2012): riser at most 7 3/4 in, tread at least 10 in; R311.3: a landing at least 36 in deep (figures
 *         from memory, values to overtype by the place's code).
 */
import type { Apron, Building, Door, Drive } from "../document/schema";
import type { DoorLevels, DriveResult } from "../solve/results";
import type { FootedLine } from "./lines";

export const mostRise = 0.19685;
export const leastTread = 0.254;
export const leastLanding = 0.9144;

export interface DoorSite {
  readonly building: Building;
  readonly floor: number;
  readonly apron: Apron;
  /** As they are meant, and as they come out. */
  readonly drives: readonly Drive[];
  readonly driveResults: readonly DriveResult[];
}

export function doorLevels(site: DoorSite, lines: readonly FootedLine[]): DoorLevels[] {
  return site.building.doors.flatMap((door) => {
    const line = lines[door.wall];
    return line ? [levelsOf(door, line, site)] : [];
  });
}

function levelsOf(door: Door, line: FootedLine, site: DoorSite): DoorLevels {
  const middle = Math.min(door.offset + door.width / 2, line.length);
  const sill = site.floor - door.sillBelowFloor;
  const finished = heightAt(line, line.finished, middle);
  const drop = sill - finished;
  const drive = servingDrive(door, sill, site);
  const left = site.apron.leave.includes(door.wall);
  return {
    id: door.id,
    name: door.name,
    wall: door.wall,
    wallName: line.name,
    at: [line.start[0] + line.along[0] * middle, line.start[1] + line.along[1] * middle],
    sill,
    sillBelowFloor: door.sillBelowFloor,
    existing: heightAt(line, line.existing, middle),
    finished,
    drop,
    apronFall: drive?.landingFall ?? (left ? 0 : site.apron.fall),
    drive,
    steps: door.kind === "walk" && drive === null ? stepsFor(drop) : null,
  };
}

/** Outside steps for a drop from a sill; none up to one riser. */
export function stepsFor(drop: number): DoorLevels["steps"] {
  if (drop <= mostRise + 1e-9) return null;
  const risers = Math.ceil(drop / mostRise - 1e-9);
  return {
    risers,
    rise: drop / risers,
    tread: leastTread,
    run: (risers - 1) * leastTread,
    landing: leastLanding,
  };
}

function servingDrive(door: Door, sill: number, site: DoorSite): DoorLevels["drive"] {
  const meant = site.drives.find((drive) => drive.door === door.id);
  const built = meant && site.driveResults.find(({ id }) => id === meant.id);
  const end = built?.stations[built.stations.length - 1];
  if (!meant || !built || !end) return null;
  const grades = built.stations.flatMap(({ grade }) => (grade === null ? [] : [grade]));
  const changes = grades.slice(1).map((grade, i) => Math.abs(grade - (grades[i] as number)));
  return {
    id: built.id,
    name: built.name,
    end: end.finished,
    lip: sill - end.finished,
    landing: Math.min(meant.landing.length, built.length),
    landingFall: meant.landing.fall,
    steepest: built.steepest,
    breakAtRoad: Math.abs(grades[0] ?? 0),
    breakAtLanding: Math.max(0, ...changes),
  };
}

/** A height along a wall between its stations. */
export function heightAt(line: FootedLine, heights: Float64Array, offset: number): number {
  const { distance } = line;
  let i = 1;
  while (i < distance.length - 1 && (distance[i] as number) < offset) i++;
  const [a, b] = [distance[i - 1] as number, distance[i] as number];
  const t = b > a ? Math.min(1, Math.max(0, (offset - a) / (b - a))) : 0;
  return (heights[i - 1] as number) + t * ((heights[i] as number) - (heights[i - 1] as number));
}
