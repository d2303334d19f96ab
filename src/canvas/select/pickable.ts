/** What can be picked: things of layers that are switched off or locked are passed over. */
import type { Project } from "../../document";
import type { PlanLayer } from "../../store/layers";
import { appStore } from "../../store/store";

/** Layers whose things aren't picked now. */
export function closedLayers(): ReadonlySet<PlanLayer> {
  const { hidden, lockedLayers } = appStore.getState();
  return lockedLayers.size === 0 ? hidden : new Set([...hidden, ...lockedLayers]);
}

/** The project without the things of the closed layers; a closed building is still there to place others by. */
export function pickable(project: Project, closed: ReadonlySet<PlanLayer>): Project {
  const { lot, survey, grading, drawing } = project;
  const open = <T>(layer: PlanLayer, list: T[]): T[] => (closed.has(layer) ? [] : list);
  return {
    ...project,
    lot: { ...lot, outline: open("lot", lot.outline), features: open("features", lot.features) },
    survey: {
      ...survey,
      shots: open("shots", survey.shots),
      breaklines: open("breaklines", survey.breaklines),
      pits: open("shots", survey.pits),
    },
    grading: {
      ...grading,
      drives: open("drives", grading.drives),
      swales: open("swales", grading.swales),
      pads: open("drives", grading.pads),
      berms: open("drives", grading.berms),
      walls: open("drives", grading.walls),
      points: open("drives", grading.points),
    },
    drawing: {
      ...drawing,
      notes: open("notes", drawing.notes),
      dimensions: open("dimensions", drawing.dimensions),
      sections: open("sections", drawing.sections),
      underlays: open("underlay", drawing.underlays),
    },
  };
}
