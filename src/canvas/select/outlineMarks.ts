/** The outline of a thing, to show that it is selected or under the pointer. */
import { isArea, type Note, type Project, thingShape } from "../../document";
import { dimensionShape, noteBoxes } from "../../drawing";
import type { Box } from "../../drawing/labels";
import type { DrawingMark } from "../../drawing/marks";
import type { Selected } from "../../store/state";
import { cornersOnPlan } from "../../underlay";
import { pictureById } from "./pictures";
import { doorEdges, findOpening, shotPlace } from "./places";

export function outlineMarks(
  project: Project,
  thing: Selected,
  style: "selected" | "hovered",
  metresPerMm: number,
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
    case "pad":
    case "berm":
    case "retaining-wall":
    case "breakline": {
      const shape = thingShape(project, thing);
      return shape ? [{ kind: "line", points: shape.points.flat(), closed: shape.closed, style }] : [];
    }
    case "section": {
      const section = project.drawing.sections.find(({ id }) => id === thing.id);
      return section ? [{ kind: "line", points: section.line.flat(), style }] : [];
    }
    case "note": {
      const note = project.drawing.notes.find(({ id }) => id === thing.id);
      return note ? noteOutline(project, note, style, metresPerMm) : [];
    }
    case "dimension": {
      const dimension = project.drawing.dimensions.find(({ id }) => id === thing.id);
      const shape = dimension && dimensionShape(project, dimension);
      return shape ? [{ kind: "line", points: [...shape.a, ...shape.b], style }] : [];
    }
    case "door":
    case "window": {
      const opening = findOpening(project, { kind: thing.kind, id: thing.id });
      const edges = opening && project.building ? doorEdges(project.building.outline, opening) : null;
      return edges ? [{ kind: "line", points: edges.flat(), style }] : [];
    }
    case "feature": {
      const feature = project.lot.features.find(({ id }) => id === thing.id);
      if (!feature) return [];
      return feature.points.length > 1
        ? [{ kind: "line", points: feature.points.flat(), closed: isArea(feature), style }]
        : spot(feature.points[0] ?? null, style);
    }
    case "grade-point":
    case "pit":
      return spot(thingShape(project, thing)?.points[0] ?? null, style);
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

/** A frame round the words, and the leader. */
function noteOutline(
  project: Project,
  note: Note,
  style: "selected" | "hovered",
  metresPerMm: number,
): DrawingMark[] {
  const leader: DrawingMark[] = note.pointsTo
    ? [{ kind: "line", points: [...note.at, ...note.pointsTo], style }]
    : [];
  const boxes = noteBoxes(project, note, metresPerMm);
  const [first] = boxes;
  if (!first) return leader;
  const [c, s] = [Math.cos(first.angle), Math.sin(first.angle)];
  // Along and across the lines of words.
  const reach = (of: (box: Box) => readonly [number, number]) => {
    const all = boxes.flatMap(of);
    return [Math.min(...all), Math.max(...all)] as const;
  };
  const [left, right] = reach(({ x, y, width }) => [x * c + y * s - width / 2, x * c + y * s + width / 2]);
  const [low, high] = reach(({ x, y, height }) => [y * c - x * s - height / 2, y * c - x * s + height / 2]);
  const corner = (u: number, v: number) => [(u * c - v * s) * metresPerMm, (u * s + v * c) * metresPerMm];
  const points = [corner(left, low), corner(right, low), corner(right, high), corner(left, high)].flat();
  return [...leader, { kind: "line", points, closed: true, style }];
}

function ring(points: readonly (readonly [number, number])[], style: "selected" | "hovered"): DrawingMark {
  return { kind: "line", points: points.flat(), closed: true, style };
}

function spot(at: readonly [number, number] | null, style: "selected" | "hovered"): DrawingMark[] {
  return at ? [{ kind: "symbol", at, symbol: "ring", size: 4.4, style }] : [];
}
