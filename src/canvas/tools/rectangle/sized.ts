/** A rectangle of typed sizes before any press: its low-left corner lies under the pointer, or it in the middle of the view. */
import type { Point } from "../../../document";
import type { Snap } from "../../snap/snap";
import type { TypedValues } from "../../typed/typedEntry";
import type { ToolContext } from "../tool";
import { draggedRectangle, type Rectangle } from "./rectangle";

export function sizedRectangle(
  context: ToolContext,
  { at, typed }: { readonly at: Snap | null; readonly typed: TypedValues },
): Rectangle | null {
  if (typed.width === undefined || typed.depth === undefined) return null;
  const [cx, cy] = context.view().centre;
  const from: Point = at ? at.at : [cx - typed.width / 2, cy - typed.depth / 2];
  return draggedRectangle(from, [from[0] + 1, from[1] + 1], typed);
}
