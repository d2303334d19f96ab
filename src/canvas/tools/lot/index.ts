/** Lot: click its corners in order; the first again, or Enter, closes it. */
import { type Point, siteEdits } from "../../../document";
import { formatAngle } from "../../../units";
import { first } from "../line/first";
import type { LineKind } from "../line/lineKind";
import { lengthWords } from "../liveMarks";
import type { ToolStart } from "../tool";

const lot: LineKind = {
  closed: true,
  least: 3,
  hintFirst: (context) =>
    context.project().lot.outline.length > 0
      ? "Draws the lot anew: click its first corner"
      : "Click the lot's first corner",
  hintNext: (_context, points) =>
    points.length < 3
      ? "Click the next corner, or type its distance, Tab, its angle"
      : "Click the next corner, or the first one (or Enter) to close the lot",
  pieceText: (context, a, b) =>
    `${lengthWords(length(a, b), context.project())} at ${formatAngle(heading(a, b), 0)}`,
  commit(context, points) {
    const edit = context.run(siteEdits.setLotOutline, {
      outline: points.map(({ at }): Point => [at[0], at[1]]),
    });
    if (edit.ok) {
      context.setTool("select");
      context.select([{ kind: "lot" }]);
    }
    return edit;
  },
};

function length(a: Point, b: Point): number {
  return Math.hypot(b[0] - a[0], b[1] - a[1]);
}

/** Counter-clockwise from east, 0 to a full turn: as it is typed. */
function heading(a: Point, b: Point): number {
  const angle = Math.atan2(b[1] - a[1], b[0] - a[0]);
  return angle < -1e-9 ? angle + 2 * Math.PI : Math.max(0, angle);
}

export const lotTool: ToolStart = (context) => first(context, lot);
