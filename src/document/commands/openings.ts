/** Doors and windows as pieces of a wall. */
import type { Door } from "../schema";

export type Opening = Pick<Door, "wall" | "offset" | "width">;

/** Do two openings take the same piece of one wall? Those that only touch don't. */
export function openingsOverlap(a: Opening, b: Opening): boolean {
  const slack = 1e-6;
  return a.wall === b.wall && a.offset < b.offset + b.width - slack && b.offset < a.offset + a.width - slack;
}
