/** Section line: two places; the ground is seen from the side with the first on the left. */
import { drawingEdits, type Point } from "../../../document";
import { distance } from "../../../geometry";
import { formatBearing } from "../../../units";
import { bearingOf } from "../aim";
import { first } from "../line/first";
import type { LineKind } from "../line/lineKind";
import { lengthWords } from "../liveMarks";
import type { ToolStart } from "../tool";

const section: LineKind = {
  closed: false,
  least: 2,
  most: 2,
  hintFirst: () => "Click where the section line begins: this end will be on the left",
  hintNext: () => "Click where it ends, or type its length, Tab, its bearing (clockwise from north)",
  pieceText(context, a, b) {
    const project = context.project();
    const bearing = formatBearing(bearingOf(a, b, project.lot.north));
    return `${lengthWords(distance(a, b), project)} at ${bearing}`;
  },
  commit(context, points) {
    const [a, b] = points.map(({ at }): Point => [at[0], at[1]]) as [Point, Point];
    const edit = context.run(drawingEdits.addSection, { line: [a, b] });
    if (edit.ok) {
      context.setTool("select");
      if (edit.made !== undefined) context.select([{ kind: "section", id: edit.made }]);
    }
    return edit;
  },
};

export const sectionTool: ToolStart = (context) => first(context, section);
