import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type RouteSite, type RouteWish, routeSwale } from "../../src/drainage";
import { tautLine } from "../../src/drainage/taut-lines";
import { nearestOnRing, type Point, pointAlong, polylineLength } from "../../src/geometry";

const ring: readonly Point[] = [
  [0, 0],
  [12, 0],
  [12, 8],
  [0, 8],
];
const words = {
  length: (m: number) => `${m.toFixed(2)} m`,
  slope: (s: number) => `${(100 * s).toFixed(1)} %`,
};
const grid = { x0: -60, y0: -60, cell: 1, columns: 120, rows: 120 };

function siteOn(height: (at: Point) => number, uphill: Point = [0, 1]): RouteSite {
  return { ring, uphill, height, grid, words };
}
const wish: RouteWish = { start: [-12, 18], outlet: [30, -10], off: 3, depth: 0.2, leastFall: 0.01 };

/** Everywhere along a line, every tenth of a metre. */
function along(line: readonly Point[]): Point[] {
  const steps = Math.ceil(polylineLength(line) * 10);
  return Array.from({ length: steps + 1 }, (_, i) => pointAlong(line, (polylineLength(line) * i) / steps).at);
}
const offWall = (line: readonly Point[]) =>
  Math.min(...along(line).map(([x, y]) => nearestOnRing(ring, x, y).distance));

describe("the shortest line round a building", () => {
  const place = fc.record({ x: fc.integer({ min: -40, max: 50 }), y: fc.integer({ min: -40, max: 45 }) });

  it("keeps its distance from every wall, wherever start and outlet lie", () => {
    fc.assert(
      fc.property(place, place, fc.integer({ min: 1, max: 8 }), (a, b, off) => {
        const line = tautLine(ring, [a.x, a.y], [b.x, b.y], off, null);
        if (!line || polylineLength(line) === 0) return;
        expect(offWall(line)).toBeGreaterThan(off - 1e-3);
      }),
    );
  });

  it("goes round the side that isn't shut", () => {
    const north = tautLine(ring, [-20, 4], [40, 4], 3, [0, -1]) ?? [];
    const south = tautLine(ring, [-20, 4], [40, 4], 3, [0, 1]) ?? [];
    expect(Math.max(...north.map(([, y]) => y))).toBeGreaterThanOrEqual(11);
    expect(Math.min(...south.map(([, y]) => y))).toBeLessThanOrEqual(-3);
    expect(Math.min(...north.map(([, y]) => y))).toBeGreaterThanOrEqual(4);
  });
});

describe("a swale's line between a start and an outlet", () => {
  it("on an even slope passes uphill of the building, falls all along and comes out", () => {
    const { route, ways } = routeSwale(
      siteOn(([x, y]) => 100 + 0.04 * y - 0.02 * x),
      wish,
    );
    expect(ways).toBeNull();
    expect(route.result.drains).toBe(true);
    expect(route.result.leastFall).toBeGreaterThanOrEqual(0.01 - 1e-9);
    expect(offWall(route.line)).toBeGreaterThan(3 - 1e-3);
    // Straight above the middle of the building it runs on the uphill side.
    const above = along(route.line).find(([x]) => x >= 6);
    expect(above?.[1]).toBeGreaterThanOrEqual(11 - 1e-3);
    expect(route.line[0]).toEqual(wish.start);
    expect(route.line.at(-1)).toEqual(wish.outlet);
  });

  it("is as deep as asked where the ground falls enough, until it comes out", () => {
    const ground = ([x, y]: Point) => 100 + 0.04 * y - 0.02 * x;
    const { route } = routeSwale(siteOn(ground), wish);
    expect(route.result.stations[0]?.bed).toBeCloseTo(ground(wish.start) - 0.2, 9);
    expect(route.result.stations.at(-1)?.bed).toBeCloseTo(ground(wish.outlet), 9);
  });

  it("finds a way round a rise that the shortest line would have to be dug through", () => {
    // A dam of 3 m from the building far to the east, open beyond x = 20.
    const ground = ([x, y]: Point) => 100 + 0.05 * y + (Math.abs(y + 6) < 2 && x > -60 && x < 40 ? 3 : 0);
    const behind = { ...wish, start: [16, 14], outlet: [16, -20] } as const;
    const { route } = routeSwale(siteOn(ground), behind);
    expect(route.result.drains).toBe(true);
    expect(Math.max(...route.line.map(([x]) => x))).toBeGreaterThan(38);
    expect(offWall(route.line)).toBeGreaterThan(3 - 1e-3);
  });

  it("on ground that climbs to the outlet says how far it reaches, and where it could come out instead", () => {
    // Falls east to x = 20, then climbs.
    const ground = ([x, y]: Point) => 100 + 0.002 * y + (x < 20 ? -0.05 * (x - 20) : 0.03 * (x - 20));
    const { route, ways, reaches, short } = routeSwale(siteOn(ground), {
      ...wish,
      start: [-20, 16],
      outlet: [50, 16],
    });
    expect(route.result.drains).toBe(false);
    expect(short).toBeGreaterThan(0.9);
    // By hand: the bed lies 0.2 under the lowest place, 40 m on, and can't rise; before that it can still come out.
    expect(reaches).toBeGreaterThan(38);
    expect(reaches).toBeLessThan(42);
    expect(ways?.outlet?.result.drains).toBe(true);
    const end = ways?.outlet?.line.at(-1) as Point;
    expect(Math.abs(end[0] - 20)).toBeLessThan(3);
    expect(ways?.shallower).toBeNull();
  });

  it("that lacks a little says how much shallower or gentler it would work", () => {
    // Falls 0.9 % evenly over 60 m: at 1 % from 0.2 deep it ends 0.26 under the ground.
    const ground = ([x]: Point) => 100 - 0.009 * x;
    const flat = { ...wish, start: [-30, 14], outlet: [30, 14], off: 3 } as const;
    const { ways, short } = routeSwale(siteOn(ground), flat);
    expect(short).toBeCloseTo(0.2 + 0.001 * 60, 6);
    // From 0.2 deep to the ground over 60 m leaves a fall of (0.54 − 0.2) / 60.
    expect(ways?.gentler?.leastFall).toBeCloseTo(0.34 / 60, 3);
    expect(ways?.gentler?.result.drains).toBe(true);
    expect(ways?.shallower).toBeNull();
  });

  it("whatever the ground: what is said to drain keeps its fall, its distance and comes out", () => {
    const bump = fc.record({
      x: fc.integer({ min: -40, max: 40 }),
      y: fc.integer({ min: -40, max: 40 }),
      up: fc.integer({ min: -20, max: 20 }),
    });
    fc.assert(
      fc.property(fc.array(bump, { maxLength: 5 }), fc.integer({ min: 0, max: 60 }), (bumps, slope) => {
        const ground = ([x, y]: Point) =>
          bumps.reduce(
            (z, b) => z + (b.up / 10) * Math.exp(-((x - b.x) ** 2 + (y - b.y) ** 2) / 100),
            100 + (slope / 1000) * y,
          );
        const { route, ways } = routeSwale(siteOn(ground), wish);
        for (const found of [route, ways?.outlet, ways?.shallower, ways?.gentler]) {
          if (!found?.result.drains) continue;
          expect(offWall(found.line)).toBeGreaterThan(3 - 1e-3);
          found.result.stations.forEach(({ bed, distance }, i) => {
            const before = found.result.stations[i - 1];
            if (before)
              expect(before.bed - bed).toBeGreaterThanOrEqual(
                found.leastFall * (distance - before.distance) - 1e-6,
              );
          });
          const outlet = found.result.stations.at(-1);
          expect((outlet?.existing ?? 0) - (outlet?.bed ?? 0)).toBeLessThan(0.021);
        }
      }),
      { numRuns: 12 },
    );
  });
});
