/** The ground under a tool: heights, and the fall from one place to the next, in words. */
import type { Point } from "../../document";
import type { Results } from "../../solve/results";
import { groundAt } from "../../terrain";
import { formatSlope } from "../../units";
import type { ToolContext } from "./tool";

export function groundHeight(results: Results, [x, y]: Point): number | null {
  const at = results.ground ? groundAt(results.ground, x, y) : null;
  return at ? at.z : null;
}

/** Where the ground falls to, radians anticlockwise from east, to whole degrees; undefined where it is level or unknown. */
export function downhill(results: Results, [x, y]: readonly [number, number]): number | undefined {
  const at = results.ground ? groundAt(results.ground, x, y) : null;
  if (!at || Math.hypot(at.gx, at.gy) < 1e-3) return undefined;
  const degree = Math.PI / 180;
  return Math.round(Math.atan2(-at.gy, -at.gx) / degree) * degree;
}

/** "falls 2.1 %", "climbs 0.8 %", "level"; null without ground. */
export function fallWords(context: ToolContext, from: Point, to: Point): string | null {
  const a = groundHeight(context.results(), from);
  const b = groundHeight(context.results(), to);
  const run = Math.hypot(to[0] - from[0], to[1] - from[1]);
  if (a === null || b === null || run === 0) return null;
  const fall = (a - b) / run;
  const words = formatSlope(Math.abs(fall), context.project().display.slope);
  // Flatter than one in two thousand nobody can build or see.
  if (Math.abs(fall) < 0.0005) return "level";
  return fall > 0 ? `falls ${words}` : `climbs ${words}`;
}
