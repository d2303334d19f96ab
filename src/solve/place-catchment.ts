/**
 * The ground that drains to a place that is pointed at.
 *
 * Units   metres, m2.
 * Method  What drains through the cells within a hand's reach of it, on the filled finished ground (D-infinity).
 * Source  see `drainage/flow.ts`.
 */
import type { Point } from "../document/schema";
import { catchmentOf } from "../drainage";
import type { PlaceCatchment, Results } from "./results";

/** A way that water gathers along is a cell wide: so near to it counts as on it, m. */
const reach = 0.5;

/** Null where there is no ground, or within the walls. */
export function catchmentAt({ water: { flow } }: Results, [x, y]: Point): PlaceCatchment | null {
  if (!flow) return null;
  const { grid, order } = flow;
  const column = Math.floor((x - grid.x0) / grid.cell);
  const row = Math.floor((y - grid.y0) / grid.cell);
  if (column < 0 || row < 0 || column >= grid.columns || row >= grid.rows) return null;
  const target = new Uint8Array(grid.columns * grid.rows);
  const off = Math.floor(reach / grid.cell);
  for (let j = Math.max(0, row - off); j <= Math.min(grid.rows - 1, row + off); j++)
    for (let i = Math.max(0, column - off); i <= Math.min(grid.columns - 1, column + off); i++)
      target[j * grid.columns + i] = 1;
  // Cells within the walls aren't in the order: no water comes to them.
  if (!order.includes(row * grid.columns + column)) return null;
  const { area, longest, fall, touchesEdge } = catchmentOf(flow, target);
  return { area, longest, fall, touchesEdge };
}
