/** Arrow keys: the selected things move by a small set step; steps in a row are one undo step. */
import {
  buildingEdits,
  drawingEdits,
  type Edit,
  type Point,
  type Project,
  siteEdits,
  surveyEdits,
  windowEdits,
} from "../../../document";
import { dimensionShape } from "../../../drawing";
import type { Selected } from "../../../store/state";
import { INCH } from "../../../units";
import type { OpeningRef } from "../../select/handles";
import { findOpening, shotPlace, wallEnds } from "../../select/places";
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
      return nudgeOpening(project, { kind: "door", id: thing.id }, by);
    case "window":
      return nudgeOpening(project, { kind: "window", id: thing.id }, by);
    case "note": {
      const at = project.drawing.notes.find(({ id }) => id === thing.id)?.at;
      const patch = at && { at: shift([at])[0] as Point };
      return patch
        ? (now) =>
            merging(drawingEdits.changeNote.run(now, { id: thing.id, patch, what: "move note" }), thing.id)
        : null;
    }
    case "dimension": {
      const dimension = project.drawing.dimensions.find(({ id }) => id === thing.id);
      const shape = dimension && dimensionShape(project, dimension);
      if (!dimension || !shape) return null;
      // Its places stay; the line comes nearer or goes farther off.
      const offset = dimension.offset + by[0] * shape.left[0] + by[1] * shape.left[1];
      return (now) =>
        merging(drawingEdits.changeDimension.run(now, { id: thing.id, patch: { offset } }), thing.id);
    }
    case "section": {
      const line = project.drawing.sections.find(({ id }) => id === thing.id)?.line;
      const patch = line && { line: shift(line) as [Point, Point] };
      return patch
        ? (now) => merging(drawingEdits.changeSection.run(now, { id: thing.id, patch }), thing.id)
        : null;
    }
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

/** A door or window goes along its wall by what the step has in the wall's direction. */
function nudgeOpening(project: Project, of: OpeningRef, by: Point): ((project: Project) => Edit) | null {
  const { id } = of;
  const door = findOpening(project, of);
  const ends = door && project.building && wallEnds(project.building.outline, door.wall);
  if (!door || !ends) return null;
  const length = Math.hypot(ends[1][0] - ends[0][0], ends[1][1] - ends[0][1]);
  const along = ((ends[1][0] - ends[0][0]) * by[0] + (ends[1][1] - ends[0][1]) * by[1]) / length;
  const offset = Math.min(length - door.width, Math.max(0, door.offset + along));
  const change = of.kind === "door" ? buildingEdits.changeDoor : windowEdits.changeWindow;
  return (now) => merging(change.run(now, { id, patch: { offset } }), id);
}

function merging(edit: Edit, id: string): Edit {
  return edit.ok ? { ...edit, mergeKey: `nudge ${id}` } : edit;
}
