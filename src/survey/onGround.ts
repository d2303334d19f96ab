/** Which levelled shots are points of the ground. */
import type { Shot } from "../document/schema";

/**
 * Ground shots, and marks and turning points whose own row has a place. A mark known only by its mark's place is left
 * out, since it may be a nail in a tree; so is a second look at a turning point.
 */
export function liesOnGround({ kind, of, place }: Pick<Shot, "kind" | "of" | "place">): boolean {
  if (place.kind === "none") return false;
  return kind === "ground" || kind === "mark" || (kind === "turning" && of === null);
}
