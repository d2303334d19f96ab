/**
 * Corners from taped sides and diagonals, by least squares.
 *
 * Units   any one unit of length, the same in and out.
 * Form    The first corner stands at (0, 0), the second on the x axis, the rest to the left of the way between them.
 * Sign    residual = taped - adjusted.
 * Method  Start by crossing tapes, then Gauss-Newton on all distances with equal weights.
 * Source  first principles; trilateration is least squares' school example.
 * Errors  Measures that don't fix a corner, or can't be lengths, are named in words; nothing throws.
 */
import { cholesky, type Point, selfCrossing, substitute } from "../geometry";
import { type Places, placeByCrossing } from "./crossing";
import { cornerAngles } from "./outOfSquare";

export interface TapedLength {
  readonly from: string;
  readonly to: string;
  readonly distance: number;
}

export interface SquaredCorner {
  readonly name: string;
  readonly x: number;
  readonly y: number;
}

export interface TapeResidual extends TapedLength {
  readonly adjusted: number;
  readonly residual: number;
}

export interface Squared {
  /** In order round the building. */
  readonly corners: readonly SquaredCorner[];
  /** One for each measure, in their order. */
  readonly residuals: readonly TapeResidual[];
  /** Measures beyond those that are needed: 0 means that nothing checks them. */
  readonly redundancy: number;
  /** Standard error of one measure, √(sum of squared residuals / redundancy); null without redundancy. */
  readonly standardError: number | null;
}

/** `tape`: which measure it is about, where it is about one; `part`: what of it can't be. */
export type SquaringFault = {
  readonly what: string;
  readonly how: string;
  readonly tape?: number;
  readonly part?: "to" | "distance";
};

export type SquaringResult =
  | { readonly ok: true; readonly squared: Squared }
  | ({ readonly ok: false } & SquaringFault);

const MOST_ROUNDS = 60;

export function squareUp(tapes: readonly TapedLength[]): SquaringResult {
  const fault = badMeasure(tapes);
  if (fault !== null) return { ok: false, ...fault };
  const names = namesOf(tapes);
  if (names.length < 3) {
    return {
      ok: false,
      what: `Only ${names.length} corners are named.`,
      how: "Measure at least three sides of a triangle; four sides and two diagonals for a rectangle.",
    };
  }
  const start = placeByCrossing(tapes, names);
  if (!start.ok) return start;
  const found = start.ways.map((way) => outcome(tapes, names, adjustPlaces(tapes, names, way)));
  return { ok: true, squared: found.reduce((best, each) => (isBetter(each, best) ? each : best)) };
}

/** Fits better; where both fit alike, which is left open by the tapes: goes round without crossing, has squarer corners. */
function isBetter(one: Squared, other: Squared): boolean {
  const [a, b] = [misfitOf(one), misfitOf(other)];
  const scale = Math.max(...one.residuals.map(({ distance }) => distance));
  if (Math.abs(a - b) > (ALIKE * scale) ** 2) return a < b;
  const [sound, otherSound] = [goesRound(one), goesRound(other)];
  return sound === otherSound ? askew(one) < askew(other) : sound;
}

function misfitOf({ residuals }: Squared): number {
  return residuals.reduce((sum, { residual }) => sum + residual * residual, 0);
}

function goesRound({ corners }: Squared): boolean {
  return selfCrossing(corners.map(({ x, y }): Point => [x, y])) === null;
}

function askew({ corners }: Squared): number {
  return cornerAngles(corners).reduce((sum, { off }) => sum + Math.abs(off), 0);
}

/** Fits within this share of the longest tape are alike: rounding of typed figures. */
const ALIKE = 1e-6;

function badMeasure(tapes: readonly TapedLength[]): SquaringFault | null {
  for (const [tape, { from, to, distance }] of tapes.entries()) {
    if (from === to) {
      return {
        what: `A measure goes from ${from} to itself.`,
        how: "Name the two corners it goes between.",
        tape,
        part: "to",
      };
    }
    if (!(distance > 0) || !Number.isFinite(distance)) {
      return {
        what: `The measure ${from}–${to} is no length.`,
        how: "Type what the tape read, more than nothing.",
        tape,
        part: "distance",
      };
    }
  }
  return null;
}

function namesOf(tapes: readonly TapedLength[]): string[] {
  return [...new Set(tapes.flatMap(({ from, to }) => [from, to]))];
}

/** Gauss-Newton; the first corner and the direction to the second stay. */
function adjustPlaces(tapes: readonly TapedLength[], names: readonly string[], places: Places): Places {
  const first = tapes[0] as TapedLength;
  const order = [first.from, first.to, ...names.filter((name) => name !== first.from && name !== first.to)];
  const size = 2 * order.length - 3;
  const column = new Map(
    order.map((name, i) => [name, i === 0 ? [-1, -1] : i === 1 ? [0, -1] : [2 * i - 3, 2 * i - 2]]),
  );
  const now: Places = new Map(places);
  const scale = Math.max(...tapes.map(({ distance }) => distance));
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const normal = new Float64Array(size * size);
    const right = new Float64Array(size);
    for (const tape of tapes) addDistance(tape, now, column, size, normal, right);
    const step = substitute(cholesky(normal, size), right, size);
    let most = 0;
    for (const name of order) {
      const [cx = -1, cy = -1] = column.get(name) ?? [];
      const [x, y] = now.get(name) as Point;
      const [dx, dy] = [cx < 0 ? 0 : (step[cx] ?? 0), cy < 0 ? 0 : (step[cy] ?? 0)];
      now.set(name, [x + dx, y + dy]);
      most = Math.max(most, Math.abs(dx), Math.abs(dy));
    }
    if (most < 1e-12 * scale) break;
  }
  return now;
}

function addDistance(
  { from, to, distance }: TapedLength,
  places: Places,
  column: ReadonlyMap<string, readonly number[]>,
  size: number,
  normal: Float64Array,
  right: Float64Array,
): void {
  const a = places.get(from) as Point;
  const b = places.get(to) as Point;
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]) || 1e-12;
  const [ux, uy] = [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
  const [ax = -1, ay = -1] = column.get(from) ?? [];
  const [bx = -1, by = -1] = column.get(to) ?? [];
  const terms = (
    [
      [ax, -ux],
      [ay, -uy],
      [bx, ux],
      [by, uy],
    ] as const
  ).filter(([at]) => at >= 0);
  for (const [row, slope] of terms) {
    right[row] = (right[row] ?? 0) + slope * (distance - length);
    for (const [other, otherSlope] of terms) {
      const at = row * size + other;
      normal[at] = (normal[at] ?? 0) + slope * otherSlope;
    }
  }
}

function outcome(tapes: readonly TapedLength[], names: readonly string[], places: Places): Squared {
  const residuals = tapes.map((tape): TapeResidual => {
    const a = places.get(tape.from) as Point;
    const b = places.get(tape.to) as Point;
    const adjusted = Math.hypot(b[0] - a[0], b[1] - a[1]);
    return {
      from: tape.from,
      to: tape.to,
      distance: tape.distance,
      adjusted,
      residual: tape.distance - adjusted,
    };
  });
  const redundancy = tapes.length - (2 * names.length - 3);
  const squares = residuals.reduce((sum, { residual }) => sum + residual * residual, 0);
  return {
    corners: roundTheBuilding(names, places).map((name) => {
      const [x, y] = places.get(name) as Point;
      return { name, x, y };
    }),
    residuals,
    redundancy,
    standardError: redundancy > 0 ? Math.sqrt(squares / redundancy) : null,
  };
}

/** By name (A, B, C round the building) if that ring doesn't cross itself, else as typed, else by direction from the middle. */
function roundTheBuilding(names: readonly string[], places: Places): string[] {
  const at = (name: string) => places.get(name) as Point;
  const isSound = (order: readonly string[]) => selfCrossing(order.map(at)) === null;
  const sorted = [...names].sort((a, b) => a.localeCompare(b, "en", { numeric: true }));
  const sound = [sorted, names].find(isSound);
  if (sound !== undefined) return [...sound];
  const mx = names.reduce((sum, name) => sum + at(name)[0], 0) / names.length;
  const my = names.reduce((sum, name) => sum + at(name)[1], 0) / names.length;
  const angle = (name: string) => Math.atan2(at(name)[1] - my, at(name)[0] - mx);
  return [...names].sort((a, b) => angle(a) - angle(b));
}
