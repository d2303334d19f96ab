/**
 * A line for a swale between two places: on the uphill side of the building, off its walls, falling all along.
 *
 * Units   metres; falls rise over run, positive runs towards the outlet.
 * Method  First the shortest lines round the building at growing distances; of those that drain the one with the least
 *         to dig. Where none does, a search on a grid for the way that keeps the bed highest, straightened. What comes back
 *         is judged as a swale that was drawn by hand is.
 * Source  First principles; distance, depth and least fall are the user's.
 * Error   The grid's search is as fine as its cells; the bed of what it proposes is not.
 */
import { swaleSchema } from "../document/schema";
import {
  centroid,
  containsPoint,
  distance,
  distanceToSegment,
  nearestOnRing,
  type Point,
  pointAlong,
  polylineLength,
} from "../geometry";
import { bedHeight, laySwale } from "../grading";
import type { SwaleResult } from "../solve/results";
import { gridRoute, type RouteGrid } from "./grid-route";
import { swaleResult, type Words } from "./swale";
import { tautLine } from "./taut-lines";

export interface RouteSite {
  /** The building's outline; null: nothing to keep off. */
  readonly ring: readonly Point[] | null;
  /** Uphill at the building, any length. */
  readonly uphill: Point;
  /** The ground as it is; it must answer between start, outlet and building. */
  readonly height: (at: Point) => number;
  readonly grid: RouteGrid;
  readonly words: Words;
  /** Whether water stands at a place: a bed that comes out there leads nowhere. */
  readonly holdsWater?: (at: Point) => boolean;
}

export interface RouteWish {
  readonly start: Point;
  readonly outlet: Point;
  /** Least distance off the walls. */
  readonly off: number;
  /** Depth of the bed below the ground, until it comes out. */
  readonly depth: number;
  readonly leastFall: number;
}

export interface Route {
  readonly line: readonly [number, number][];
  readonly depth: number;
  readonly leastFall: number;
  readonly result: SwaleResult;
  /** Greatest depth of the bed under the ground, m. */
  readonly deepest: number;
}

/** What would make it work where the places that were asked for don't. */
export interface RouteWays {
  /** The nearest place to the outlet asked for at which the bed can come out, with its line. */
  readonly outlet: Route | null;
  /** The same places with a bed that starts shallower. */
  readonly shallower: Route | null;
  /** The same places with less fall. */
  readonly gentler: Route | null;
}

export interface Routed {
  readonly route: Route;
  /** Null where the route drains. */
  readonly ways: RouteWays | null;
  /** How far along the line the bed could still come out, m; null: nowhere. */
  readonly reaches: number | null;
  /** How far the bed lies under the ground at the outlet, m. */
  readonly short: number;
}

/** Lines are tried so many times as far off the walls as asked, the nearest first. */
const offs = [1, 1.5, 2, 3];
/** No bed is proposed shallower or flatter than this: it would not be one (our own choice). */
const leastDepth = 0.1;
const flattest = 0.005;
/** A bed that lies deeper than this somewhere is worth a way round, m (our own choice). */
const deepDig = 0.9;
const halvings = 12;
/** Places nearby that are looked at for an outlet. */
const mostTried = 40;
/** Beyond any lot, m. */
const farAway = 1e4;

export function routeSwale(site: RouteSite, wish: RouteWish): Routed {
  const straight = bestTaut(site, wish);
  const deep = Math.max(deepDig, 2 * wish.depth);
  if (straight.result.drains && straight.deepest <= deep)
    return { route: straight, ways: null, reaches: straight.result.length, short: 0 };
  // Ends that stand too near to the walls were moved out.
  const ends = { start: straight.line[0] as Point, outlet: straight.line.at(-1) as Point };
  const clear = { ...wish, ...ends, mostDeep: deep };
  const bounds = { ring: site.ring, barrier: barrierDownhill(site, ends) };
  const found = gridRoute(site.grid, site.height, bounds, clear);
  const onGrid = found.to ? straightened(site, clear, found.to) : null;
  if (onGrid) return { route: onGrid, ways: null, reaches: onGrid.result.length, short: 0 };
  if (straight.result.drains)
    return { route: straight, ways: null, reaches: straight.result.length, short: 0 };
  return {
    route: straight,
    ways: {
      outlet: firstThatDrains(site, clear, found.others()),
      shallower: lessOf(site, wish, "depth", leastDepth),
      gentler: lessOf(site, wish, "leastFall", flattest),
    },
    ...comesOut(site, straight),
  };
}

function firstThatDrains(site: RouteSite, wish: RouteWish, ways: Generator<Point[]>): Route | null {
  for (let tried = 0; tried < mostTried; tried++) {
    const { value, done } = ways.next();
    if (done) return null;
    if (site.holdsWater?.(value.at(-1) as Point)) continue;
    const route = straightened(site, wish, value);
    if (route) return route;
  }
  return null;
}

/** From the building's middle straight downhill: a way on the uphill side doesn't cross it. None where an end lies on it. */
function barrierDownhill(
  { ring, uphill: [ux, uy], grid }: RouteSite,
  ends: { readonly start: Point; readonly outlet: Point },
): readonly [Point, Point] | null {
  if (!ring) return null;
  const [mx, my] = centroid(ring);
  const length = Math.hypot(ux, uy) || 1;
  const far: Point = [mx - (ux / length) * farAway, my - (uy / length) * farAway];
  const isOn = ([x, y]: Point) => distanceToSegment([mx, my], far, x, y) < 2 * grid.cell;
  return isOn(ends.start) || isOn(ends.outlet) ? null : [[mx, my], far];
}

/** The shortest lines only: quick enough for the pointer. */
export function bestTaut(site: RouteSite, wish: RouteWish): Route {
  return bestAlong(site, wish, tautLines(site, wish));
}

/** Lines round the uphill side at growing distances; where there are none, round the other. */
function tautLines({ ring, uphill }: RouteSite, { start, outlet, off }: RouteWish): (readonly Point[])[] {
  if (ring)
    for (const shut of [[-uphill[0], -uphill[1]] as const, uphill]) {
      const nearest = tautLine(ring, start, outlet, off, shut);
      if (!nearest) continue;
      // Ends are moved out of the walls' reach, but no farther: they were chosen for what lies there.
      const others = offs.flatMap((times) => {
        const line = times > 1 ? tautLine(ring, start, outlet, off * times, shut) : null;
        return line && sameEnds(line, nearest) ? [line] : [];
      });
      return [nearest, ...others];
    }
  return [[start, outlet]];
}

function sameEnds(a: readonly Point[], b: readonly Point[]): boolean {
  return [0, -1].every((i) => distance(a.at(i) as Point, b.at(i) as Point) < 1e-6);
}

/** Of those that drain the one with the least to dig; of none the one that lacks least. */
function bestAlong(site: RouteSite, wish: RouteWish, lines: readonly (readonly Point[])[]): Route {
  const list = lines.map((line) => laid(site, wish, line));
  const draining = list.filter(({ result }) => result.drains);
  return draining.length > 0 ? least(draining, dug) : least(list, shortAt);
}

function laid({ height, words }: RouteSite, { depth, leastFall }: RouteWish, drawn: readonly Point[]): Route {
  const line = drawn.map(([x, y]): [number, number] => [x, y]);
  const swale = swaleSchema.parse({ id: "proposed", line, depth, leastFall });
  const ends = { startGround: height(line[0] as Point), outletGround: height(line.at(-1) as Point) };
  const laidOut = laySwale(swale, { ...ends, ground: height });
  const result = swaleResult(laidOut, height, leastFall, words);
  const deepest = Math.max(
    ...Array.from(laidOut.at, (at) => height(pointAlong(line, at).at) - bedHeight(laidOut, at)),
  );
  return { line, depth, leastFall, result, deepest };
}

/** What there is to dig, as the sum of squares of its depth along the line: that is as its section grows. */
function dug({ result: { stations } }: Route): number {
  return stations.slice(1).reduce((sum, { distance, existing, bed }, i) => {
    const before = stations[i] as SwaleResult["stations"][number];
    const deep = Math.max(0, (existing - bed + before.existing - before.bed) / 2);
    return sum + deep * deep * (distance - before.distance);
  }, 0);
}

function shortAt({ result: { stations } }: Route): number {
  const outlet = stations.at(-1) as SwaleResult["stations"][number];
  return outlet.existing - outlet.bed;
}

function least<T>(list: readonly T[], of: (item: T) => number): T {
  return list.reduce((a, b) => (of(b) < of(a) ? b : a));
}

/** How far along its bed could come out, falling at its least from the deepest place before, and what it lacks at the outlet. */
function comesOut(
  { height }: RouteSite,
  { line, depth, leastFall }: Route,
): Pick<Routed, "reaches" | "short"> {
  const length = polylineLength(line);
  const steps = Math.max(1, Math.ceil(length / 0.5));
  const drop = (leastFall * length) / steps;
  let bed = Number.POSITIVE_INFINITY;
  // A bed that runs on at the least fall alone, until it is out.
  let out = Number.NEGATIVE_INFINITY;
  let reaches: number | null = null;
  let short = 0;
  for (let i = 0; i <= steps; i++) {
    const ground = height(pointAlong(line, (length * i) / steps).at);
    out -= drop;
    const isOut = out >= ground;
    short = Math.max(0, ground - out);
    if (isOut) reaches = (length * i) / steps;
    bed = Math.min(ground - depth, bed - drop);
    out = isOut ? bed : Math.max(out, bed);
  }
  return { reaches, short };
}

/** The greatest depth or fall under the one asked for that drains, by halving; null where none down to `floor` does. */
function lessOf(site: RouteSite, wish: RouteWish, what: "depth" | "leastFall", floor: number): Route | null {
  let [works, fails] = [floor, wish[what]];
  if (works >= fails) return null;
  const lines = tautLines(site, wish);
  let best = bestAlong(site, { ...wish, [what]: works }, lines);
  if (!best.result.drains) return null;
  for (let i = 0; i < halvings; i++) {
    const half = (works + fails) / 2;
    const tried = bestAlong(site, { ...wish, [what]: half }, lines);
    if (tried.result.drains) [works, best] = [half, tried];
    else fails = half;
  }
  return best;
}

/** The grid's way with as few corners as still drain; null where even all of them don't. */
function straightened(site: RouteSite, wish: RouteWish, cells: readonly Point[]): Route | null {
  const { ring } = site;
  const clear = (line: readonly Point[]) => !ring || keepsOff(ring, line, wish.off - 1e-6);
  for (const within of [8, 4, 2, 1, 0.5, 0]) {
    const line = fewerCorners(cells, within * site.grid.cell);
    if (!clear(line)) continue;
    const route = laid(site, wish, line);
    if (route.result.drains) return route;
  }
  return null;
}

/** Whether every place of a line lies at least `off` from a ring, and none within it. */
function keepsOff(ring: readonly Point[], line: readonly Point[], off: number): boolean {
  const length = polylineLength(line);
  const steps = Math.max(1, Math.ceil(length / 0.5));
  return Array.from({ length: steps + 1 }, (_, i) => pointAlong(line, (length * i) / steps).at).every(
    ([x, y]) => !containsPoint(ring, x, y) && nearestOnRing(ring, x, y).distance >= off,
  );
}

/** A line without the corners that lie within a distance of the straight between others (Douglas and Peucker 1973). */
function fewerCorners(line: readonly Point[], within: number): readonly Point[] {
  const [a, b] = [line[0] as Point, line.at(-1) as Point];
  let [far, most] = [0, within];
  for (let i = 1; i < line.length - 1; i++) {
    const [x, y] = line[i] as Point;
    const away = distanceToSegment(a, b, x, y);
    if (away > most) [far, most] = [i, away];
  }
  if (far === 0) return [a, b];
  return [
    ...fewerCorners(line.slice(0, far + 1), within).slice(0, -1),
    ...fewerCorners(line.slice(far), within),
  ];
}
