/** The turn handle under the hand: stops square with a lot line and at each 15°; Shift turns freely. */
import { buildingEdits, type Point } from "../../../document";
import { outlineCentre, snapTurn, turnAbout, turnedOutline, wallOutward } from "../../select/shape";
import { floating, turnWords } from "../liveMarks";
import type { PlanPointer, ToolContext, ToolStart, ToolState } from "../tool";
import { startDrag } from "./dragging";

export function turning(context: ToolContext, from: Point, pointer: PlanPointer, home: ToolStart): ToolState {
  const project = context.project();
  const outline = project.building?.outline ?? [];
  const about = outlineCentre(outline);
  const turnFor = (now: PlanPointer, typed: number | undefined) => {
    // As bearings are: a typed angle turns clockwise.
    if (typed !== undefined) return { angle: -typed, word: null };
    const angle = turnAbout(about, from, now.at);
    return now.free ? { angle, word: null } : snapTurn(outline, project.lot.outline, angle);
  };
  return startDrag(
    context,
    {
      name: "turning",
      hint: "Turns the building about its middle; type an angle clockwise, hold Shift to turn freely",
      cursor: "grabbing",
      fields: [{ name: "angle", kind: "angle" }],
      command: buildingEdits.turnBuilding,
      at(now, typed) {
        const { angle, word } = turnFor(now, typed.angle);
        const text = `turned ${turnWords(angle)}${word ? `, ${word}` : ""}`;
        const front = wallOutward(turnedOutline(outline, about, angle), 0) ?? [0, 1];
        return {
          args: { angle, about },
          marks: [
            { kind: "line", points: [...about, ...now.at], style: "snap-guide" },
            { kind: "symbol", at: about, symbol: "plus", size: 2.6, style: "snap-ring" },
            floating(now.at, text, [5, front[1] >= 0 ? 3 : -4]),
          ],
        };
      },
    },
    pointer,
    home,
  );
}
