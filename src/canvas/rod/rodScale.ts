/** The rod's scale: which heights it shows, and where each lies. Heights in metres, places in pixels from the top. */
import { FOOT, INCH, type LengthNotation } from "../../units";

export interface RodRange {
  readonly low: number;
  readonly high: number;
}

/** Less than this between the rod's ends would turn a hair of the hand into an inch, m. */
const leastSpan = 1.2;
/** Share of the span kept free beyond the outermost height. */
const margin = 0.12;

/** Ends round out to this, m, so that a small change of the ground doesn't move the scale. */
function roundEnd(notation: LengthNotation): number {
  return isFeet(notation) ? FOOT / 2 : 0.1;
}

export function isFeet(notation: LengthNotation): boolean {
  return notation === "ft-in" || notation === "in" || notation === "ft";
}

/** A range that shows all heights with room beyond them. */
export function rangeFor(heights: readonly number[], notation: LengthNotation): RodRange {
  const step = roundEnd(notation);
  const known = heights.filter(Number.isFinite);
  const low = known.length > 0 ? Math.min(...known) : 0;
  const high = known.length > 0 ? Math.max(...known) : 0;
  const span = Math.max(leastSpan, (high - low) * (1 + 2 * margin));
  const middle = (low + high) / 2;
  return {
    low: Math.floor((middle - span / 2) / step + 1e-9) * step,
    high: Math.ceil((middle + span / 2) / step - 1e-9) * step,
  };
}

/** Ends of the band that lie near enough to be shown; a far one would shrink what the hand works on. */
export function nearEnds(ends: readonly (number | null)[], heights: readonly number[]): number[] {
  const known = ends.filter((z) => z !== null);
  if (heights.length === 0) return known;
  const [low, high] = [Math.min(...heights), Math.max(...heights)];
  const reach = 0.5 * Math.max(leastSpan, high - low);
  return known.filter((z) => z >= low - reach && z <= high + reach);
}

/**
 * The range to show next. It doesn't jump under the hand: while it still serves it stays, and under the hand it
 * only grows, by whole steps, when the floor comes to its end.
 */
export function nextRange(
  shown: RodRange | null,
  heights: readonly number[],
  floor: number | null,
  notation: LengthNotation,
  underHand: boolean,
): RodRange {
  const wanted = rangeFor(floor === null ? heights : [...heights, floor], notation);
  if (!shown) return wanted;
  if (underHand) return floor === null ? shown : grown(shown, floor, roundEnd(notation));
  const serves = wanted.low >= shown.low && wanted.high <= shown.high;
  const tooWide = shown.high - shown.low > 1.6 * (wanted.high - wanted.low);
  return serves && !tooWide ? shown : wanted;
}

function grown(range: RodRange, floor: number, step: number): RodRange {
  let { low, high } = range;
  while (floor < low + step / 2) low -= step;
  while (floor > high - step / 2) high += step;
  return low === range.low && high === range.high ? range : { low, high };
}

export interface RodRule {
  readonly range: RodRange;
  /** Pixels from the rod's top to its bottom. */
  readonly height: number;
}

export function rodY({ range, height }: RodRule, z: number): number {
  return ((range.high - z) / (range.high - range.low)) * height;
}

export function rodHeight({ range, height }: RodRule, y: number): number {
  return range.high - (y / height) * (range.high - range.low);
}

export interface ScaleTick {
  readonly z: number;
  readonly y: number;
  /** 2: numbered, 1: half, 0: fine. */
  readonly weight: 0 | 1 | 2;
}

interface Division {
  readonly numbered: number;
  readonly half: number;
  readonly fine: number;
}

/** For a rod over many metres: numbers at 1, 2 and 5 times powers of ten of the unit, coarse to fine. */
function coarse(unit: number): Division[] {
  return [1000, 100, 10].flatMap((ten) =>
    [5, 2, 1].map((by) => {
      const numbered = by * ten * unit;
      return { numbered, half: numbered / 2, fine: numbered / (by === 2 ? 4 : 5) };
    }),
  );
}

/** Usual divisions, coarse to fine, m. */
function divisions(notation: LengthNotation): readonly Division[] {
  const feet: Division[] = [
    { numbered: 10 * FOOT, half: 5 * FOOT, fine: FOOT },
    { numbered: 5 * FOOT, half: FOOT, fine: FOOT / 2 },
    { numbered: 2 * FOOT, half: FOOT, fine: 3 * INCH },
    { numbered: FOOT, half: FOOT / 2, fine: INCH },
  ];
  if (notation === "ft")
    return [
      ...coarse(FOOT).slice(0, -1),
      ...feet.map((each, i) => ({ ...each, fine: ([1, 0.5, 0.2, 0.1][i] as number) * FOOT })),
    ];
  if (isFeet(notation)) return [...coarse(FOOT).slice(0, -1), ...feet];
  return [
    ...coarse(1),
    { numbered: 5, half: 1, fine: 0.5 },
    { numbered: 2, half: 1, fine: 0.2 },
    { numbered: 1, half: 0.5, fine: 0.1 },
    { numbered: 0.5, half: 0.1, fine: 0.05 },
    { numbered: 0.2, half: 0.1, fine: 0.02 },
    { numbered: 0.1, half: 0.05, fine: 0.01 },
  ];
}

const leastNumberGap = 34;
const leastFineGap = 3.5;

/** Ticks of the scale: the finest usual division whose numbers and lines don't crowd. */
export function scaleTicks(rule: RodRule, notation: LengthNotation): ScaleTick[] {
  const perMetre = rule.height / (rule.range.high - rule.range.low);
  const all = divisions(notation);
  const fitting = all.filter(
    ({ numbered, fine }) => numbered * perMetre >= leastNumberGap && fine * perMetre >= leastFineGap,
  );
  const { numbered, half, fine } = fitting.at(-1) ?? (all[0] as Division);
  const ticks: ScaleTick[] = [];
  const first = Math.ceil(rule.range.low / fine - 1e-6);
  const last = Math.floor(rule.range.high / fine + 1e-6);
  for (let k = first; k <= last; k++) {
    const z = k * fine;
    const weight = isMultiple(z, numbered) ? 2 : isMultiple(z, half) ? 1 : 0;
    ticks.push({ z, y: rodY(rule, z), weight });
  }
  return ticks;
}

function isMultiple(z: number, of: number): boolean {
  return Math.abs(z / of - Math.round(z / of)) < 1e-6;
}
