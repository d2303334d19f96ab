/**
 * The finished ground at any set of places, as clamps of the existing ground.
 *
 * Units   metres.
 * Method  Each act passes the ground through z ← min(max(z, lower), upper), in this order: pad with apron and
 *         side slopes, then drives, then swales (which have an upper limit only). Distances, and with them the
 *         limits relative to the floor, don't depend on the floor: `prepare` works them out once, `finishHeights`
 *         is one clamp a place. Slopes run round corners as cones.
 * Source  First principles. Side slopes are run for one of rise.
 */
import { type Bounds, boundsOf } from "../geometry";
import { type DriveLine, doorGap, driveHeight } from "./drive-line";
import type { FloorRange, GradingPlan, PadRule } from "./plan";
import { bedHeight, type SwaleLine } from "./swale-line";
import { type Nearest, nearestSegment, nowhere, segmentsOf } from "./wall-distance";

/** Where finished heights are wanted. One entry a place; covered = 1 where no act works, within the walls. */
export interface Places {
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly existing: Float64Array;
  readonly covered: Uint8Array;
}

/** Places that an act can reach at some floor of the range, and its limits there. */
interface PadAct {
  readonly index: Uint32Array;
  /** Limits relative to the floor. */
  readonly lower: Float64Array;
  readonly upper: Float64Array;
}

interface DriveAct {
  readonly index: Uint32Array;
  /** Height of the drive is base + share · floor. */
  readonly base: Float64Array;
  readonly share: Float64Array;
  /** Height gained (+) or lost (−) by the side slopes: 0 on the drive itself. */
  readonly spread: Float64Array;
}

interface SwaleAct {
  readonly index: Uint32Array;
  readonly upper: Float64Array;
}

export interface Prepared {
  readonly existing: Float64Array;
  readonly pad: PadAct;
  readonly drives: readonly DriveAct[];
  readonly swales: readonly SwaleAct[];
  /** All places that any act can reach, ascending. */
  readonly touched: Uint32Array;
  /** Thickness of a drive's stone at each place of `touched`, m. */
  readonly stone: Float32Array;
}

export interface PrepareOptions {
  /** Swales are taken at least this wide to each side of their line, so that a coarse grid can't miss the bed. */
  readonly leastSwaleHalfWidth?: number;
}

/** Works out what every act does at every place. */
export function prepare(
  places: Places,
  plan: GradingPlan,
  range: FloorRange,
  options: PrepareOptions = {},
): Prepared {
  // Lowest and highest that the ground can stand at each place over the range, before the next act.
  const span = { lowest: Float64Array.from(places.existing), highest: Float64Array.from(places.existing) };
  const pad = preparePad(places, plan, range, span);
  const drives = plan.drives.map((line) => prepareDrive(places, line, range, span));
  const swales = plan.swales.map((line) =>
    prepareSwale(places, line, span, options.leastSwaleHalfWidth ?? 0),
  );
  return { existing: places.existing, pad, drives, swales, ...reached(places, plan, pad, drives, swales) };
}

interface Span {
  readonly lowest: Float64Array;
  readonly highest: Float64Array;
}

function preparePad(places: Places, plan: GradingPlan, range: FloorRange, span: Span): PadAct {
  const { x, y, existing, covered } = places;
  const act = growing(existing.length);
  const lower = new Float64Array(existing.length);
  const upper = new Float64Array(existing.length);
  const beside = wallFinder(plan);
  for (let i = 0; i < existing.length; i++) {
    if (covered[i]) continue;
    const near = beside(x[i] as number, y[i] as number);
    const low = padLower(near.distance, near.beyond, plan.pad);
    const high = padUpper(near.distance, near.beyond, plan.pad);
    const z = existing[i] as number;
    if (z >= range.high + low && z <= range.low + high) continue;
    lower[act.count] = low;
    upper[act.count] = high;
    act.index[act.count++] = i;
    span.lowest[i] = Math.min(Math.max(z, range.low + low), range.low + high);
    span.highest[i] = Math.min(Math.max(z, range.high + low), range.high + high);
  }
  return {
    index: act.index.slice(0, act.count),
    lower: lower.slice(0, act.count),
    upper: upper.slice(0, act.count),
  };
}

/** Lowest that the ground may be left at a distance from the wall, relative to the floor. */
function padLower(distance: number, beyond: number, rule: PadRule): number {
  const apron = rule.edgeAboveFloor - rule.fall * Math.min(distance, rule.width);
  return apron - (Math.max(0, distance - rule.width) + beyond) / rule.fillSlope;
}

/** Highest that the ground may be left at a distance from the wall, relative to the floor. */
function padUpper(distance: number, beyond: number, rule: PadRule): number {
  const apron = rule.edgeAboveFloor - rule.fall * Math.min(distance, rule.width);
  return apron + (Math.max(0, distance - rule.width) + beyond) / rule.cutSlope;
}

/**
 * Distance to the walls, and how much farther the nearest graded wall is where the nearest wall leaves the
 * ground as it is: there the earth slopes off to the side, so that no cliff stands at the corner.
 */
function wallFinder(plan: GradingPlan): (x: number, y: number) => { distance: number; beyond: number } {
  const { walls } = plan.footprint;
  const all = segmentsOf(walls);
  const graded = segmentsOf(walls.filter((_, i) => !plan.pad.leave[i]));
  const found: Nearest = nowhere();
  const answer = { distance: 0, beyond: 0 };
  if (graded.length === 0) {
    answer.beyond = Number.POSITIVE_INFINITY;
    return () => answer;
  }
  const everyWall = graded.length === all.length;
  return (x, y) => {
    answer.distance = nearestSegment(all, x, y, found).distance;
    answer.beyond = everyWall ? 0 : nearestSegment(graded, x, y, found).distance - answer.distance;
    return answer;
  };
}

function prepareDrive(places: Places, line: DriveLine, range: FloorRange, span: Span): DriveAct {
  const { x, y, existing, covered } = places;
  const act = growing(existing.length);
  const base = new Float64Array(existing.length);
  const share = new Float64Array(existing.length);
  const spread = new Float64Array(existing.length);
  const half = line.drive.width / 2;
  const runOn = runOnAtDoor(line);
  const box = boundsOf(line.line);
  const ends = [0, line.length - line.landing, line.length].map((t) => driveHeight(line, t));
  const least = Math.min(...ends.map((end) => end.base + end.share * range.low));
  const most = Math.max(...ends.map((end) => end.base + end.share * range.high));
  const found = nowhere();
  for (let i = 0; i < existing.length; i++) {
    if (covered[i]) continue;
    const low = span.lowest[i] as number;
    const high = span.highest[i] as number;
    const away = (outsideBox(box, x[i] as number, y[i] as number) - half - runOn) / line.drive.sideSlope;
    if (away > 0 && low >= most - away && high <= least + away) continue;
    nearestSegment(line.segments, x[i] as number, y[i] as number, found);
    const beside = besideStrip(found, line.distances, half, runOn) / line.drive.sideSlope;
    const height = driveHeight(line, (line.distances[found.segment] as number) + found.along);
    const lowest = height.base + height.share * range.low;
    const highest = height.base + height.share * range.high;
    // On the drive itself every place counts, also where it lies just at the ground: its stone is dug in.
    if (beside > 0 && low >= highest - beside && high <= lowest + beside) continue;
    base[act.count] = height.base;
    share[act.count] = height.share;
    spread[act.count] = beside;
    act.index[act.count++] = i;
    span.lowest[i] = Math.min(Math.max(low, lowest - beside), lowest + beside);
    span.highest[i] = Math.min(Math.max(high, highest - beside), highest + beside);
  }
  return {
    index: act.index.slice(0, act.count),
    base: base.slice(0, act.count),
    share: share.slice(0, act.count),
    spread: spread.slice(0, act.count),
  };
}

function prepareSwale(places: Places, line: SwaleLine, span: Span, leastHalfWidth: number): SwaleAct {
  const { x, y, existing, covered } = places;
  const act = growing(existing.length);
  const upper = new Float64Array(existing.length);
  const found = nowhere();
  const half = Math.max(line.swale.bottomWidth / 2, leastHalfWidth);
  const box = boundsOf(line.line);
  const lowestBed = Math.min(bedHeight(line, 0), bedHeight(line, line.length));
  for (let i = 0; i < existing.length; i++) {
    if (covered[i]) continue;
    const highest = span.highest[i] as number;
    const away = (outsideBox(box, x[i] as number, y[i] as number) - half) / line.swale.sideSlope;
    if (highest <= lowestBed + Math.max(0, away)) continue;
    nearestSegment(line.segments, x[i] as number, y[i] as number, found);
    const bed = bedHeight(line, (line.distances[found.segment] as number) + found.along);
    const limit = bed + besideStrip(found, line.distances, half) / line.swale.sideSlope;
    if (highest <= limit) continue;
    upper[act.count] = limit;
    act.index[act.count++] = i;
  }
  return { index: act.index.slice(0, act.count), upper: upper.slice(0, act.count) };
}

/** Distance from a place to a box, 0 inside it: no line in the box is nearer. */
function outsideBox(box: Bounds, x: number, y: number): number {
  const dx = Math.max(box.minX - x, 0, x - box.maxX);
  const dy = Math.max(box.minY - y, 0, y - box.maxY);
  return dx === 0 ? dy : dy === 0 ? dx : Math.sqrt(dx * dx + dy * dy);
}

/**
 * How far a place lies outside a strip about a centreline. Bends are round, the two ends are cut square, the
 * far one after going on for `runOn`.
 */
function besideStrip(found: Nearest, distances: Float64Array, half: number, runOn = 0): number {
  const last = distances.length - 2;
  const length = (distances[found.segment + 1] as number) - (distances[found.segment] as number);
  const before = found.segment === 0 ? -found.along : 0;
  const after = found.segment === last ? found.along - length : 0;
  if (before <= 0 && after <= 0) return Math.max(0, found.distance - half);
  const past = Math.max(before, after - runOn);
  return Math.hypot(Math.max(0, Math.abs(found.across) - half), Math.max(0, past));
}

/** A drive that ends at a door goes on under the wall, so that no gap is left where it meets it at an angle. */
function runOnAtDoor({ sillBelowFloor, drive }: DriveLine): number {
  return sillBelowFloor === null ? 0 : drive.width / 2 + doorGap;
}

function growing(most: number): { index: Uint32Array; count: number } {
  return { index: new Uint32Array(most), count: 0 };
}

function reached(
  places: Places,
  plan: GradingPlan,
  pad: PadAct,
  drives: readonly DriveAct[],
  swales: readonly SwaleAct[],
): { touched: Uint32Array; stone: Float32Array } {
  const mark = new Uint8Array(places.existing.length);
  const thickness = new Float32Array(plan.drives.length > 0 ? mark.length : 0);
  for (const { index } of [pad, ...swales]) for (const i of index) mark[i] = 1;
  drives.forEach(({ index, spread }, d) => {
    const gravel = plan.drives[d]?.drive.gravel ?? 0;
    index.forEach((i, k) => {
      mark[i] = 1;
      if (spread[k] === 0) thickness[i] = gravel;
    });
  });
  const all = growing(mark.length);
  for (let i = 0; i < mark.length; i++) if (mark[i]) all.index[all.count++] = i;
  const touched = all.index.slice(0, all.count);
  const stone = new Float32Array(all.count);
  if (thickness.length > 0)
    for (let k = 0; k < all.count; k++) stone[k] = thickness[touched[k] as number] as number;
  return { touched, stone };
}

/** Finished heights of all places at a floor height, into `out`. */
export function finishHeights(prepared: Prepared, floor: number, out: Float64Array): Float64Array {
  out.set(prepared.existing);
  applyPad(prepared.pad, floor, out);
  for (const drive of prepared.drives) applyDrive(drive, floor, out);
  for (const swale of prepared.swales) applySwale(swale, out);
  return out;
}

function applyPad({ index, lower, upper }: PadAct, floor: number, out: Float64Array): void {
  for (let k = 0; k < index.length; k++) {
    const i = index[k] as number;
    const low = floor + (lower[k] as number);
    const high = floor + (upper[k] as number);
    const z = out[i] as number;
    out[i] = z < low ? low : Math.min(z, high);
  }
}

function applyDrive({ index, base, share, spread }: DriveAct, floor: number, out: Float64Array): void {
  for (let k = 0; k < index.length; k++) {
    const i = index[k] as number;
    const height = (base[k] as number) + (share[k] as number) * floor;
    const beside = spread[k] as number;
    const z = out[i] as number;
    out[i] = z < height - beside ? height - beside : Math.min(z, height + beside);
  }
}

function applySwale({ index, upper }: SwaleAct, out: Float64Array): void {
  for (let k = 0; k < index.length; k++) {
    const i = index[k] as number;
    const limit = upper[k] as number;
    if ((out[i] as number) > limit) out[i] = limit;
  }
}
