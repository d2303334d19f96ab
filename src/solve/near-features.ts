/**
 * Work that runs over what stands on the lot, or comes nearer to it than is to stay clear.
 *
 * Units   metres.
 * Method  What lies on it is read on the ground and the acts themselves, at close places along it, and where it begins and ends by
 *         halving; in an area on the grid.
 *         How near the work comes is measured to the daylight line where that is what ends it there, else to the grid.
 * Source  First principles.
 */
import { isArea } from "../document/features";
import type { Feature } from "../document/schema";
import {
  between,
  boundsOf,
  containsPoint,
  cornerDistances,
  crossingShares,
  distanceToSegment,
  nearestOnRing,
  nearestShare,
  type Point,
  pointAlong,
  segmentsMeet,
} from "../geometry";
import { type Finished, finishHeights, grown, type Layout, placesAt, prepare } from "../grading";
import { coveredLength } from "./covered-length";
import type { HeightAt } from "./grading-plan";
import type { Problem } from "./results";
import { withShapes } from "./who-comes-near";
import type { Words } from "./words";

/** Changes smaller than this are not work, m. */
const change = 0.01;
/** A feature without a distance of its own is reached by work this near, m. */
const reached = 0.05;
/** Places along a line, m apart, and the most of them. */
const spacing = 0.25;
const mostPlaces = 2000;
/** Areas are looked at on the grid; this much of one is no overlap, m2. */
const leastArea = 0.05;
/** The grid sees the end of work late by its cell and by this much of slope, m. */
const seenLate = 0.15;

export function nearFeatures(
  layout: Layout,
  finished: Finished,
  daylight: readonly Float64Array[],
  height: HeightAt,
  features: readonly Feature[],
  words: Words,
): Problem[] {
  if (features.length === 0) return [];
  const work: Work = { layout, finished, daylight, height, worked: workedCells(layout, finished) };
  return features.flatMap((feature) => {
    const first = feature.points[0];
    const told = first ? (runsOver(work, feature, words) ?? comesNear(work, feature, words)) : null;
    if (!told) return [];
    const problem: Problem = {
      code: "grading-near-feature",
      severity: "caution",
      where: feature.name || feature.kind.replace("-", " "),
      what: told.what,
      how: adviceFor(feature),
      at: told.at,
      ids: [feature.id],
    };
    return [withShapes(problem, layout.plan, height, finished.floor, toDo(feature))];
  });
}

interface Work {
  readonly layout: Layout;
  readonly finished: Finished;
  readonly daylight: readonly Float64Array[];
  readonly height: HeightAt;
  /** Cells outside the walls in which the ground changes. */
  readonly worked: readonly number[];
}

interface Told {
  readonly what: string;
  readonly at: [number, number];
}

function workedCells({ prepared, cells }: Layout, { depth }: Finished): number[] {
  const worked: number[] = [];
  for (const i of prepared.touched)
    if (cells.weight[i] !== 0 && Math.abs(depth[i] as number) >= change) worked.push(i);
  return worked;
}

function runsOver(work: Work, feature: Feature, words: Words): Told | null {
  const { ring } = work.layout.plan.footprint;
  const over = isArea(feature) ? overArea(work, feature) : overLine(work, feature);
  if (!over) {
    const at = withinBuilding(feature, ring);
    return at ? { what: `The building stands over it${toStayClear(feature, words)}.`, at } : null;
  }
  const { depth, at, amount } = over;
  const earth = `${words.length(Math.abs(depth))} of ${depth > 0 ? "fill" : "cut"}`;
  const what = isArea(feature)
    ? `Work runs over ${words.area(amount)} of it: up to ${earth}`
    : feature.points.length > 1
      ? `Work runs over ${words.length(amount)} of it: up to ${earth}`
      : `Work runs over it, ${earth} there, and ${words.length(toDaylight(work.daylight, feature)?.distance ?? 0)} on past it`;
  return { what: `${what}${toStayClear(feature, words)}.`, at };
}

function toStayClear({ keepClear }: Feature, words: Words): string {
  return keepClear > 0 ? `, where ${words.length(keepClear)} is to stay clear` : "";
}

interface Over {
  readonly depth: number;
  readonly at: [number, number];
  /** Length or area of it that work covers. */
  readonly amount: number;
}

function overLine({ layout, finished, height }: Work, { points }: Feature): Over | null {
  const { x0, y0, cell, columns, rows } = layout.grid;
  const { ring } = layout.plan.footprint;
  const length = cornerDistances(points)[points.length - 1] ?? 0;
  const pieces = Math.min(mostPlaces, Math.ceil(length / spacing));
  const { floor } = finished;
  /** Finished − existing at places along it; 0 where nothing is worked out, and under the building. */
  const depthsAt = (places: readonly Point[]): number[] => {
    const counted = places.map(
      ([x, y]) =>
        x > x0 && x < x0 + columns * cell && y > y0 && y < y0 + rows * cell && !containsPoint(ring, x, y),
    );
    const seen = places.filter((_, i) => counted[i]);
    const z = finishHeights(
      prepare(placesAt(seen, height), layout.plan, { low: floor, high: floor }),
      floor,
      new Float64Array(seen.length),
    );
    let k = 0;
    return places.map((at, i) => (counted[i] ? (z[k++] as number) - height(at) : 0));
  };
  const alongs = Array.from({ length: pieces + 1 }, (_, i) => (pieces === 0 ? 0 : (length * i) / pieces));
  const placeOf = (along: number): Point =>
    pieces === 0 ? (points[0] as Point) : pointAlong(points, along).at;
  const places = alongs.map(placeOf);
  const depths = depthsAt(places);
  const worst = depths.reduce(
    (most, depth, i) => (Math.abs(depth) > Math.abs(depths[most] ?? 0) ? i : most),
    0,
  );
  const depth = depths[worst] as number;
  if (Math.abs(depth) < change) return null;
  const depthAt = (along: number) => depthsAt([placeOf(along)])[0] as number;
  const covered = coveredLength(alongs, depths, change, depthAt);
  return { depth, at: [...(places[worst] as Point)], amount: covered };
}

function overArea(
  { layout: { cells }, finished: { depth }, worked }: Work,
  { points }: Feature,
): Over | null {
  const box = boundsOf(points);
  let worst = -1;
  let area = 0;
  for (const i of worked) {
    const [x, y] = [cells.x[i] as number, cells.y[i] as number];
    if (x < box.minX || x > box.maxX || y < box.minY || y > box.maxY || !containsPoint(points, x, y))
      continue;
    area += cells.weight[i] as number;
    if (worst < 0 || Math.abs(depth[i] as number) > Math.abs(depth[worst] as number)) worst = i;
  }
  if (area < leastArea) return null;
  return {
    depth: depth[worst] as number,
    at: [cells.x[worst] as number, cells.y[worst] as number],
    amount: area,
  };
}

function comesNear(work: Work, feature: Feature, words: Words): Told | null {
  const keep = Math.max(feature.keepClear, reached);
  const onGrid = nearestCell(work, feature, keep + work.layout.grid.cell + seenLate);
  const onLine = onGrid && toDaylight(work.daylight, feature, keep + work.layout.grid.cell + seenLate);
  const isEnd = onLine && Math.abs(onLine.distance - onGrid.distance) < 2 * work.layout.grid.cell + seenLate;
  const toBuilding = nearestOfBuilding(feature, work.layout.plan.footprint.ring);
  const earth = isEnd ? onLine : onGrid;
  const nearest = earth && earth.distance < toBuilding.distance ? earth : toBuilding;
  if (nearest.distance >= keep) return null;
  return {
    what:
      feature.keepClear > 0
        ? `Work comes within ${words.length(nearest.distance)} of it${toStayClear(feature, words)}.`
        : "Work reaches it.",
    at: nearest.at,
  };
}

interface Near {
  readonly distance: number;
  readonly at: [number, number];
}

function nearestCell({ layout: { cells }, worked }: Work, feature: Feature, within: number): Near | null {
  const box = boundsOf(feature.points);
  let nearest: Near | null = null;
  let least = within;
  for (const i of worked) {
    const [x, y] = [cells.x[i] as number, cells.y[i] as number];
    if (x < box.minX - least || x > box.maxX + least || y < box.minY - least || y > box.maxY + least)
      continue;
    const distance = toFeature(feature, x, y);
    if (distance >= least) continue;
    least = distance;
    nearest = { distance, at: [x, y] };
  }
  return nearest;
}

/** The nearest place, within a distance, of the lines at which cut and fill end. */
function toDaylight(
  daylight: readonly Float64Array[],
  feature: Feature,
  within = Number.POSITIVE_INFINITY,
): Near | null {
  const box = grown(boundsOf(feature.points), within);
  let nearest: Near | null = null;
  let least = within;
  const note = (distance: number, x: number, y: number) => {
    if (distance >= least) return;
    least = distance;
    nearest = { distance, at: [x, y] };
  };
  for (const line of daylight)
    for (let i = 0; i + 3 < line.length; i += 2) {
      const a: Point = [line[i] as number, line[i + 1] as number];
      const b: Point = [line[i + 2] as number, line[i + 3] as number];
      if (b[0] < box.minX || b[0] > box.maxX || b[1] < box.minY || b[1] > box.maxY) continue;
      note(toFeature(feature, ...b), ...b);
      for (const [x, y] of feature.points) {
        const there = between(a, b, nearestShare(a, b, x, y));
        note(Math.hypot(there[0] - x, there[1] - y), ...there);
      }
    }
  return nearest;
}

/** What to do about work near each kind of feature; the tools say it too, when one is put on the plan. */
export const featureAdvice: Partial<Record<Feature["kind"], string>> = {
  "buried-line": "Have it located and marked before any digging, and dig by hand near the marks.",
  "overhead-line": "Keep machines and raised truck bodies away from it; ask the utility for the distance.",
  septic: "No cut, fill or wheels over tank and field; ask the health office.",
  well: "Keep cut, fill and running water away from it.",
  tree: "Cut or fill over its roots kills it slowly: keep the work out from under the crown.",
};

function toDo({ kind }: Feature): string {
  return featureAdvice[kind] ?? "Keep the work away from it, or move it first.";
}

/** Without a clear distance no slope is fitted to a buried line: one that ends just on it would be no help. */
function adviceFor(feature: Feature): string {
  const { kind, keepClear } = feature;
  const advice = toDo(feature);
  return kind === "buried-line" && keepClear === 0
    ? `${advice} Type how far work is to stay clear of it (its owner says), and the slope or wall that stops there is told.`
    : advice;
}

/** Distance from a place to a feature; 0 within an area. */
function toFeature(feature: Feature, x: number, y: number): number {
  const { points } = feature;
  const [first] = points;
  if (!first) return Infinity;
  if (points.length === 1) return Math.hypot(x - first[0], y - first[1]);
  if (isArea(feature)) return containsPoint(points, x, y) ? 0 : nearestOnRing(points, x, y).distance;
  return points
    .slice(1)
    .reduce((least, end, i) => Math.min(least, distanceToSegment(points[i] as Point, end, x, y)), Infinity);
}

/** A place of the feature that the building stands over. */
function withinBuilding(feature: Feature, building: readonly Point[]): [number, number] | null {
  const points = outlineOf(feature);
  const inside = points.find(([x, y]) => containsPoint(building, x, y));
  if (inside) return [...inside];
  for (const [i, end] of points.slice(1).entries()) {
    const start = points[i] as Point;
    for (const [k, corner] of building.entries()) {
      const next = building[(k + 1) % building.length] as Point;
      if (!segmentsMeet(start, end, corner, next)) continue;
      const [t] = crossingShares(start, end, corner, next) ?? [0];
      return [...between(start, end, t)];
    }
  }
  return null;
}

/** Where the building comes nearest to a feature that it doesn't stand over. */
function nearestOfBuilding(feature: Feature, building: readonly Point[]): Near {
  const toWalls = outlineOf(feature).map(([x, y]): Near => {
    const near = nearestOnRing(building, x, y);
    return { distance: near.distance, at: [near.x, near.y] };
  });
  const toCorners = building.map(([x, y]): Near => ({ distance: toFeature(feature, x, y), at: [x, y] }));
  return [...toWalls, ...toCorners].reduce((a, b) => (b.distance < a.distance ? b : a));
}

function outlineOf(feature: Feature): readonly Point[] {
  const [first] = feature.points;
  return isArea(feature) && first ? [...feature.points, first] : feature.points;
}
