/**
 * What the priced items of the bill come to at every floor, by kind of thing, and the floor of least cost.
 *
 * Units   metres; money as the user's prices have it.
 * Method  The bill at even floors, outside the walls on the coarse grid; about the least of them the floor is closed
 *         in by the golden section.
 * Source  First principles.
 */
import { finishHeights, type Layout, sumOutside } from "../grading";
import { billCost, costGroups, groupOf } from "../quantities";
import { billAt, type FloorParts, type Reckoned, type ReckonedSite } from "./floor-parts";
import { isWithin } from "./limit-standing";
import type { BillItem, CostCurve, CostGroup, CostPoint, HeightSpan } from "./results";

export { costGroups };

const curvePoints = 33;
/** Fine enough for a floor, m. */
const closeness = 2e-3;
const golden = (Math.sqrt(5) - 1) / 2;

export interface CostInput {
  readonly site: ReckonedSite;
  readonly project: Reckoned;
  readonly partsAt: (floor: number) => FloorParts;
  readonly range: { readonly low: number; readonly high: number };
}

/** The bill's cost split by group. */
export function costOf(floor: number, items: readonly BillItem[]): CostPoint {
  const parts = Object.fromEntries(costGroups.map((group) => [group, 0])) as Record<CostGroup, number>;
  for (const item of items) parts[groupOf(item)] += item.cost ?? 0;
  return { floor, total: billCost(items).total, parts };
}

/** The cost at a floor on some grid, split by group. */
export function costsOn(layout: Layout, input: CostInput): (floor: number) => CostPoint {
  const heights = new Float64Array(layout.existing.length);
  const { site, project } = input;
  return (floor) => {
    const outside = sumOutside(
      layout,
      floor,
      finishHeights(layout.prepared, floor, heights),
      project.materials,
    );
    return costOf(floor, billAt(site, input.partsAt(floor), outside, project));
  };
}

export function costCurve(layout: Layout, input: CostInput): CostCurve {
  const costAt = costsOn(layout, input);
  const { low, high } = input.range;
  const points = Array.from({ length: curvePoints }, (_, i) =>
    costAt(low + ((high - low) * i) / (curvePoints - 1)),
  );
  const best = points.reduce(
    (least, point, i) => (point.total < (points[least] as CostPoint).total ? i : least),
    0,
  );
  const from = (points[Math.max(0, best - 1)] as CostPoint).floor;
  const to = (points[Math.min(points.length - 1, best + 1)] as CostPoint).floor;
  const close = leastBetween((floor) => costAt(floor).total, from, to);
  if (close.total >= (points[best] as CostPoint).total) {
    const { floor, total } = points[best] as CostPoint;
    return { points, least: { floor, total } };
  }
  const through = [...points, costAt(close.floor)].sort((a, b) => a.floor - b.floor);
  return { points: through, least: close };
}

function leastBetween(
  cost: (floor: number) => number,
  from: number,
  to: number,
): { floor: number; total: number } {
  let [a, b] = [from, to];
  let [c, d] = [b - golden * (b - a), a + golden * (b - a)];
  let [atC, atD] = [cost(c), cost(d)];
  while (b - a > closeness) {
    if (atC < atD) {
      [b, d, atD] = [d, c, atC];
      c = b - golden * (b - a);
      atC = cost(c);
    } else {
      [a, c, atC] = [c, d, atD];
      d = a + golden * (b - a);
      atD = cost(d);
    }
  }
  return atC < atD ? { floor: c, total: atC } : { floor: d, total: atD };
}

/** The cheapest floor among those that are allowed; null where none of the curve's is. */
export function leastWithin(
  curve: CostCurve,
  spans: readonly HeightSpan[],
): { readonly floor: number; readonly total: number } | null {
  const allowed = (floor: number) => isWithin(spans, floor);
  const ends = spans.flat().flatMap((floor) => {
    const total = floor === null ? null : between(curve.points, floor, (point) => point.total);
    return floor === null || total === null ? [] : [{ floor, total }];
  });
  const candidates = [curve.least, ...curve.points, ...ends].filter(({ floor }) => allowed(floor));
  const [first] = candidates;
  if (!first) return null;
  const { floor, total } = candidates.reduce((best, one) => (one.total < best.total ? one : best), first);
  return { floor, total };
}

/** The curve moved by as much as it misses what the bill comes to at the floor of the plan. */
export function throughHere(curve: CostCurve, here: CostPoint): CostCurve {
  const { points, least } = curve;
  const read = (figure: (point: CostPoint) => number) => between(points, here.floor, figure);
  const total = read((point) => point.total);
  if (total === null) return curve;
  const off = here.total - total;
  const partsOff = costGroups.map(
    (group) => [group, here.parts[group] - (read(({ parts }) => parts[group]) ?? 0)] as const,
  );
  return {
    points: points.map((point) => ({
      ...point,
      total: point.total + off,
      parts: {
        ...point.parts,
        ...Object.fromEntries(partsOff.map(([group, by]) => [group, point.parts[group] + by])),
      },
    })),
    least: { ...least, total: least.total + off },
  };
}

/** A figure between two points of the curve; null beyond its ends. */
function between(
  points: readonly CostPoint[],
  floor: number,
  figure: (point: CostPoint) => number,
): number | null {
  const next = points.findIndex((point) => point.floor >= floor);
  const [a, b] = [points[next - 1], points[next]];
  if (!b) return null;
  if (!a) return b.floor === floor ? figure(b) : null;
  return figure(a) + ((figure(b) - figure(a)) * (floor - a.floor)) / (b.floor - a.floor);
}
