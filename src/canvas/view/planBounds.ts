/** What "fit" shows: the smallest upright box round everything drawn, or round the building. */
import { type Project, placeResolver, type Thing, thingShape } from "../../document";
import { type Bounds, boundsOf, outermost } from "../../geometry";
import { oncePer } from "../../solve/once-per";
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

/** Places of what is on the plan; of a cloud of shots those at its rim. */
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
  return points.concat(shotPlaces(project));
}

function shotPlaces({ survey, building }: Project): readonly XY[] {
  const { rim, others } = sorted(survey.shots);
  const placed = placeResolver(survey, building?.outline ?? []);
  const at = others.flatMap(({ place }): XY[] => {
    const found = placed(place).at;
    return found ? [found] : [];
  });
  return rim.concat(at);
}

/** The same shots are asked for at each fit and each edit: those at places of their own, as far as they matter, and the rest. */
const sorted = oncePer((shots: Project["survey"]["shots"]) => {
  const own = shots.flatMap(({ place }) => (place.kind === "at" ? place : []));
  const rim = outermost(own).map(({ x, y }): XY => [x, y]);
  return { rim, others: shots.filter(({ place }) => place.kind !== "at" && place.kind !== "none") };
});

/** Corners of a box. */
export function cornersOf({ minX, minY, maxX, maxY }: Bounds): readonly XY[] {
  return [
    [minX, minY],
    [maxX, minY],
    [maxX, maxY],
    [minX, maxY],
  ];
}

/** Of the room that the building with its surroundings is shown in it takes this share itself, each way. */
const shareOfBuilding = 0.75;

/**
 * Corners of what the building and its near surroundings take on a plan turned by `turn`, radians counter-clockwise; null
 * without a building. Method: its walls, larger about the middle of the box round them as they lie on the screen.
 */
export function buildingPlaces(project: Project, turn: number): readonly XY[] | null {
  if (!project.building) return null;
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  const seen = project.building.outline.map(([x, y]): [number, number] => [x * c - y * s, x * s + y * c]);
  const { minX, minY, maxX, maxY } = boundsOf(seen);
  const larger = (at: number, from: number, to: number) =>
    (from + to) / 2 + (at - (from + to) / 2) / shareOfBuilding;
  return seen.map(([u, v]): XY => {
    const [x, y] = [larger(u, minX, maxX), larger(v, minY, maxY)];
    return [x * c + y * s, y * c - x * s];
  });
}

/** Things with room round them; null where none of them has a place. */
export function boundsOfThings(project: Project, things: readonly Thing[]): Bounds | null {
  const points = things.flatMap((thing) => thingShape(project, thing)?.points ?? []);
  if (points.length === 0) return null;
  const box = boundsOf(points);
  const room = Math.max(1, 0.1 * Math.max(box.maxX - box.minX, box.maxY - box.minY));
  return { minX: box.minX - room, minY: box.minY - room, maxX: box.maxX + room, maxY: box.maxY + room };
}
