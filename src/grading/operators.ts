/**
 * The finished ground at any set of places, as clamps of the existing ground.
 *
 * Units   metres.
 * Method  Each act passes the ground through z ← min(max(z, lower), upper), one after the other in the plan's order.
 *         Distances, and with them the limits relative to the floor, don't depend on the floor: `prepare` works them
 *         out once, `finishHeights` is one clamp a place and act.
 * Source  First principles.
 */
import { apronOperator } from "./apron-operator";
import { padOperator, pointOperator, wallOperator } from "./area-operators";
import { crossings } from "./crossings";
import { bermOperator, driveOperator, overPipeOperator, swaleOperator } from "./line-operators";
import { type Limits, noLimits, type Operator } from "./operator";
import { inOrder } from "./order";
import type { FloorRange, GradingPlan } from "./plan";
import { outsideBox } from "./strip";

/** Where finished heights are wanted. One entry a place; covered = 1 where no act works, within the walls. */
export interface Places {
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly existing: Float64Array;
  readonly covered: Uint8Array;
}

/** Places that an act can reach at some floor of the range, and its limits there: at a floor of 0, with their share. */
export interface Act {
  readonly id: string;
  readonly index: Uint32Array;
  readonly lower: Float64Array;
  readonly upper: Float64Array;
  readonly share: Float64Array;
  /** 1 on the surface that the act itself makes. */
  readonly core: Uint8Array;
}

export interface Prepared {
  readonly existing: Float64Array;
  /** In the order in which they shape the ground. */
  readonly acts: readonly Act[];
  /** All places that any act can reach, ascending. */
  readonly touched: Uint32Array;
  /** Thickness of stone at each place of `touched`, m. */
  readonly stone: Float32Array;
}

export interface PrepareOptions {
  /** Swales are taken at least this wide to each side of their line, so that a coarse grid can't miss the bed. */
  readonly leastSwaleHalfWidth?: number;
  /** Swales stay open where a pipe takes them under a drive: so water is followed. */
  readonly openPipes?: boolean;
}

/** The acts of a plan in their order. */
export function operatorsOf(
  plan: GradingPlan,
  { leastSwaleHalfWidth = 0, openPipes = false }: PrepareOptions = {},
): Operator[] {
  const usual = [
    apronOperator(plan),
    ...(plan.pads ?? []).map((pad) => padOperator(pad, plan.pad.corners)),
    ...plan.drives.map(driveOperator),
    ...(plan.berms ?? []).map(bermOperator),
    ...(plan.points ?? []).map(pointOperator),
    ...plan.swales.map((line) => swaleOperator(line, leastSwaleHalfWidth)),
    ...(plan.walls ?? []).map(wallOperator),
  ];
  const ordered = inOrder(usual, plan.order ?? []);
  if (!plan.piped) return ordered;
  return openPipes ? withOpenPipes(ordered, plan) : withEarthOverPipes(ordered, plan);
}

/** A drive that comes after a swale in the order fills it: there the swale is opened again, as its pipe is. */
function withOpenPipes(ordered: readonly Operator[], { drives, swales }: GradingPlan): Operator[] {
  const made: Operator[] = [];
  for (const operator of ordered) {
    const line = drives.find(({ drive }) => drive.id === operator.id);
    const filled = line ? made.filter(({ id }) => crossesDrive(swales, id, line)) : [];
    made.push(operator, ...filled);
  }
  return made;
}

function crossesDrive(swales: GradingPlan["swales"], id: string, drive: GradingPlan["drives"][number]) {
  return swales.some((swale) => swale.swale.id === id && crossings(swale, drive).length > 0);
}

/** After each swale the earth of the drives that it would cut: of those that come before it in the order. */
function withEarthOverPipes(ordered: readonly Operator[], { drives, swales }: GradingPlan): Operator[] {
  const made = new Set<string>();
  return ordered.flatMap((operator) => {
    made.add(operator.id);
    const swale = swales.find(({ swale: one }) => one.id === operator.id);
    if (!swale) return [operator];
    const over = drives.flatMap((drive) => {
      const found = made.has(drive.drive.id) ? crossings(swale, drive) : [];
      return found.length > 0 ? [overPipeOperator(drive, swale, found)] : [];
    });
    return [operator, ...over];
  });
}

/** Works out what every act does at every place. */
export function prepare(
  places: Places,
  plan: GradingPlan,
  range: FloorRange,
  options: PrepareOptions = {},
): Prepared {
  const { existing } = places;
  // Lowest and highest that the ground can stand at each place over the range, before the next act.
  const span = { lowest: Float64Array.from(existing), highest: Float64Array.from(existing) };
  const stone = new Float32Array(existing.length);
  const growing = actsOver(existing.length);
  const acts = operatorsOf(plan, options).map((operator) =>
    prepareAct(operator, places, range, span, stone, growing),
  );
  return { existing, acts, ...reached(acts, stone) };
}

interface Span {
  readonly lowest: Float64Array;
  readonly highest: Float64Array;
}

function prepareAct(
  operator: Operator,
  places: Places,
  range: FloorRange,
  span: Span,
  stone: Float32Array,
  growing: Growing,
): Act {
  const ends = operator.ends(range.low, range.high);
  const limits = noLimits();
  const count = places.existing.length;
  let reached = 0;
  for (let from = 0; from < count; from += block) {
    const to = Math.min(count, from + block);
    reached = reachPlaces(operator, ends, limits, places, range, span, stone, growing, from, to, reached);
  }
  return {
    id: operator.id,
    index: growing.index.slice(0, reached),
    lower: growing.lower.slice(0, reached),
    upper: growing.upper.slice(0, reached),
    share: growing.share.slice(0, reached),
    core: growing.core.slice(0, reached),
  };
}

/**
 * Places looked at at a time. One long loop is compiled while it runs, and then makes a number on the heap for every place;
 * a function that is called often is compiled whole.
 */
const block = 1024;

/** Looks at the places from `from` to `to`; the first that it reaches is the act's number `reached`. Answers how many there are then. */
function reachPlaces(
  operator: Operator,
  ends: ReturnType<Operator["ends"]>,
  limits: Limits,
  { x, y, existing, covered }: Places,
  range: FloorRange,
  { lowest, highest }: Span,
  stone: Float32Array,
  act: Growing,
  from: number,
  to: number,
  reached: number,
): number {
  const { bounds, flattest } = operator;
  const { low: floorLow, high: floorHigh } = range;
  let k = reached;
  for (let i = from; i < to; i++) {
    if (covered[i]) continue;
    const px = x[i] as number;
    const py = y[i] as number;
    const low = lowest[i] as number;
    const high = highest[i] as number;
    // From afar: its slopes can't have come to this place yet.
    const away = outsideBox(bounds, px, py) / flattest;
    if (away > 0 && low >= ends.mostLower - away && high <= ends.leastUpper + away) continue;
    operator.limitsAt(px, py, existing[i] as number, limits);
    const rise = limits.share;
    const lower = limits.lower;
    const upper = limits.upper;
    // Where stone is laid every place counts, also where it lies just at the ground: the stone is dug in.
    const idle = low >= lower + rise * floorHigh && high <= upper + rise * floorLow;
    if (idle && limits.stone === 0) continue;
    act.index[k] = i;
    act.lower[k] = lower;
    act.upper[k] = upper;
    act.share[k] = rise;
    act.core[k] = limits.core ? 1 : 0;
    k++;
    if (limits.stone > 0) stone[i] = limits.stone;
    lowest[i] = Math.min(Math.max(low, lower + rise * floorLow), upper + rise * floorLow);
    highest[i] = Math.min(Math.max(high, lower + rise * floorHigh), upper + rise * floorHigh);
  }
  return k;
}

/** Room for what acts do at as many places as there are; each act takes its part out. */
type Growing = ReturnType<typeof actsOver>;

function actsOver(most: number) {
  return {
    index: new Uint32Array(most),
    lower: new Float64Array(most),
    upper: new Float64Array(most),
    share: new Float64Array(most),
    core: new Uint8Array(most),
  };
}

function reached(acts: readonly Act[], thickness: Float32Array): Pick<Prepared, "touched" | "stone"> {
  const mark = new Uint8Array(thickness.length);
  for (const { index } of acts) for (let k = 0; k < index.length; k++) mark[index[k] as number] = 1;
  const all = new Uint32Array(mark.length);
  let count = 0;
  for (let i = 0; i < mark.length; i++) if (mark[i]) all[count++] = i;
  const touched = all.slice(0, count);
  const stone = new Float32Array(count);
  for (let k = 0; k < count; k++) stone[k] = thickness[touched[k] as number] as number;
  return { touched, stone };
}

/** Finished heights of all places at a floor height, into `out`. */
export function finishHeights(prepared: Prepared, floor: number, out: Float64Array): Float64Array {
  out.set(prepared.existing);
  for (const act of prepared.acts) clamp(act, floor, out);
  return out;
}

function clamp({ index, lower, upper, share }: Act, floor: number, out: Float64Array): void {
  for (let k = 0; k < index.length; k++) {
    const i = index[k] as number;
    const rise = (share[k] as number) * floor;
    const low = (lower[k] as number) + rise;
    const high = (upper[k] as number) + rise;
    const z = out[i] as number;
    out[i] = z < low ? low : Math.min(z, high);
  }
}
