/** A shot or a mark under the hand. */
import {
  type Edit,
  type EditCommand,
  gradingEdits,
  type Project,
  pitEdits,
  surveyEdits,
} from "../../../document";
import type { Selected } from "../../../store/state";
import { sameThing } from "../../select/hit";
import type { Snap } from "../../snap/snap";
import { snapTargets } from "../../snap/targets";
import { aim } from "../aim";
import { placeOf } from "../shot/placing";
import type { PlanPointer, ToolContext, ToolStart, ToolState } from "../tool";
import { startDrag } from "./dragging";

/** Things that lie at one place and are put there by hand. */
export type Spot = Extract<Selected, { kind: "shot" | "mark" | "pit" | "grade-point" }>;

interface SpotArgs {
  readonly spot: Spot;
  readonly to: Snap;
}

export function isSpot(thing: Selected): thing is Spot {
  return ["shot", "mark", "pit", "grade-point"].includes(thing.kind);
}

export const moveSpot: EditCommand<SpotArgs> = {
  name: "spot.move",
  run(project: Project, { spot: { kind, id }, to }: SpotArgs): Edit {
    if (kind === "pit")
      return pitEdits.changePit.run(project, { id, patch: { place: placeOf(to) }, what: "move a test pit" });
    if (kind === "grade-point")
      return gradingEdits.setShapePlaces.run(project, {
        thing: { kind, id },
        points: [[to.at[0], to.at[1]]],
        what: "move a grade point",
      });
    return kind === "shot"
      ? surveyEdits.placeShot.run(project, { id, place: placeOf(to) })
      : surveyEdits.changeMark.run(project, { id, patch: { at: [to.at[0], to.at[1]] } });
  },
};

const hints: Readonly<Record<Spot["kind"], string>> = {
  shot: "Moves the shot; on a corner of the building it counts as that corner, Shift places it freely",
  pit: "Moves the test pit; on a corner of the building it counts as that corner, Shift places it freely",
  "grade-point": "Moves the grade point, its height stays; Shift places it freely",
  mark: "Moves the mark; Shift places it freely",
};

export function movingSpot(
  context: ToolContext,
  spot: Spot,
  pointer: PlanPointer,
  home: ToolStart,
): ToolState {
  const targets = { ...snapTargets(context.project(), (thing) => sameThing(thing, spot)), directions: [] };
  return startDrag(
    context,
    {
      name: "movingSpot",
      hint: hints[spot.kind],
      cursor: "move",
      command: moveSpot,
      at(now) {
        const snap = aim(context, now, { targets });
        return { args: { spot, to: snap }, snap };
      },
    },
    pointer,
    home,
  );
}
