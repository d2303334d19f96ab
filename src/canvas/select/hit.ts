/** What lies under a place of the plan: the smallest thing first, so that nothing hides behind a larger one. */
import type { Point, Project } from "../../document";
import { containsPoint, distance, distanceToSegment, nearestOnPolyline, nearestOnRing } from "../../geometry";
import type { Selected } from "../../store/state";
import { pictureAt } from "./pictures";
import { doorEdges, shotPlace } from "./places";

/** The thing at a place, or null on open ground. `reach` is how near the pointer must come, m. */
export function thingAt(project: Project, at: Point, reach: number): Selected | null {
  return (
    spotAt(project, at, reach) ??
    doorAt(project, at, reach) ??
    buildingWallAt(project, at, reach) ??
    lineAt(project, at, reach) ??
    buildingAt(project, at) ??
    featureAt(project, at, reach) ??
    driveAreaAt(project, at) ??
    lotAt(project, at, reach) ??
    underlayAt(project, at)
  );
}

/** Marks come before shots: a mark is often shot too. A shot on a building corner is the corner's business. */
function spotAt(project: Project, at: Point, reach: number): Selected | null {
  let best: Selected | null = null;
  let bestDistance = reach;
  for (const mark of project.survey.marks) {
    const d = mark.at ? distance(mark.at, at) : Infinity;
    if (d < bestDistance) [best, bestDistance] = [{ kind: "mark", id: mark.id }, d];
  }
  for (const shot of project.survey.shots) {
    if (shot.place.kind === "corner") continue;
    const place = shotPlace(project, shot);
    const d = place ? distance(place, at) : Infinity;
    if (d < bestDistance) [best, bestDistance] = [{ kind: "shot", id: shot.id }, d];
  }
  return best;
}

function doorAt(project: Project, at: Point, reach: number): Selected | null {
  const outline = project.building?.outline;
  if (!outline) return null;
  for (const door of project.building?.doors ?? []) {
    const edges = doorEdges(outline, door);
    if (edges && distanceToSegment(edges[0], edges[1], at[0], at[1]) < reach)
      return { kind: "door", id: door.id };
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

function featureAt(project: Project, at: Point, reach: number): Selected | null {
  for (const feature of project.lot.features) {
    const [first] = feature.points;
    if (!first) continue;
    const off =
      feature.points.length === 1
        ? distance(first, at)
        : nearestOnPolyline(feature.points, at[0], at[1]).distance;
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
