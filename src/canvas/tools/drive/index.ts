/** Drive: from the road to the door; a click on a door's middle ties the drive to it and ends it. */
import { type Point, siteEdits } from "../../../document";
import { fallWords } from "../ground";
import { first } from "../line/first";
import type { LineKind } from "../line/lineKind";
import { lengthWords } from "../liveMarks";
import type { ToolStart } from "../tool";

const drive: LineKind = {
  closed: false,
  least: 2,
  hintFirst: () => "Click where the drive leaves the road",
  hintNext: (context, points) => {
    const doors = (context.project().building?.doors.length ?? 0) > 0;
    if (points.length < 2 && !doors)
      return "Click the next bend or the end, or type a distance, Tab, a bearing (clockwise from north); Enter ends the drive";
    return doors
      ? "Click the next bend, or the middle of the door to end there; Enter ends it here"
      : "Click the next bend; Enter ends the drive";
  },
  pieceText(context, a, b) {
    const fall = fallWords(context, a, b);
    const size = lengthWords(Math.hypot(b[0] - a[0], b[1] - a[1]), context.project());
    return fall ? `${size}, ground ${fall}` : size;
  },
  endsAt: ({ tie }) => tie?.kind === "door",
  commit(context, points) {
    const end = points.at(-1)?.tie;
    const edit = context.run(siteEdits.addDrive, {
      line: points.map(({ at }): Point => [at[0], at[1]]),
      door: end?.kind === "door" ? end.id : null,
    });
    if (edit.ok) {
      context.setTool("select");
      if (edit.made !== undefined) context.select([{ kind: "drive", id: edit.made }]);
    }
    return edit;
  },
};

export const driveTool: ToolStart = (context) => first(context, drive);
