/**
 * Figures that no such job has: likelier a slip of the unit or of a point than meant. They are asked about, never
 * refused, and everything is computed with them as typed.
 *
 * Source  the bounds are wide round common practice, no source.
 */
import type { Foundation, Project } from "../document/schema";
import type { Ground } from "../terrain";
import { oncePer } from "./once-per";
import type { Problem } from "./results";
import type { Words } from "./words";

/** A floor farther than this from all ground is likelier a slip of the datum or the unit, m. */
const farFromGround = 3;

type LengthOf = {
  [K in keyof Foundation]: Foundation[K] extends number | null ? K : never;
}[keyof Foundation];

/** Most that a detached building has, m. */
const mostOf: readonly (readonly [LengthOf, string, number])[] = [
  ["wallHeight", "wall height", 4.5],
  ["wallThickness", "wall thickness", 0.65],
  ["footingWidth", "footing width", 2.5],
  ["footingThickness", "footing thickness", 1],
  ["slabThickness", "slab thickness", 0.5],
  ["baseThickness", "stone under the slab", 1.2],
  ["frostDepth", "frost depth", 3.5],
];
/** No drive is built steeper, rise over run. */
const steepestBuilt = 0.35;

export function figuresToCheck({ building, rules, worksheet, grading }: Project, words: Words): Problem[] {
  const problems: Problem[] = [];
  for (const [field, name, most] of mostOf) {
    const value = building?.foundation[field] ?? null;
    if (value !== null && value > most)
      problems.push({ code: "foundation-figure", ...toCheck(name, words.length(value)) });
  }
  if (rules.steepestDrive > steepestBuilt)
    problems.push({ code: "drive-figure", ...toCheck("steepest drive", words.slope(rules.steepestDrive)) });
  for (const drive of grading.drives) {
    if (drive.gravel > 1)
      problems.push({
        code: "drive-figure",
        ...toCheck(`stone of ${drive.name}`, words.length(drive.gravel), drive.id),
      });
    if (drive.width > 30)
      problems.push({
        code: "drive-figure",
        ...toCheck(`width of ${drive.name}`, words.length(drive.width), drive.id),
      });
  }
  const reading = worksheet.markReading;
  if (reading && reading.m < 0)
    problems.push({
      code: "setout-figure",
      ...toCheck("today's reading on the mark", reading.text),
      what: `It says ${reading.text}: the mark would lie above the beam, where no rod is read.`,
      how: "Readings go down from the beam: type it without the minus, or read the mark again.",
    });
  return problems;
}

function toCheck(where: string, figure: string, id?: string): Omit<Problem, "code"> {
  return {
    severity: "caution",
    where,
    what: `It says ${figure}, more than such a job has.`,
    how: "Check the figure and its unit: a number without a unit takes the plan's.",
    ...(id === undefined ? {} : { ids: [id] }),
  };
}

export interface FarFloor {
  /** How far above (positive) or below all the ground that was shot, m. */
  readonly off: number;
  readonly lowest: number;
  readonly highest: number;
}

const measuredHeights = oncePer(({ tin, measuredPoints }: Ground) => {
  let [lowest, highest] = [Infinity, -Infinity];
  for (const z of tin.z.subarray(0, measuredPoints)) {
    if (z < lowest) lowest = z;
    if (z > highest) highest = z;
  }
  return { lowest, highest };
});

/** How far a floor lies from all the ground that was shot; null when it is near, or nothing was shot. */
export function farFloor(floor: number, ground: Ground): FarFloor | null {
  if (ground.measuredPoints === 0) return null;
  const { lowest, highest } = measuredHeights(ground);
  const off = floor > highest ? floor - highest : Math.min(0, floor - lowest);
  return Math.abs(off) > farFromGround ? { off, lowest, highest } : null;
}

/** "4.1 m below all the ground that was shot (98 m to 101 m)". */
export function farFloorWords({ off, lowest, highest }: FarFloor, { length }: Words): string {
  return `${length(Math.abs(off))} ${off > 0 ? "above" : "below"} all the ground that was shot (${length(lowest)} to ${length(highest)})`;
}

export function floorFarFromGround(floor: number | null, ground: Ground, words: Words): Problem[] {
  const far = floor === null ? null : farFloor(floor, ground);
  if (!far) return [];
  return [
    {
      code: "floor-far-from-ground",
      severity: "caution",
      where: "the floor height",
      what: `It lies ${farFloorWords(far, words)}.`,
      how: "Heights are told in the project's datum: check the figure and its unit.",
    },
  ];
}
