/** Drive: from the road to the door; a click on a door's middle ties the drive to it and ends it. */
import { type Point, siteEdits } from "../../../document";
import { distanceToSegment } from "../../../geometry";
import { doorEdges } from "../../select/places";
import { fallWords } from "../ground";
import { first } from "../line/first";
import type { LineKind, LinePoint } from "../line/lineKind";
import { lengthWords } from "../liveMarks";
import type { ToolContext, ToolStart } from "../tool";

/** Nearer than this an end lies on the door, m: typed figures are rounded. */
const onDoor = 0.02;

/** The door that a drive ends at: the one that was snapped to, else the one on whose opening the end lies. */
function doorAt(context: ToolContext, end: LinePoint | undefined): string | null {
  if (!end) return null;
  if (end.tie?.kind === "door") return end.tie.id;
  const { building } = context.project();
  const [x, y] = end.at;
  const door = building?.doors.find((each) => {
    const edges = doorEdges(building.outline, each);
    return edges !== null && distanceToSegment(edges[0], edges[1], x, y) < onDoor;
  });
  return door?.id ?? null;
}

const drive: LineKind = {
  closed: false,
  least: 2,
  hintFirst: (context, at) => {
    if (at?.tie?.kind === "door") return "Click the door to draw the drive from it down to the road";
    const road = "Click where the drive leaves the road";
    return context.project().building?.doors.length ? `${road}, or the door to draw it from there` : road;
  },
  hintNext: (context, points) => {
    if (doorAt(context, points[0]) !== null)
      return "Click the next bend down to the road; Enter at the road ends the drive";
    const doors = (context.project().building?.doors.length ?? 0) > 0;
    if (points.length < 2 && !doors)
      return "Click the next bend or the end, or type a distance, Tab, a bearing (clockwise from north); Enter ends the drive";
    return doors
      ? "Click the next bend, or the door to end there, tied to it; Enter ends it here"
      : "Click the next bend; Enter ends the drive";
  },
  pieceText(context, a, b) {
    const fall = fallWords(context, a, b);
    const size = lengthWords(Math.hypot(b[0] - a[0], b[1] - a[1]), context.project());
    return fall ? `${size}, ground ${fall}` : size;
  },
  endsAt: ({ tie }) => tie?.kind === "door",
  commit(context, drawn) {
    // A drive that was drawn from the door to the road runs to the door all the same.
    const isFromDoor = doorAt(context, drawn.at(-1)) === null && doorAt(context, drawn[0]) !== null;
    const points = isFromDoor ? [...drawn].reverse() : drawn;
    const edit = context.run(siteEdits.addDrive, {
      line: points.map(({ at }): Point => [at[0], at[1]]),
      door: doorAt(context, points.at(-1)),
    });
    if (edit.ok) {
      if (isFromDoor) context.say("The drive was turned round: it runs from the road to the door.");
      context.setTool("select");
      if (edit.made !== undefined) context.select([{ kind: "drive", id: edit.made }]);
    }
    return edit;
  },
};

export const driveTool: ToolStart = (context) => first(context, drive);
