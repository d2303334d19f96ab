/** What holds for the finished ground about any plan: L, T and U, rules of their own for each side, on ground that tilts. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { between, containsPoint, nearestOnRing, type Point } from "../../src/geometry";
import { finishHeights, type GradingPlan, placesAt, prepare, type SideRule } from "../../src/grading";
import { planFor } from "./plans";

const tenths = (min: number, max: number) =>
  fc.integer({ min: Math.round(min * 10), max: Math.round(max * 10) }).map((n) => n / 10);
const hundredths = (min: number, max: number) =>
  fc.integer({ min: Math.round(min * 100), max: Math.round(max * 100) }).map((n) => n / 100);

const ell = fc
  .tuple(tenths(8, 18), tenths(8, 18), tenths(3, 6), tenths(3, 6))
  .map(([a, b, c, d]): Point[] => [
    [0, 0],
    [a, 0],
    [a, c],
    [d, c],
    [d, b],
    [0, b],
  ]);
const tee = fc.tuple(tenths(4, 9), tenths(3, 8), tenths(3, 6), tenths(3, 6)).map(([a, b, c, d]): Point[] => [
  [0, 0],
  [c, 0],
  [c, b],
  [c + a, b],
  [c + a, b + d],
  [-a, b + d],
  [-a, b],
  [0, b],
]);
const you = fc.tuple(tenths(3, 6), tenths(2, 9), tenths(3, 6), tenths(2, 9)).map(([a, b, c, d]): Point[] => [
  [0, 0],
  [2 * a + b, 0],
  [2 * a + b, c + d + 0.7],
  [a + b, c + d + 0.7],
  [a + b, c],
  [a, c],
  [a, c + d],
  [0, c + d],
]);

const side = fc.record({
  edgeAboveFloor: fc.constant(-0.15),
  fall: hundredths(0.01, 0.1),
  width: tenths(0.5, 5),
  fillSlope: tenths(1.5, 8),
  cutSlope: tenths(1, 6),
});
/** Outline, a rule for each of its sides, and how corners run. */
const plans = fc
  .tuple(
    fc.oneof(ell, tee, you),
    fc.array(side, { minLength: 8, maxLength: 8 }),
    fc.constantFrom("round", "mitred"),
  )
  .map(([ring, sides, corners]) => ({ ring, pad: { corners, sides: sides.slice(0, ring.length) } as const }));
const grounds = fc.tuple(hundredths(-0.12, 0.12), hundredths(-0.12, 0.12));

type Surface = (at: Point) => number;
const tilted =
  ([gx, gy]: readonly [number, number]): Surface =>
  ([x, y]) =>
    100 + gx * x + gy * y;

function heights(plan: GradingPlan, ground: Surface, floor: number, places: readonly Point[]): Float64Array {
  const prepared = prepare(placesAt(places, ground), plan, { low: floor, high: floor });
  return finishHeights(prepared, floor, new Float64Array(places.length));
}

const apart = 0.005;
const closer = 100;
/** Where unequal rules run into each other the bank is at most so much steeper than the steepest of them. */
const steeper = 8;
/** Nearer to the walls than this the corners of unequal sides come together in a point. */
const atWalls = 0.3;

/** Places `apart` on a line over the plan, cut where it comes to the walls. */
function stretches(ring: readonly Point[], [from, to]: readonly [Point, Point]): Point[][] {
  const count = Math.ceil(Math.hypot(to[0] - from[0], to[1] - from[1]) / apart);
  const found: Point[][] = [[]];
  for (let i = 0; i <= count; i++) {
    const at: Point = [from[0] + ((to[0] - from[0]) * i) / count, from[1] + ((to[1] - from[1]) * i) / count];
    if (containsPoint(ring, ...at) || nearestOnRing(ring, ...at).distance < atWalls) found.push([]);
    else found[found.length - 1]?.push(at);
  }
  return found.filter(({ length }) => length > 1);
}

function steepestOf(plan: GradingPlan, [gx, gy]: readonly [number, number]): number {
  const rules: readonly SideRule[] = plan.pad.sides ?? [plan.pad];
  return Math.max(Math.hypot(gx, gy), ...rules.flatMap((r) => [r.fall, 1 / r.fillSlope, 1 / r.cutSlope]));
}

/** The steepest bank on a line, rise over run, looked at closely where places 5 mm apart differ most: there a step is endless. */
function steepestBank(
  plan: GradingPlan,
  ground: Surface,
  floor: number,
  line: readonly [Point, Point],
): number {
  return Math.max(
    0,
    ...stretches(plan.footprint.ring, line).map((places) => {
      const z = heights(plan, ground, floor, places);
      const worst = roughest(z);
      const [from, to] = [places[worst], places[worst + 1]] as [Point, Point];
      const close = Array.from({ length: closer + 1 }, (_, i) => between(from, to, i / closer));
      const zs = heights(plan, ground, floor, close);
      const k = roughest(zs);
      return (Math.abs((zs[k + 1] as number) - (zs[k] as number)) * closer) / apart;
    }),
  );
}

/** Where the greatest change to the next height is. */
function roughest(z: Float64Array): number {
  const change = (i: number) => Math.abs((z[i + 1] as number) - (z[i] as number));
  let worst = 0;
  for (let i = 1; i + 1 < z.length; i++) if (change(i) > change(worst)) worst = i;
  return worst;
}

const place = fc.tuple(tenths(-20, 40), tenths(-20, 40)) as fc.Arbitrary<Point>;
/** Most lines run across the plan's diagonals and arms. */
const lines = fc.tuple(place, place).filter(([a, b]) => Math.hypot(a[0] - b[0], a[1] - b[1]) > 5);

describe("the finished ground about any plan", () => {
  it("has no step anywhere in front of the walls, before inner corners neither", () =>
    fc.assert(
      fc.property(plans, grounds, tenths(-3, 3), lines, ({ ring, pad }, tilt, up, line) => {
        const plan = planFor(ring, pad);
        // Where rules run into each other it is steeper than either.
        const most = steeper * steepestOf(plan, tilt);
        expect(steepestBank(plan, tilted(tilt), 100 + up, line)).toBeLessThan(most);
      }),
      { numRuns: 80 },
    ));

  it("rises nowhere by more than the floor does, and nowhere falls, when the floor is raised", () =>
    fc.assert(
      fc.property(
        plans,
        grounds,
        tenths(-3, 3),
        hundredths(0.01, 1),
        fc.array(place, { minLength: 100, maxLength: 100 }),
        ({ ring, pad }, tilt, up, more, places) => {
          const plan = planFor(ring, pad);
          const low = heights(plan, tilted(tilt), 100 + up, places);
          const high = heights(plan, tilted(tilt), 100 + up + more, places);
          for (const [i, z] of high.entries()) {
            expect(z).toBeGreaterThanOrEqual((low[i] as number) - 1e-9);
            expect(z).toBeLessThanOrEqual((low[i] as number) + more + 1e-9);
          }
        },
      ),
      { numRuns: 80 },
    ));

  it("goes along when plan and ground are moved, turned or drawn the other way round", () =>
    fc.assert(
      fc.property(
        plans,
        grounds,
        tenths(-3, 3),
        fc.tuple(tenths(-500, 500), tenths(-500, 500), hundredths(-3.1, 3.1)),
        fc.array(place, { minLength: 50, maxLength: 50 }),
        ({ ring, pad }, tilt, up, [east, north, turn], anywhere) => {
          const [c, s] = [Math.cos(turn), Math.sin(turn)];
          const moved = ([x, y]: Point): Point => [east + c * x - s * y, north + s * x + c * y];
          const back = ([x, y]: Point): Point => [
            c * (x - east) + s * (y - north),
            c * (y - north) - s * (x - east),
          ];
          const ground = tilted(tilt);
          const places = anywhere.filter(
            ([x, y]) => nearestOnRing(ring, x, y).distance > atWalls && !containsPoint(ring, x, y),
          );
          const here = heights(planFor(ring, pad), ground, 100 + up, places);
          const there = heights(
            planFor(ring.map(moved), pad),
            (at) => ground(back(at)),
            100 + up,
            places.map(moved),
          );
          // Wall i runs from corner i to the next: the other way round the rules come in reverse order.
          const sides = ring.map((_, i) => pad.sides[(2 * ring.length - 2 - i) % ring.length] as SideRule);
          const reversed = heights(planFor([...ring].reverse(), { ...pad, sides }), ground, 100 + up, places);
          const off = (z: Float64Array) => Math.max(0, ...z.map((h, i) => Math.abs(h - (here[i] as number))));
          expect(off(reversed)).toBeLessThan(1e-6);
          expect(off(there)).toBeLessThan(1e-6);
        },
      ),
      { numRuns: 60 },
    ));
});
