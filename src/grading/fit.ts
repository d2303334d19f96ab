/**
 * Fitting into the space: the slope, or the wall, that makes cut or fill stop at a line.
 *
 * Units   metres; slopes run for one of rise.
 * Method  At places along the line (round a thing that is to be kept clear of: along the edge of what stays clear): how far beyond the apron it lies, and how high the apron's edge stands over the
 *         ground there. Run over height is the slope that ends just there; the present slope's height over the ground
 *         is the wall that would hold it. The worst place counts; where the ground as finished doesn't rise or fall there,
 *         behind a wall, nothing is wanted; nor where another shape, a swale or a drive, comes to the line itself. A wall that is offered is reckoned as if it stood: by what would show of it.
 * Source  First principles.
 */
import { retainingWallSchema } from "../document/schema";
import { containsPoint, cornerDistances, nearestOnPolyline, type Point, pointAlong } from "../geometry";
import type { OfferedWall, SlopeFit } from "../solve/results";
import { type HeightOfGround, layWall } from "./ground-shapes";
import { finishHeights, prepare } from "./operators";
import { placesAt } from "./places";
import type { GradingPlan } from "./plan";
import { retainingResult } from "./retaining";
import { othersAt } from "./shapes-at";
import { type SideThere, sidesAt } from "./sides-at";

export interface NamedLine {
  readonly name: string;
  readonly points: readonly Point[];
  /** How far work is to stay off it, m; slopes stop there. */
  readonly clear?: number;
}

const spacing = 0.5;
/** Steps round the end of a line or a place that is kept clear of. */
const roundSteps = 96;
/** A slope this little over the ground at the line stops there, m. */
const stops = 0.01;

/**
 * What would make the building's side slopes stop at a line, for fill and for cut; empty where they stop before it. The
 * ground may be NaN where no slope comes.
 */
export function fitToLine(
  plan: GradingPlan,
  ground: HeightOfGround,
  floor: number,
  line: NamedLine,
): SlopeFit[] {
  const sides = sidesAt(plan);
  // Of the sides that meet at a corner the one that, all alike, would end first has to.
  const stopping = sidesAt(alike(plan));
  if (!sides || !stopping) return [];
  const fill = worst();
  const cut = worst();
  const ofSlopes = placesOfSlopes(plan, ground, floor, line);
  const places = ofSlopes.map(({ at }) => at);
  for (const { at, depth } of ofSlopes) {
    if (Math.abs(depth) <= stops) continue;
    const what = depth > 0 ? "fill" : "cut";
    const over = edgeOver(plan, what, sides(...at)[what], floor - ground(at));
    const there = stopping(...at)[what];
    const mend = edgeOver(plan, what, there, floor - ground(at));
    if (Number.isNaN(over.height)) continue;
    const height = over.height - Math.max(0, over.out) / over.slope;
    note(what === "fill" ? fill : cut, at, there.wall, mend, height);
  }
  const fitOf = (what: "fill" | "cut", { at, slope, height, walls }: Worst): SlopeFit[] => {
    if (!at) return [];
    const before = [...walls.keys()].sort((a, b) => (walls.get(b) as number) - (walls.get(a) as number));
    const stopping = before.findIndex((_, i) => stopsBy(before.slice(0, i + 1), what, slope));
    const sides = before
      .slice(0, stopping < 0 ? before.length : stopping + 1)
      .map((wall) => plan.footprint.walls[wall]?.name ?? "");
    return [
      { line: line.name, clear: line.clear ?? 0, what, at, slope, sides, wallHeight: height, wall: null },
    ];
  };
  const stopsBy = (walls: readonly number[], what: "fill" | "cut", slope: number | null) =>
    slope !== null &&
    finishedDepths(steeper(plan, walls, what, slope), ground, floor, places).every(
      (depth) => !((what === "fill" ? depth : -depth) > 2 * stops),
    );
  return [...fitOf("fill", fill), ...fitOf("cut", cut)];
}

/** Places to stop at, with finished over existing ground, but those to which other shapes come as well. */
function placesOfSlopes(plan: GradingPlan, ground: HeightOfGround, floor: number, line: NamedLine) {
  const { ring } = plan.footprint;
  const places = placesToStopAt(line).filter(([x, y]) => !containsPoint(ring, x, y));
  const depths = finishedDepths(plan, ground, floor, places);
  const others = othersAt(plan, ground, floor);
  return places.flatMap((at, i) => {
    const depth = depths[i] as number;
    return Math.abs(depth) > stops && others(at, depth).length > 0 ? [] : [{ at, depth }];
  });
}

/** Finished over existing ground with all that the plan builds; NaN where the ground isn't known. */
function finishedDepths(
  plan: GradingPlan,
  ground: HeightOfGround,
  floor: number,
  places: readonly Point[],
): Float64Array {
  const asked = placesAt(places, ground);
  const heights = finishHeights(
    prepare(asked, plan, { low: floor, high: floor }),
    floor,
    new Float64Array(places.length),
  );
  return heights.map((z, i) => z - (asked.existing[i] as number));
}

/** With a wall that is offered: as high as it would show, were it built. Its whole line needs ground. */
export function fitByWall(
  fit: SlopeFit,
  wall: OfferedWall,
  plan: GradingPlan,
  ground: HeightOfGround,
  floor: number,
): SlopeFit {
  const { line, lowSide } = wall;
  const { fillSlope, cutSlope } = plan.pad;
  const laid = layWall(retainingWallSchema.parse({ id: "offered", line, lowSide }), ground, {
    fill: fillSlope,
    cut: cutSlope,
  });
  const walls = [...(plan.walls ?? []), laid];
  return { ...fit, wall, wallHeight: retainingResult(laid, { ...plan, walls }, ground, floor).exposed };
}

/** How high the edge of a side's apron stands over the ground at a place, in cut under it, and how far that lies beyond. */
function edgeOver({ pad }: GradingPlan, what: "fill" | "cut", { wall, out }: SideThere, floorOver: number) {
  const rule = pad.sides?.[wall] ?? pad;
  const apron = floorOver + rule.edgeAboveFloor - rule.fall * Math.min(out, rule.width);
  return what === "fill"
    ? { height: apron, out: out - rule.width, slope: rule.fillSlope }
    : { height: -apron, out: out - rule.width, slope: rule.cutSlope };
}

function alike(plan: GradingPlan): GradingPlan {
  const { pad } = plan;
  const { fillSlope, cutSlope } = pad;
  return { ...plan, pad: { ...pad, sides: pad.sides?.map((rule) => ({ ...rule, fillSlope, cutSlope })) } };
}

/** The plan with the slope of some sides changed. */
function steeper(
  plan: GradingPlan,
  walls: readonly number[],
  what: "fill" | "cut",
  slope: number,
): GradingPlan {
  const { pad, footprint } = plan;
  const patch = what === "fill" ? { fillSlope: slope } : { cutSlope: slope };
  const sides = footprint.walls.map((_, i) => {
    const rule = pad.sides?.[i] ?? pad;
    return walls.includes(i) ? { ...rule, ...patch } : rule;
  });
  return { ...plan, pad: { ...pad, sides } };
}

interface Worst {
  at: [number, number] | null;
  height: number;
  slope: number | null;
  /** How high the slope of each side that comes to the line stands over it at most. */
  readonly walls: Map<number, number>;
}

const worst = (): Worst => ({ at: null, height: stops, slope: Number.POSITIVE_INFINITY, walls: new Map() });

/** `wall`: the side that is to stop there, `edge` its apron's edge; `height`: the present slope over the place. */
function note(
  so: Worst,
  at: Point,
  wall: number,
  edge: { readonly height: number; readonly out: number },
  height: number,
): void {
  if (height <= stops) return;
  so.walls.set(wall, Math.max(height, so.walls.get(wall) ?? 0));
  if (edge.out <= 0) so.slope = null;
  else if (so.slope !== null && edge.height > 0) so.slope = Math.min(so.slope, edge.out / edge.height);
  if (height > so.height || !so.at) {
    so.height = height;
    so.at = [...at];
  }
}

/** Along the line itself, or along the edge of what stays clear of it. */
function placesToStopAt({ points, clear = 0 }: NamedLine): Point[] {
  const along = placesOn(points);
  if (clear === 0) return along;
  const beside = along.flatMap((_, i): Point[] => {
    const [from, to] = [
      along[Math.max(0, i - 1)] as Point,
      along[Math.min(along.length - 1, i + 1)] as Point,
    ];
    const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
    if (length === 0) return [];
    const [x, y] = along[i] as Point;
    const [nx, ny] = [((to[1] - from[1]) / length) * clear, (-(to[0] - from[0]) / length) * clear];
    return [
      [x + nx, y + ny],
      [x - nx, y - ny],
    ];
  });
  const round = points.flatMap(([x, y]) =>
    Array.from({ length: roundSteps }, (_, k): Point => {
      const angle = (2 * Math.PI * k) / roundSteps;
      return [x + clear * Math.cos(angle), y + clear * Math.sin(angle)];
    }),
  );
  const hair = 1e-6;
  const area = points.length > 3 && points[0] === points[points.length - 1];
  return [...beside, ...round].filter(
    ([x, y]) =>
      nearestOnPolyline(points, x, y).distance >= clear - hair && !(area && containsPoint(points, x, y)),
  );
}

function placesOn(points: readonly Point[]): Point[] {
  const length = cornerDistances(points)[points.length - 1] ?? 0;
  if (length === 0) return points.slice(0, 1);
  const pieces = Math.max(1, Math.ceil(length / spacing));
  return Array.from({ length: pieces + 1 }, (_, i) => pointAlong(points, (length * i) / pieces).at);
}
