/** Arrow keys: the selected things move by a small set step; steps in a row are one undo step. */
import {
  buildingEdits,
  type Edit,
  type Point,
  type Project,
  siteEdits,
  surveyEdits,
} from "../../../document";
import type { Selected } from "../../../store/state";
import { INCH } from "../../../units";
import { shotPlace, wallEnds } from "../../select/places";
import type { XY } from "../../view/view";
import type { ToolContext } from "../tool";

/** One inch or 10 mm; ten times that with Shift. */
export function nudgeStep(project: Project, large: boolean): number {
  const small = ["ft-in", "in", "ft"].includes(project.display.length) ? INCH : 0.01;
  return large ? small * 10 : small;
}

export function nudgeSelected(context: ToolContext, direction: XY, large: boolean): void {
  const step = nudgeStep(context.project(), large);
  const { angle } = context.view();
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  // Right on the screen is east only while the plan isn't turned.
  const by: Point = [
    (direction[0] * c + direction[1] * s) * step,
    (direction[1] * c - direction[0] * s) * step,
  ];
  for (const thing of context.selection()) {
    const edit = nudge(context.project(), thing, by);
    if (edit) context.run({ name: "nudge", run: edit }, undefined);
  }
}

function nudge(project: Project, thing: Selected, by: Point): ((project: Project) => Edit) | null {
  const shift = (points: readonly Point[]) => points.map(([x, y]): Point => [x + by[0], y + by[1]]);
  switch (thing.kind) {
    case "building":
      return (now) =>
        buildingEdits.moveBuilding.run(now, { dx: by[0], dy: by[1], mergeKey: "nudge building" });
    case "mark": {
      const at = project.survey.marks.find(({ id }) => id === thing.id)?.at;
      return at
        ? (now) =>
            surveyEdits.changeMark.run(now, { id: thing.id, patch: { at: [at[0] + by[0], at[1] + by[1]] } })
        : null;
    }
    case "shot": {
      const shot = project.survey.shots.find(({ id }) => id === thing.id);
      const at = shot && shotPlace(project, shot);
      if (!at) return null;
      const place = { kind: "at", x: at[0] + by[0], y: at[1] + by[1] } as const;
      return (now) => surveyEdits.placeShot.run(now, { id: thing.id, place, mergeKey: `nudge ${thing.id}` });
    }
    case "door":
      return nudgeDoor(project, thing.id, by);
    case "drive": {
      const drive = project.grading.drives.find(({ id }) => id === thing.id);
      const patch = drive && { line: shift(drive.line), door: null };
      return patch
        ? (now) =>
            merging(siteEdits.changeDrive.run(now, { id: thing.id, patch, what: "move drive" }), thing.id)
        : null;
    }
    case "swale": {
      const swale = project.grading.swales.find(({ id }) => id === thing.id);
      const patch = swale && { line: shift(swale.line) };
      return patch
        ? (now) =>
            merging(siteEdits.changeSwale.run(now, { id: thing.id, patch, what: "move swale" }), thing.id)
        : null;
    }
    case "feature": {
      const feature = project.lot.features.find(({ id }) => id === thing.id);
      const patch = feature && { points: shift(feature.points) };
      return patch
        ? (now) => merging(siteEdits.changeFeature.run(now, { id: thing.id, patch }), thing.id)
        : null;
    }
    default:
      return null;
  }
}

/** A door goes along its wall by what the step has in the wall's direction. */
function nudgeDoor(project: Project, id: string, by: Point): ((project: Project) => Edit) | null {
  const door = project.building?.doors.find((each) => each.id === id);
  const ends = door && project.building && wallEnds(project.building.outline, door.wall);
  if (!door || !ends) return null;
  const length = Math.hypot(ends[1][0] - ends[0][0], ends[1][1] - ends[0][1]);
  const along = ((ends[1][0] - ends[0][0]) * by[0] + (ends[1][1] - ends[0][1]) * by[1]) / length;
  const offset = Math.min(length - door.width, Math.max(0, door.offset + along));
  return (now) => merging(buildingEdits.changeDoor.run(now, { id, patch: { offset } }), id);
}

function merging(edit: Edit, id: string): Edit {
  return edit.ok ? { ...edit, mergeKey: `nudge ${id}` } : edit;
}
