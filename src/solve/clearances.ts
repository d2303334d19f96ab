/** Where graded ground comes too near to something: the lot line, a well, a buried line, a tree to keep. */
import { isArea } from "../document/features";
import type { Feature, Lot } from "../document/schema";
import {
  boundsOf,
  containsPoint,
  distanceToSegment,
  nearestOnPolyline,
  nearestOnRing,
  type Point,
  segmentsMeet,
} from "../geometry";
import type { Finished, GradingPlan, Layout } from "../grading";
import { lineSetbacks } from "../plot";
import type { Problem } from "./results";
import type { Words } from "./words";

/** Changes smaller than this are not work, m. */
const change = 0.01;
/** Grading past the lot line by less than this is drawing, not work, m. */
const pastLine = 0.05;
/** Ground beside the road end of a drive that belongs to the crossing, m. */
const roadShoulder = 1.5;

export function clearances(layout: Layout, finished: Finished, lot: Lot, words: Words): Problem[] {
  const worked = workedPlaces(layout, finished);
  return [
    ...(lot.outline.length >= 3 ? pastLot(worked, lot.outline, layout.plan.drives, words) : []),
    ...pastSetbacks(worked, lot, layout.plan.drives, words),
    ...lot.features.flatMap((feature) => nearFeature(worked, layout.plan.footprint.ring, feature, words)),
  ];
}

/** Places where the ground changes, flat x, y; of the cells outside the walls. */
function workedPlaces({ prepared, cells }: Layout, { depth }: Finished): number[] {
  const places: number[] = [];
  for (const i of prepared.touched) {
    if (cells.weight[i] === 0 || Math.abs(depth[i] as number) < change) continue;
    places.push(cells.x[i] as number, cells.y[i] as number);
  }
  return places;
}

function pastLot(
  worked: readonly number[],
  outline: readonly Point[],
  drives: GradingPlan["drives"],
  words: Words,
): Problem[] {
  let farthest = pastLine;
  let at: [number, number] | null = null;
  for (let k = 0; k + 1 < worked.length; k += 2) {
    const [x, y] = [worked[k] as number, worked[k + 1] as number];
    if (containsPoint(outline, x, y)) continue;
    const { distance } = nearestOnRing(outline, x, y);
    if (distance <= farthest || atRoad(drives, x, y)) continue;
    farthest = distance;
    at = [x, y];
  }
  if (!at) return [];
  return [
    {
      code: "grading-past-lot",
      severity: "caution",
      where: "the lot line",
      what: `Cut or fill reaches ${words.length(farthest)} past it.`,
      how: "Take steeper side slopes, a lower floor, a retaining wall, or move the building. Only a licensed surveyor settles where the line is.",
      at,
    },
  ];
}

/** Work in a strip where nothing may be built: mostly allowed for earth, but worth asking. */
function pastSetbacks(
  worked: readonly number[],
  lot: Lot,
  drives: GradingPlan["drives"],
  words: Words,
): Problem[] {
  return lineSetbacks(lot).flatMap(({ line, distance: wide }): Problem[] => {
    const start = lot.outline[line];
    const end = lot.outline[(line + 1) % lot.outline.length];
    if (!start || !end || lot.outline.length < 3) return [];
    let nearest = wide - pastLine;
    let at: [number, number] | null = null;
    for (let k = 0; k + 1 < worked.length; k += 2) {
      const [x, y] = [worked[k] as number, worked[k + 1] as number];
      const apart = distanceToSegment(start, end, x, y);
      if (apart >= nearest || !containsPoint(lot.outline, x, y) || onDrives(drives, x, y)) continue;
      nearest = apart;
      at = [x, y];
    }
    if (!at) return [];
    return [
      {
        code: "grading-past-setback",
        severity: "note",
        where: `the setback from lot line ${line + 1}`,
        what: `Cut or fill reaches ${words.length(wide - nearest)} into it.`,
        how: "Earth is often allowed there where a building isn't; ask the building office.",
        at,
      },
    ];
  });
}

function onDrives(drives: GradingPlan["drives"], x: number, y: number): boolean {
  return drives.some(
    ({ line, drive }) =>
      nearestOnPolyline(line, x, y).distance <= drive.width / 2 + drive.shoulder.width + roadShoulder,
  );
}

/** Where a drive meets the road it has to cross the lot line; its shoulders run out beside it. */
function atRoad(drives: GradingPlan["drives"], x: number, y: number): boolean {
  return drives.some(({ line, drive }) => {
    const [road] = line;
    return road !== undefined && Math.hypot(x - road[0], y - road[1]) <= drive.width / 2 + roadShoulder;
  });
}

function nearFeature(
  worked: readonly number[],
  building: readonly Point[],
  feature: Feature,
  words: Words,
): Problem[] {
  const box = boundsOf(feature.points);
  let nearest = Math.max(feature.keepClear, 0.05);
  let found = false;
  const look = (x: number, y: number) => {
    if (x < box.minX - nearest || x > box.maxX + nearest || y < box.minY - nearest || y > box.maxY + nearest)
      return;
    const distance = toFeature(feature, x, y);
    if (distance >= nearest) return;
    nearest = distance;
    found = true;
  };
  for (let k = 0; k + 1 < worked.length; k += 2) look(worked[k] as number, worked[k + 1] as number);
  const toBuilding = betweenFeatureAndBuilding(feature, building);
  if (toBuilding < nearest) {
    nearest = toBuilding;
    found = true;
  }
  const first = feature.points[0];
  if (!found || !first) return [];
  const name = feature.name || feature.kind.replace("-", " ");
  return [
    {
      code: "grading-near-feature",
      severity: "caution",
      where: name,
      what:
        feature.keepClear > 0
          ? `Work comes within ${words.length(nearest)} of it, where ${words.length(feature.keepClear)} is to stay clear.`
          : "Work reaches it.",
      how: featureAdvice[feature.kind] ?? "Keep the work away from it, or move it first.",
      at: [...first],
      ids: [feature.id],
    },
  ];
}

/** What to do about work near each kind of feature; the tools say it too, when one is put on the plan. */
export const featureAdvice: Partial<Record<Feature["kind"], string>> = {
  "buried-line": "Have it located and marked before any digging, and dig by hand near the marks.",
  "overhead-line": "Keep machines and raised truck bodies away from it; ask the utility for the distance.",
  septic: "No cut, fill or wheels over tank and field; ask the health office.",
  well: "Keep cut, fill and running water away from it.",
  tree: "Cut or fill over its roots kills it slowly: keep the work out from under the crown.",
};

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

/** 0 where the building stands over it. */
function betweenFeatureAndBuilding(feature: Feature, building: readonly Point[]): number {
  const [first] = feature.points;
  const points = isArea(feature) && first ? [...feature.points, first] : feature.points;
  const over = points.some(([x, y]) => containsPoint(building, x, y));
  const crossed = points.slice(1).some((end, i) => crossesRing(points[i] as Point, end, building));
  if (over || crossed) return 0;
  const fromPoints = points.map(([x, y]) => nearestOnRing(building, x, y).distance);
  const fromCorners = building.map(([x, y]) => toFeature(feature, x, y));
  return Math.min(...fromPoints, ...fromCorners);
}

function crossesRing(a: Point, b: Point, ring: readonly Point[]): boolean {
  return ring.some((corner, i) => segmentsMeet(a, b, corner, ring[(i + 1) % ring.length] as Point));
}
