/** A whole drive or swale under the hand. A drive that leaves its door is no longer tied to it. */
import type { Point } from "../../../document";
import { distance } from "../../../geometry";
import { type LineRef, linePoints } from "../../select/handles";
import { snapTargets } from "../../snap/targets";
import { aim } from "../aim";
import { floating, lengthWords } from "../liveMarks";
import type { PlanPointer, ToolContext, ToolStart, ToolState } from "../tool";
import { startDrag } from "./dragging";
import { lineWord, setLine } from "./setLine";

export function movingLine(
  context: ToolContext,
  line: LineRef,
  from: Point,
  pointer: PlanPointer,
  home: ToolStart,
): ToolState {
  const { points } = linePoints(context.project(), line);
  const targets = { points: [], edges: [], directions: snapTargets(context.project()).directions };
  return startDrag(
    context,
    {
      name: "movingLine",
      hint: `Moves ${lineWord(line)}; hold Shift to move freely`,
      cursor: "move",
      command: setLine,
      at(now) {
        const snap = aim(context, now, { from, targets });
        const [dx, dy] = [snap.at[0] - from[0], snap.at[1] - from[1]];
        const moved = points.map(([x, y]): Point => [x + dx, y + dy]);
        const untied = line.kind === "drive" && (dx !== 0 || dy !== 0) ? { door: null } : {};
        return {
          args: { line, points: moved, what: `move ${lineWord(line)}`, ...untied },
          marks: [floating(snap.at, `moved ${lengthWords(distance(from, snap.at), context.project())}`)],
          snap,
        };
      },
    },
    pointer,
    home,
  );
}
