/** Places of what a tool is drawing, so that the whole of it can be brought into sight. */
import type { ToolState } from "../tools/tool";
import type { XY } from "../view/view";

/** Of the lines and areas that it shows over the plan. */
export function drawnPlaces({ marks = [] }: ToolState): readonly XY[] {
  return marks.flatMap((mark): XY[] => {
    if (mark.kind === "line") return pairs(mark.points);
    return mark.kind === "area" ? mark.rings.flatMap(pairs) : [];
  });
}

function pairs(flat: ArrayLike<number>): XY[] {
  return Array.from({ length: Math.floor(flat.length / 2) }, (_, i) => [
    flat[2 * i] ?? 0,
    flat[2 * i + 1] ?? 0,
  ]);
}
