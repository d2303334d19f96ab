/** A shot, a mark or a feature under the hand. */
import {
  type Edit,
  type EditCommand,
  type Point,
  type Project,
  siteEdits,
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

export type Spot = Extract<Selected, { kind: "shot" | "mark" | "feature" | "door" | "drive" | "swale" }>;

interface SpotArgs {
  readonly spot: Spot;
  readonly from: Point;
  readonly to: Snap;
}

const moveSpot: EditCommand<SpotArgs> = {
  name: "spot.move",
  run(project: Project, { spot, from, to }: SpotArgs): Edit {
    if (spot.kind === "shot") return surveyEdits.placeShot.run(project, { id: spot.id, place: placeOf(to) });
    if (spot.kind === "mark")
      return surveyEdits.changeMark.run(project, { id: spot.id, patch: { at: [to.at[0], to.at[1]] } });
    const points = project.lot.features.find(({ id }) => id === spot.id)?.points ?? [];
    const moved = points.map(([x, y]): Point => [x + to.at[0] - from[0], y + to.at[1] - from[1]]);
    return siteEdits.changeFeature.run(project, { id: spot.id, patch: { points: moved } });
  },
};

export function movingSpot(
  context: ToolContext,
  spot: Spot,
  from: Point,
  pointer: PlanPointer,
  home: ToolStart,
): ToolState {
  const targets = { ...snapTargets(context.project(), (thing) => sameThing(thing, spot)), directions: [] };
  const hints = {
    shot: "Moves the shot; on a corner of the building it counts as that corner, Shift places it freely",
    mark: "Moves the mark; Shift places it freely",
  };
  return startDrag(
    context,
    {
      name: "movingSpot",
      hint:
        spot.kind === "shot" || spot.kind === "mark" ? hints[spot.kind] : "Moves it; Shift places it freely",
      cursor: "move",
      command: moveSpot,
      at(now) {
        const snap = aim(context, now, { targets });
        return { args: { spot, from, to: snap }, snap };
      },
    },
    pointer,
    home,
  );
}
