/**
 * Cut and fill under a footprint against the height of a level plane, written out: a cubic between each two heights of the
 * ground's clipped corners.
 *
 * Units   heights m, volumes m3; `fill` and `cut` are c0 + c1·t + c2·t² + c3·t³ with t = height − `zero`.
 * Method  A triangle of plan area A with corners a ≤ b ≤ c holds, up to the height h, A(h − a)³ / 3(b − a)(c − a) below b,
 *         A(h − mean) + A(c − h)³ / 3(c − a)(c − b) below c, and A(h − mean) above. Those between two neighbouring heights
 *         are summed about the lower one, so that nothing cancels over a high datum. Cut = fill − A(h − mean) of all.
 * Source  First principles.
 * Error   Rounding. Heights nearer than 1e-9 m are one knot.
 */
import type { Point } from "../geometry";
import type { Ground } from "../terrain";
import type { Piece } from "./piece-set";
import { clippedPieces } from "./volume-curve";

export type Cubic = readonly [c0: number, c1: number, c2: number, c3: number];

/** One piece of the curve; `from` or `to` null: it goes on without end, a straight line. */
export interface CubicPiece {
  readonly from: number | null;
  readonly to: number | null;
  readonly zero: number;
  readonly fill: Cubic;
  readonly cut: Cubic;
}

const oneKnot = 1e-9;

/** The curve for a footprint (a simple ring), from the lowest piece up; empty where the ground doesn't reach it. */
export function cubicCurve(ground: Ground, ring: readonly Point[]): CubicPiece[] {
  const { measured, guessed } = clippedPieces(ground, ring);
  return cubicsOf([...measured, ...guessed]);
}

/** Fill and cut of one piece at a height within it, m3. */
export function cubicAt({ zero, fill, cut }: CubicPiece, height: number) {
  const t = height - zero;
  const at = ([c0, c1, c2, c3]: Cubic) => c0 + t * (c1 + t * (c2 + t * c3));
  return { fill: at(fill), cut: at(cut) };
}

function cubicsOf(pieces: readonly Piece[]): CubicPiece[] {
  const sorted = pieces
    .map(({ area, z }): Sorted => ({ area, z: [...z].sort((a, b) => a - b) as [number, number, number] }))
    .sort((a, b) => a.z[0] - b.z[0]);
  const knots = knotsOf(sorted);
  const [lowest] = knots;
  if (lowest === undefined) return [];
  const all = sorted.map(({ area, z }) => ({ area, over: area * ((z[0] + z[1] + z[2]) / 3 - lowest) }));
  const area = sum(all.map((one) => one.area));
  const over = sum(all.map((one) => one.over));
  const made = (from: number | null, to: number | null, fill: Cubic): CubicPiece => {
    const zero = from ?? (to as number);
    // What lies over the plane less what it lies over: area × (mean height of the ground − height).
    const [c0, c1, c2, c3] = fill;
    return { from, to, zero, fill, cut: [c0 + over - area * (zero - lowest), c1 - area, c2, c3] };
  };
  const inner = fillBetween(sorted, knots).map((fill, i) =>
    made(knots[i] as number, knots[i + 1] as number, fill),
  );
  const highest = knots[knots.length - 1] as number;
  const last = made(highest, null, [area * (highest - lowest) - over, area, 0, 0]);
  return [made(null, lowest, [0, 0, 0, 0]), ...inner, { ...last, cut: [0, 0, 0, 0] }];
}

interface Sorted {
  readonly area: number;
  /** Lowest, middle, highest. */
  readonly z: readonly [number, number, number];
}

function knotsOf(pieces: readonly Sorted[]): number[] {
  const heights = pieces.flatMap(({ z }) => z).sort((a, b) => a - b);
  const knots: number[] = [];
  for (const z of heights) if (!(z - (knots[knots.length - 1] as number) <= oneKnot)) knots.push(z);
  return knots;
}

/** The fill of each interval of the knots, about its lower end. Pieces come by their lowest corner. */
function fillBetween(pieces: readonly Sorted[], knots: readonly number[]): Cubic[] {
  let open: Sorted[] = [];
  let next = 0;
  // Wholly below: area, and area × (mean height − the lowest knot).
  let area = 0;
  let over = 0;
  const lowest = knots[0] as number;
  return knots.slice(0, -1).map((zero, i): Cubic => {
    const middle = (zero + (knots[i + 1] as number)) / 2;
    while (next < pieces.length && (pieces[next] as Sorted).z[0] < middle)
      open.push(pieces[next++] as Sorted);
    const still: Sorted[] = [];
    for (const piece of open) {
      if (piece.z[2] > middle) still.push(piece);
      else {
        area += piece.area;
        over += piece.area * (meanOf(piece) - lowest);
      }
    }
    open = still;
    const fill: [number, number, number, number] = [area * (zero - lowest) - over, area, 0, 0];
    for (const piece of open) addStraddling(fill, piece, zero, middle);
    return fill;
  });
}

function addStraddling(fill: [number, number, number, number], piece: Sorted, zero: number, middle: number) {
  const { area, z } = piece;
  const [a, b, c] = z;
  if (middle < b) addCube(fill, area / (3 * (b - a) * (c - a)), zero - a);
  else {
    fill[0] += area * (zero - meanOf(piece));
    fill[1] += area;
    // A(c − h)³ / 3(c − a)(c − b) = −factor × (h − c)³
    addCube(fill, -area / (3 * (c - a) * (c - b)), zero - c);
  }
}

/** factor × (t + u)³ */
function addCube(fill: [number, number, number, number], factor: number, u: number) {
  fill[0] += factor * u ** 3;
  fill[1] += 3 * factor * u ** 2;
  fill[2] += 3 * factor * u;
  fill[3] += factor;
}

function meanOf({ z }: Sorted): number {
  return (z[0] + z[1] + z[2]) / 3;
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
