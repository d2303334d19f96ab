import type { Point } from "../document/schema";
import { runFrom } from "../drainage";
import type { Results } from "./results";

/** The way of a drop of water from a place of the plan, flat x, y; null where there is no ground. */
export function waterRun({ water }: Results, [x, y]: Point): Float64Array | null {
  const run = water.flow ? runFrom(water.flow, x, y) : null;
  return run && run.length >= 4 ? run : null;
}
