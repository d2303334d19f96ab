/** The outline of a thing, to show that it is selected or under the pointer. */
import type { Project } from "../../document";
import type { DrawingMark } from "../../drawing/marks";
import type { Selected } from "../../store/state";
import { cornersOnPlan } from "../../underlay";
import { pictureById } from "./pictures";
import { doorEdges, shotPlace } from "./places";

export function outlineMarks(
  project: Project,
  thing: Selected,
  style: "selected" | "hovered",
): DrawingMark[] {
  switch (thing.kind) {
    case "building":
      return project.building ? [ring(project.building.outline, style)] : [];
    case "lot":
      return [ring(project.lot.outline, style)];
    case "drive":
    case "swale": {
      const list = thing.kind === "drive" ? project.grading.drives : project.grading.swales;
      const found = list.find(({ id }) => id === thing.id);
      return found ? [{ kind: "line", points: found.line.flat(), style }] : [];
    }
    case "door": {
      const door = project.building?.doors.find(({ id }) => id === thing.id);
      const edges = door && project.building ? doorEdges(project.building.outline, door) : null;
      return edges ? [{ kind: "line", points: edges.flat(), style }] : [];
    }
    case "feature": {
      const feature = project.lot.features.find(({ id }) => id === thing.id);
      if (!feature) return [];
      return feature.points.length > 1
        ? [{ kind: "line", points: feature.points.flat(), style }]
        : spot(feature.points[0] ?? null, style);
    }
    case "mark":
      return spot(project.survey.marks.find(({ id }) => id === thing.id)?.at ?? null, style);
    case "shot": {
      const shot = project.survey.shots.find(({ id }) => id === thing.id);
      return spot(shot ? shotPlace(project, shot) : null, style);
    }
    case "underlay": {
      const picture = pictureById(project, thing.id);
      return picture ? [ring(cornersOnPlan(picture), style)] : [];
    }
    default:
      return [];
  }
}

function ring(points: readonly (readonly [number, number])[], style: "selected" | "hovered"): DrawingMark {
  return { kind: "line", points: points.flat(), closed: true, style };
}

function spot(at: readonly [number, number] | null, style: "selected" | "hovered"): DrawingMark[] {
  return at ? [{ kind: "symbol", at, symbol: "ring", size: 4.4, style }] : [];
}
