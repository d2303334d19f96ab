/** What a side slope's figure can't be, in words: the same from a file and from a field. */

const runs: readonly unknown[] = ["fill", "cut", "sideSlope", "cutSlope", "fillSlope"];

/** Fields that hold the run of a side slope. */
export function isRun(field: unknown): boolean {
  return runs.includes(field);
}

export const noRun =
  "A side slope is the run for one of rise and should be more than 0: 3 means 3 : 1. For an upright face draw a retaining wall.";
