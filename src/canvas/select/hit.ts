/** What lies under a place of the plan: the smallest thing first, so that nothing hides behind a larger one. */
import { isArea, type Point, type Project, type Shot, thingShape, visibleProject } from "../../document";
import { dimensionShape, noteBoxes } from "../../drawing";
import type { Box } from "../../drawing/labels";
import { containsPoint, distance, distanceToSegment, nearestOnPolyline, nearestOnRing } from "../../geometry";
import type { Selected } from "../../store/state";
import { closedLayers, pickable } from "./pickable";
import { pictureAt } from "./pictures";
import { doorEdges, shotPlace } from "./places";

/**
 * The thing at a place, or null on open ground; hidden things and those of hidden or locked layers
 * aren't there. `reach` is how near the pointer must come,
 * m; `metresPerMm` the scale at which words are written.
 */
export function thingAt(whole: Project, at: Point, reach: number, metresPerMm = reach): Selected | null {
  const closed = closedLayers();
  const project = pickable(visibleProject(whole), closed);
  const built = closed.has("building") ? { ...project, building: null } : project;
  return (
    spotAt(project, at, reach) ??
    noteAt(project, at, metresPerMm) ??
    openingAt(built, at, reach) ??
    dimensionAt(project, at, reach) ??
    buildingWallAt(built, at, reach) ??
    lineAt(project, at, reach) ??
    buildingAt(built, at) ??
    featureAt(project, at, reach) ??
    driveAreaAt(project, at) ??
    shapeAreaAt(project, at) ??
    lotAt(project, at, reach) ??
    underlayAt(project, at)
  );
}

/** Marks and pits come before shots: a mark is often shot too. A shot on a building corner is the corner's business. */
function spotAt(project: Project, at: Point, reach: number): Selected | null {
  let best: Selected | null = null;
  let bestDistance = reach;
  for (const mark of project.survey.marks) {
    const d = mark.at ? distance(mark.at, at) : Infinity;
    if (d < bestDistance) [best, bestDistance] = [{ kind: "mark", id: mark.id }, d];
  }
  for (const { id } of project.survey.pits) {
    const [place] = thingShape(project, { kind: "pit", id })?.points ?? [];
    const d = place ? distance(place, at) : Infinity;
    if (d < bestDistance) [best, bestDistance] = [{ kind: "pit", id }, d];
  }
  for (const { id, at: place } of project.grading.points) {
    const d = distance(place, at);
    if (d < bestDistance) [best, bestDistance] = [{ kind: "grade-point", id }, d];
  }
  for (const shot of project.survey.shots) {
    if (shot.place.kind === "corner" || isFarOff(shot.place, at, bestDistance)) continue;
    const place = shotPlace(project, shot);
    const d = place ? distance(place, at) : Infinity;
    if (d < bestDistance) [best, bestDistance] = [{ kind: "shot", id: shot.id }, d];
  }
  return best;
}

/** Most shots are told off by two subtractions. */
function isFarOff(place: Shot["place"], [x, y]: Point, reach: number): boolean {
  return place.kind === "at" && (Math.abs(place.x - x) > reach || Math.abs(place.y - y) > reach);
}

/** On its words; the last written lies on top. */
function noteAt(project: Project, [x, y]: Point, metresPerMm: number): Selected | null {
  const on = [...project.drawing.notes]
    .reverse()
    .find((note) =>
      noteBoxes(project, note, metresPerMm).some((box) => inBox(box, x / metresPerMm, y / metresPerMm)),
    );
  return on ? { kind: "note", id: on.id } : null;
}

function inBox(box: Box, x: number, y: number): boolean {
  const [dx, dy] = [x - box.x, y - box.y];
  const [c, s] = [Math.cos(box.angle), Math.sin(box.angle)];
  return Math.abs(dx * c + dy * s) <= box.width / 2 && Math.abs(dy * c - dx * s) <= box.height / 2;
}

function openingAt(project: Project, at: Point, reach: number): Selected | null {
  const { building } = project;
  if (!building) return null;
  for (const [kind, list] of [
    ["door", building.doors],
    ["window", building.windows],
  ] as const) {
    for (const opening of list) {
      const edges = doorEdges(building.outline, opening);
      if (edges && distanceToSegment(edges[0], edges[1], at[0], at[1]) < reach)
        return { kind, id: opening.id };
    }
  }
  return null;
}

/** On its line; its ends belong to what they measure. */
function dimensionAt(project: Project, at: Point, reach: number): Selected | null {
  for (const dimension of project.drawing.dimensions) {
    const shape = dimensionShape(project, dimension);
    if (shape && distanceToSegment(shape.a, shape.b, at[0], at[1]) < reach)
      return { kind: "dimension", id: dimension.id };
  }
  return null;
}

function buildingWallAt(project: Project, at: Point, reach: number): Selected | null {
  const outline = project.building?.outline;
  if (!outline) return null;
  return nearestOnRing(outline, at[0], at[1]).distance < reach ? { kind: "building" } : null;
}

function buildingAt(project: Project, at: Point): Selected | null {
  const outline = project.building?.outline;
  return outline && containsPoint(outline, at[0], at[1]) ? { kind: "building" } : null;
}

function lineAt(project: Project, at: Point, reach: number): Selected | null {
  for (const { id, line } of project.drawing.sections) {
    if (distanceToSegment(line[0], line[1], at[0], at[1]) < reach) return { kind: "section", id };
  }
  for (const { id } of project.survey.breaklines) {
    const shape = thingShape(project, { kind: "breakline", id });
    const first = shape?.points[0];
    if (!shape || !first) continue;
    const line = shape.closed ? [...shape.points, first] : shape.points;
    if (nearestOnPolyline(line, at[0], at[1]).distance < reach) return { kind: "breakline", id };
  }
  for (const { id, line } of project.grading.walls) {
    if (nearestOnPolyline(line, at[0], at[1]).distance < reach) return { kind: "retaining-wall", id };
  }
  for (const { id, line } of project.grading.berms) {
    if (nearestOnPolyline(line, at[0], at[1]).distance < reach) return { kind: "berm", id };
  }
  for (const { id, outline } of project.grading.pads) {
    if (nearestOnRing(outline, at[0], at[1]).distance < reach) return { kind: "pad", id };
  }
  for (const swale of project.grading.swales) {
    if (nearestOnPolyline(swale.line, at[0], at[1]).distance < reach) return { kind: "swale", id: swale.id };
  }
  for (const drive of project.grading.drives) {
    if (nearestOnPolyline(drive.line, at[0], at[1]).distance < reach) return { kind: "drive", id: drive.id };
  }
  return null;
}

function driveAreaAt(project: Project, at: Point): Selected | null {
  const drive = project.grading.drives.find(
    ({ line, width }) => nearestOnPolyline(line, at[0], at[1]).distance < width / 2,
  );
  return drive ? { kind: "drive", id: drive.id } : null;
}

/** On the top of a berm, within a pad. */
function shapeAreaAt({ grading }: Project, at: Point): Selected | null {
  const berm = grading.berms.find(
    ({ line, topWidth }) => nearestOnPolyline(line, at[0], at[1]).distance < topWidth / 2,
  );
  if (berm) return { kind: "berm", id: berm.id };
  const pad = [...grading.pads].reverse().find(({ outline }) => containsPoint(outline, at[0], at[1]));
  return pad ? { kind: "pad", id: pad.id } : null;
}

function featureAt(project: Project, at: Point, reach: number): Selected | null {
  for (const feature of project.lot.features) {
    const [first] = feature.points;
    if (!first) continue;
    const off =
      feature.points.length === 1
        ? distance(first, at)
        : (isArea(feature) ? nearestOnRing : nearestOnPolyline)(feature.points, at[0], at[1]).distance;
    if (off < reach) return { kind: "feature", id: feature.id };
  }
  return null;
}

function lotAt(project: Project, at: Point, reach: number): Selected | null {
  const { outline } = project.lot;
  return outline.length > 2 && nearestOnRing(outline, at[0], at[1]).distance < reach ? { kind: "lot" } : null;
}

function underlayAt(project: Project, at: Point): Selected | null {
  const picture = pictureAt(project, at);
  return picture && { kind: "underlay", id: picture.id };
}

export function sameThing(a: Selected | null, b: Selected | null): boolean {
  if (!a || !b) return a === b;
  return a.kind === b.kind && ("id" in a ? a.id : "") === ("id" in b ? b.id : "");
}

export function includesThing(list: readonly Selected[], thing: Selected): boolean {
  return list.some((each) => sameThing(each, thing));
}
