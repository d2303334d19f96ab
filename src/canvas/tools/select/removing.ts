/** Delete: takes the selected things away as one step. */
import {
  buildingEdits,
  drawingEdits,
  type Edit,
  type Project,
  siteEdits,
  surveyEdits,
  windowEdits,
} from "../../../document";
import type { Selected } from "../../../store/state";
import type { ToolContext } from "../tool";
import { thingWord } from "./thingWord";

function removal(thing: Selected): (project: Project) => Edit {
  switch (thing.kind) {
    case "building":
      return (project) => buildingEdits.removeBuilding.run(project, {});
    case "lot":
      return (project) => siteEdits.setLotOutline.run(project, { outline: [] });
    case "door":
      return (project) => buildingEdits.removeDoor.run(project, { id: thing.id });
    case "drive":
      return (project) => siteEdits.removeDrive.run(project, { id: thing.id });
    case "swale":
      return (project) => siteEdits.removeSwale.run(project, { id: thing.id });
    case "feature":
      return (project) => siteEdits.removeFeature.run(project, { id: thing.id });
    case "mark":
      return (project) => surveyEdits.removeMark.run(project, { id: thing.id });
    case "shot":
      return (project) => surveyEdits.removeShots.run(project, { ids: [thing.id] });
    case "window":
      return (project) => windowEdits.removeWindow.run(project, { id: thing.id });
    case "note":
    case "dimension":
    case "section":
    case "underlay":
      return (project) => drawingEdits.removeDrawn.run(project, { kind: thing.kind, id: thing.id });
  }
}

export function removeSelected(context: ToolContext): void {
  const selection = context.selection();
  const [only] = selection;
  if (!only) return;
  const shots = selection.flatMap((thing) => (thing.kind === "shot" ? [thing.id] : []));
  const others = selection.filter(({ kind }) => kind !== "shot").map(removal);
  const edits = [
    ...(shots.length > 0 ? [(project: Project) => surveyEdits.removeShots.run(project, { ids: shots })] : []),
    ...others,
  ];
  const label = selection.length > 1 ? `remove ${selection.length} things` : `remove ${thingWord(only)}`;
  if (context.runTogether(label, edits).ok) context.select([]);
}
