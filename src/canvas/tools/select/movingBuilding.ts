/** The building under the hand: moves along the plan's axes, its walls' and the lot's directions, in round steps. */
import { buildingEdits, type Point } from "../../../document";
import { distance } from "../../../geometry";
import { type SnapTargets, snapTargets } from "../../snap/targets";
import { aim, withTyped } from "../aim";
import { floating, lengthWords } from "../liveMarks";
import type { PlanPointer, ToolContext, ToolStart, ToolState } from "../tool";
import { startDrag } from "./dragging";

export function movingBuilding(
  context: ToolContext,
  from: Point,
  pointer: PlanPointer,
  home: ToolStart,
): ToolState {
  const project = context.project();
  // Only directions: the place under the hand is any place of the building, so things near it mean nothing.
  const targets: SnapTargets = { points: [], edges: [], directions: snapTargets(project).directions };
  return startDrag(
    context,
    {
      name: "movingBuilding",
      hint: "Moves the building; type a distance, Tab, a bearing (clockwise from north); hold Shift to move freely",
      cursor: "move",
      fields: [
        { name: "length", kind: "length" },
        { name: "bearing", kind: "bearing" },
      ],
      command: buildingEdits.moveBuilding,
      at(now, typed) {
        const aimed = withTyped(aim(context, now, { from, targets }), from, typed, project.lot.north);
        const by = distance(from, aimed.at);
        return {
          args: { dx: aimed.at[0] - from[0], dy: aimed.at[1] - from[1] },
          marks: [
            { kind: "line", points: [...from, ...aimed.at], style: "preview" },
            floating(aimed.at, `moved ${lengthWords(by, project)}`),
          ],
          snap: aimed,
        };
      },
    },
    pointer,
    home,
  );
}
