/** Swale: from its high end to its outlet; each piece says how the ground falls along it. */
import { type Point, siteEdits } from "../../../document";
import { fallWords } from "../ground";
import { first } from "../line/first";
import type { LineKind } from "../line/lineKind";
import { lengthWords } from "../liveMarks";
import type { ToolStart } from "../tool";

const swale: LineKind = {
  closed: false,
  least: 2,
  hintFirst: () => "Click the swale's high end, uphill of the building",
  hintNext: (_context, points) =>
    points.length < 2
      ? "Click the next place downhill, or type a distance, Tab, a bearing (clockwise from north)"
      : "Click the next place downhill; Enter at the outlet ends the swale",
  pieceText(context, a, b) {
    const fall = fallWords(context, a, b);
    const size = lengthWords(Math.hypot(b[0] - a[0], b[1] - a[1]), context.project());
    if (!fall) return size;
    return fall.startsWith("climbs") ? `ground ${fall}: water would stand` : `${size}, ground ${fall}`;
  },
  commit(context, points) {
    const edit = context.run(siteEdits.addSwale, { line: points.map(({ at }): Point => [at[0], at[1]]) });
    if (edit.ok) {
      context.setTool("select");
      if (edit.made !== undefined) context.select([{ kind: "swale", id: edit.made }]);
    }
    return edit;
  },
};

export const swaleTool: ToolStart = (context) => first(context, swale);
