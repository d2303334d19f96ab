/** A line for a swale between two places of a plan, and in words what would make it work where it doesn't. */
import type { Project } from "../document/schema";
import { bestTaut, type Route, type Routed, type RouteSite, routeSwale } from "../drainage";
import { boundsOf, centroid, containsPoint, nearestOnRing, type Point } from "../geometry";
import { fittedPlane, groundAt } from "../terrain";
import type { Results, SwaleResult } from "./results";
import { wordsFor } from "./words";

/** Cells of the grid on which a way is looked for, at most, and the finest of them, m. */
const routeCells = 20_000;
const finestCell = 0.75;
/** The fall of the ground at the building is taken over this far round it, m. */
const roundBuilding = 12;
/** Depth of a proposed bed below the ground, m: 8 in, as a swale that is drawn by hand begins. */
export const usualSwaleDepth = 0.2032;

export interface SwaleWish {
  readonly start: Point;
  readonly outlet: Point;
  /** Default: the plan's rule. */
  readonly off?: number;
  readonly depth?: number;
  readonly leastFall?: number;
}

export type { Route };

/** A line, whether it drains or not, with the least floor that goes with its bed; null without a building. */
export interface LaidProposal extends Routed {
  readonly kind: "laid";
  readonly floor: number | null;
  /** The same line with its bed laid back up from the outlet, on filled ground; null where the line itself drains. */
  readonly raised: RaisedBed | null;
}

/** A bed that rises from the ground at the outlet at the least fall: what would work where no bed in the ground does. */
export interface RaisedBed {
  /** Greatest height of the bed over the ground as it is, m: fill is needed there. */
  readonly over: number;
  /** The bed where it passes the building, m, and the least floor that goes with it; null without a building. */
  readonly passing: number | null;
  readonly floor: number | null;
}

export type SwaleProposal = LaidProposal | { readonly kind: "refused"; readonly why: string };

/** `quick`: the shortest lines alone, for a pointer that moves. */
export function proposeSwale(
  project: Project,
  results: Results,
  wish: SwaleWish,
  quick = false,
): SwaleProposal {
  const why = refusal(results, wish);
  if (why) return { kind: "refused", why };
  const { rules } = project;
  const whole = {
    off: rules.swaleOffWall,
    depth: usualSwaleDepth,
    leastFall: rules.leastSwaleFall,
    ...wish,
  };
  const site = routeSite(project, results, wish);
  if (quick) {
    const route = bestTaut(site, whole);
    return proposal({ route, ways: null, reaches: null, short: 0 }, project);
  }
  return proposal(routeSwale(site, whole), project);
}

function proposal(routed: Routed, project: Project): LaidProposal {
  const { result } = routed.ways?.shallower ?? routed.route;
  const passing = highestPassing(result.stations, project);
  return {
    ...routed,
    kind: "laid",
    floor: passing === null ? null : floorOver(passing, project),
    raised: routed.ways ? raisedBed(routed.route, project) : null,
  };
}

function raisedBed({ result, leastFall }: Route, project: Project): RaisedBed | null {
  const outlet = result.stations.at(-1);
  if (!outlet) return null;
  const stations = result.stations.map((station) => ({
    ...station,
    bed: outlet.existing + leastFall * (outlet.distance - station.distance),
  }));
  const passing = highestPassing(stations, project);
  return {
    over: Math.max(0, ...stations.map(({ bed, existing }) => bed - existing)),
    passing,
    floor: passing === null ? null : floorOver(passing, project),
  };
}

/** Whether a place lies in a low place that holds water. */
export function holdsWater(
  { water }: { readonly water: Pick<Results["water"], "ponds"> },
  [x, y]: Point,
): boolean {
  return water.ponds.some(({ rings }) =>
    rings.some((ring) => {
      const corners = Array.from(
        { length: ring.length / 2 },
        (_, i): Point => [ring[2 * i] as number, ring[2 * i + 1] as number],
      );
      return containsPoint(corners, x, y);
    }),
  );
}

/** Places that nothing is known of, that are one, or from which nothing runs on. */
function refusal(results: Results, { start, outlet }: SwaleWish): string | null {
  const { ground } = results;
  if (!ground) return "There is no measured ground yet: place at least three shots first.";
  if (Math.hypot(outlet[0] - start[0], outlet[1] - start[1]) < 1)
    return "Start and outlet lie on one place: click the outlet farther away.";
  for (const [name, [x, y]] of [
    ["start", start],
    ["outlet", outlet],
  ] as const)
    if (!groundAt(ground, x, y))
      return `The ${name} lies beyond the ground that is known. Click nearer to the shots.`;
  if (holdsWater(results, outlet))
    return "The outlet lies in a low place that holds water: nothing runs on from there. Click beyond its rim.";
  return null;
}

function routeSite(project: Project, results: Results, { start, outlet }: SwaleWish): RouteSite {
  const { ground } = results;
  if (!ground) throw new Error("no ground");
  const height = ([x, y]: Point) => groundAt(ground, x, y)?.z ?? Number.NaN;
  const ring = project.building?.outline ?? null;
  const hull = Array.from(
    { length: ground.hull.length / 2 },
    (_, i): Point => [ground.hull[2 * i] as number, ground.hull[2 * i + 1] as number],
  );
  const box = boundsOf([...hull, start, outlet, ...(ring ?? [])]);
  const [width, depth] = [box.maxX - box.minX, box.maxY - box.minY];
  const cell = Math.max(finestCell, Math.sqrt((width * depth) / routeCells));
  const grid = {
    x0: box.minX - cell,
    y0: box.minY - cell,
    cell,
    columns: Math.ceil(width / cell) + 2,
    rows: Math.ceil(depth / cell) + 2,
  };
  return {
    ring,
    uphill: uphillAt(ring, height),
    height,
    grid,
    words: wordsFor(project.display),
    holdsWater: (at) => holdsWater(results, at),
  };
}

/** The way up of a plane laid through the ground round the building. */
function uphillAt(ring: readonly Point[] | null, height: (at: Point) => number): Point {
  if (!ring) return [0, 1];
  const [mx, my] = centroid(ring);
  const reach = roundBuilding + Math.max(...ring.map(([x, y]) => Math.hypot(x - mx, y - my)));
  const places = Array.from({ length: 24 }, (_, k): Point => {
    const angle = (2 * Math.PI * k) / 24;
    return [mx + reach * Math.cos(angle), my + reach * Math.sin(angle)];
  }).filter((at) => Number.isFinite(height(at)));
  const { gx, gy } = fittedPlane(
    places.map(([x]) => x),
    places.map(([, y]) => y),
    places.map(height),
  );
  return gx === 0 && gy === 0 ? [0, 1] : [gx, gy];
}

/** Stations so much farther off than the nearest still pass by the building, m. */
const passingBy = 1;

/** The highest that a bed lies where it passes the building; null without one. */
function highestPassing(stations: SwaleResult["stations"], { building }: Project): number | null {
  if (!building) return null;
  const off = stations.map(({ at: [x, y] }) => nearestOnRing(building.outline, x, y).distance);
  const near = Math.min(...off) + passingBy;
  return Math.max(...stations.flatMap(({ bed }, i) => ((off[i] as number) <= near ? [bed] : [])));
}

/** The least floor at which the ground at the wall stands over such a bed as the rule wants. */
function floorOver(bed: number, { rules, grading, building }: Project): number {
  return bed + rules.aboveSwale + grading.apron.showing - (building?.topOfWallAboveFloor ?? 0);
}
