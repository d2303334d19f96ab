/** What "fit" shows: the smallest upright box round everything drawn, or round the building. */
import { type Project, type Thing, thingShape } from "../../document";
import { type Bounds, boundsOf } from "../../geometry";
import { shotPlace } from "../select/places";
import type { XY } from "./view";

/** Everything on the plan; of an empty plan an inverted box. */
export function planBounds(project: Project): Bounds {
  const before = known.get(project);
  if (before) return before;
  const bounds = boundsOf(planPlaces(project));
  known.set(project, bounds);
  return bounds;
}

/** A project never changes: the bounds of one with a million shots are measured once. */
const known = new WeakMap<Project, Bounds>();

/** All places that belong to something on the plan. */
export function planPlaces(project: Project): readonly XY[] {
  const { lot, building, grading, survey, drawing } = project;
  const points: XY[] = [...lot.outline, ...(building?.outline ?? [])];
  for (const feature of lot.features) points.push(...feature.points);
  for (const { line } of [
    ...grading.drives,
    ...grading.swales,
    ...grading.berms,
    ...grading.walls,
    ...drawing.sections,
  ])
    points.push(...line);
  for (const pad of grading.pads) points.push(...pad.outline);
  for (const { at } of grading.points) points.push(at);
  for (const { points: line } of survey.breaklines) for (const [x, y] of line) points.push([x, y]);
  for (const { id } of survey.pits) points.push(...(thingShape(project, { kind: "pit", id })?.points ?? []));
  for (const mark of project.survey.marks) if (mark.at) points.push(mark.at);
  for (const shot of project.survey.shots) {
    const at = shotPlace(project, shot);
    if (at) points.push(at);
  }
  return points;
}

/** Corners of a box. */
export function cornersOf({ minX, minY, maxX, maxY }: Bounds): readonly XY[] {
  return [
    [minX, minY],
    [maxX, minY],
    [maxX, maxY],
    [minX, maxY],
  ];
}

/** The building with room for its apron, or null without one. */
export function buildingBounds(project: Project): Bounds | null {
  if (!project.building) return null;
  const box = boundsOf(project.building.outline);
  const room = project.grading.apron.width * 2;
  return {
    minX: box.minX - room,
    minY: box.minY - room,
    maxX: box.maxX + room,
    maxY: box.maxY + room,
  };
}

/** Things with room round them; null where none of them has a place. */
export function boundsOfThings(project: Project, things: readonly Thing[]): Bounds | null {
  const points = things.flatMap((thing) => thingShape(project, thing)?.points ?? []);
  if (points.length === 0) return null;
  const box = boundsOf(points);
  const room = Math.max(1, 0.1 * Math.max(box.maxX - box.minX, box.maxY - box.minY));
  return { minX: box.minX - room, minY: box.minY - room, maxX: box.maxX + room, maxY: box.maxY + room };
}
