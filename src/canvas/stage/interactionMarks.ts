/** What lies over the plan: the selection with its handles, the thing under the pointer, and the tool's marks. */
import type { DrawingMark } from "../../drawing/marks";
import { appStore, shownProject } from "../../store/store";
import { pxPerMm } from "../screen";
import { sectionSpot } from "../section/sectionOnPlan";
import { handleMarks, handlesFor } from "../select/handles";
import { includesThing } from "../select/hit";
import { outlineMarks } from "../select/outlineMarks";
import { snapMarks } from "../tools/liveMarks";
import { planView } from "../view/planView";
import { toolRun } from "./toolRun";

export function interactionMarks(): DrawingMark[] {
  const state = appStore.getState();
  const tool = toolRun.getState().state;
  const project = shownProject(state);
  const { view } = planView.getState();
  const metresPerMm = pxPerMm / view.scale;
  const selected = state.selection.flatMap((thing) => outlineMarks(project, thing, "selected", metresPerMm));
  const hovers = tool.hovered && !includesThing(state.selection, tool.hovered);
  const hovered = hovers && tool.hovered ? outlineMarks(project, tool.hovered, "hovered", metresPerMm) : [];
  const handles = tool.handles
    ? handleMarks(handlesFor(project, state.selection, view), tool.hot ?? null)
    : [];
  const { at } = sectionSpot.getState();
  const spot: DrawingMark[] = at ? [{ kind: "symbol", at, symbol: "ring", size: 3, style: "snap-ring" }] : [];
  return [...spot, ...hovered, ...selected, ...(tool.marks ?? []), ...handles, ...snapMarks(tool.snap)];
}
