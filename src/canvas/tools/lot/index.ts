/** Lot: click its corners in order; the first again, or Enter, closes it. */
import { type Point, siteEdits } from "../../../document";
import { bearingText } from "../../../drawing/lot";
import { distance } from "../../../geometry";
import { formatAngle } from "../../../units";
import { bearingOf } from "../aim";
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
      ? "Click the next corner, or type its distance, Tab, its bearing (clockwise from north)"
      : "Click the next corner, or the first one (or Enter) to close the lot",
  pieceText(context, a, b) {
    const { lot } = context.project();
    const bearing = wholeCircle(bearingOf(a, b, lot.north));
    return `${lengthWords(distance(a, b), context.project())} at ${bearing} (${bearingText(a, b, lot.north)})`;
  },
  commit(context, points) {
    const edit = context.run(siteEdits.setLotOutline, {
      outline: points.map(({ at }): Point => [at[0], at[1]]),
      drawn: true,
    });
    if (edit.ok) {
      context.setTool("select");
      context.select([{ kind: "lot" }]);
    }
    return edit;
  },
};

/** A bearing as it may be typed, to a tenth of a degree; never "360.0°". */
function wholeCircle(bearing: number): string {
  const text = formatAngle(bearing);
  return Number.parseFloat(text) === 360 ? formatAngle(0) : text;
}

export const lotTool: ToolStart = (context) => first(context, lot);
