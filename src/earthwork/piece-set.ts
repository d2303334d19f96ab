/**
 * Many small triangles of ground, arranged so that cut and fill against a level plane take little work at
 * any height of the plane.
 *
 * Method  Triangles wholly above the plane are the tail of the list by lowest corner, those wholly below
 *         the head of the list by highest corner: ready sums of area and of volume over a local zero
 *         give their part. The few that straddle the plane are found with a tree of highest corners and
 *         reckoned one by one.
 * Source  First principles; the tree is the usual interval tree.
 * Error   Rounding: relative to the relief of the pieces, not to their height above the datum.
 */
import { type CutFill, prismCutFill } from "./prism";

/** One triangle: plan area, m2, and the heights of its corners, m. */
export interface Piece {
  readonly area: number;
  readonly z: readonly [number, number, number];
}

export class PieceSet {
  readonly area: number;
  private readonly zero: number;
  /** In the order of the lowest corner (then the highest). */
  private readonly low: Float64Array;
  private readonly middle: Float64Array;
  private readonly high: Float64Array;
  private readonly areas: Float64Array;
  /** Sums over pieces i and all after it, in that order: area, and area x (mean height - zero). */
  private readonly areaFrom: Float64Array;
  private readonly momentFrom: Float64Array;
  /** In the order of the highest corner (then the lowest), and sums over all pieces before i. */
  private readonly byHigh: { readonly high: Float64Array; readonly low: Float64Array };
  private readonly areaBefore: Float64Array;
  private readonly momentBefore: Float64Array;
  /** Greatest highest corner below each node of a binary tree over the first order; leaves start at `leaves`. */
  private readonly tree: Float64Array;
  private readonly leaves: number;

  constructor(pieces: readonly Piece[]) {
    const sorted = pieces.map(({ area, z }) => ({ area, z: ascending(z) }));
    const n = sorted.length;
    sorted.sort((a, b) => a.z[0] - b.z[0] || a.z[2] - b.z[2]);
    this.zero = n > 0 ? ((sorted[0] as Piece).z[0] + (sorted[n - 1] as Piece).z[2]) / 2 : 0;
    this.low = each(sorted, ({ z }) => z[0]);
    this.middle = each(sorted, ({ z }) => z[1]);
    this.high = each(sorted, ({ z }) => z[2]);
    this.areas = each(sorted, ({ area }) => area);
    this.areaFrom = new Float64Array(n + 1);
    this.momentFrom = new Float64Array(n + 1);
    for (let i = n - 1; i >= 0; i--) {
      const piece = sorted[i] as Piece;
      this.areaFrom[i] = (this.areaFrom[i + 1] as number) + piece.area;
      this.momentFrom[i] = (this.momentFrom[i + 1] as number) + this.moment(piece);
    }
    this.area = this.areaFrom[0] as number;
    this.leaves = 2 ** Math.ceil(Math.log2(Math.max(1, n)));
    this.tree = highestTree(this.high, this.leaves);
    sorted.sort((a, b) => a.z[2] - b.z[2] || a.z[0] - b.z[0]);
    this.byHigh = { high: each(sorted, ({ z }) => z[2]), low: each(sorted, ({ z }) => z[0]) };
    this.areaBefore = new Float64Array(n + 1);
    this.momentBefore = new Float64Array(n + 1);
    sorted.forEach((piece, i) => {
      this.areaBefore[i + 1] = (this.areaBefore[i] as number) + piece.area;
      this.momentBefore[i + 1] = (this.momentBefore[i] as number) + this.moment(piece);
    });
  }

  /** Cut and fill of all pieces against the height h. Pieces level with it count as neither. */
  at(h: number): CutFill {
    const above = this.firstAbove(h);
    const below = this.countBelow(h);
    const up = h - this.zero;
    let cutArea = this.areaFrom[above] as number;
    let cut = (this.momentFrom[above] as number) - cutArea * up;
    let fillArea = this.areaBefore[below] as number;
    let fill = fillArea * up - (this.momentBefore[below] as number);
    this.forEachStraddling(h, above, (i) => {
      const prism = prismCutFill(
        this.areas[i] as number,
        (this.low[i] as number) - h,
        (this.middle[i] as number) - h,
        (this.high[i] as number) - h,
      );
      cut += prism.cut;
      fill += prism.fill;
      cutArea += prism.cutArea;
      fillArea += prism.fillArea;
    });
    return { cut: Math.max(0, cut), fill: Math.max(0, fill), cutArea, fillArea };
  }

  private moment({ area, z }: Piece): number {
    return (area * (z[0] - this.zero + (z[1] - this.zero) + (z[2] - this.zero))) / 3;
  }

  /** Index, by lowest corner, of the first piece that is wholly above h. */
  private firstAbove(h: number): number {
    const { low, high } = this;
    return firstWhere(low.length, (i) => (low[i] as number) > h || (low[i] === h && (high[i] as number) > h));
  }

  /** Number of pieces, by highest corner, that are wholly below h. */
  private countBelow(h: number): number {
    const { low, high } = this.byHigh;
    return firstWhere(
      high.length,
      (i) => (high[i] as number) > h || (high[i] === h && (low[i] as number) >= h),
    );
  }

  /** Visits pieces with a corner below h and one above it: among the first `end`, those whose highest is above. */
  private forEachStraddling(h: number, end: number, visit: (piece: number) => void): void {
    const waiting = [1];
    while (waiting.length > 0) {
      const node = waiting.pop() as number;
      if (!((this.tree[node] as number) > h)) continue;
      if (node < this.leaves) waiting.push(2 * node + 1, 2 * node);
      else if (node - this.leaves < end) visit(node - this.leaves);
      else return; // pieces come in order: all that follow are wholly above
    }
  }
}

function ascending([a, b, c]: Piece["z"]): Piece["z"] {
  const low = Math.min(a, b, c);
  const high = Math.max(a, b, c);
  // Of three numbers the one between, itself and not a sum's rounding of it.
  const middle = Math.max(Math.min(a, b), Math.min(Math.max(a, b), c));
  return [low, middle, high];
}

/** Of every piece one number; `Float64Array.from` takes several times as long, and a hand waits for it. */
function each(pieces: readonly Piece[], of: (piece: Piece) => number): Float64Array {
  const numbers = new Float64Array(pieces.length);
  for (let i = 0; i < pieces.length; i++) numbers[i] = of(pieces[i] as Piece);
  return numbers;
}

function highestTree(high: Float64Array, leaves: number): Float64Array {
  const tree = new Float64Array(2 * leaves).fill(-Infinity);
  tree.set(high, leaves);
  for (let node = leaves - 1; node > 0; node--) {
    tree[node] = Math.max(tree[2 * node] as number, tree[2 * node + 1] as number);
  }
  return tree;
}

/** The first index from 0 to n for which the condition holds (n where for none); once true it stays true. */
function firstWhere(n: number, condition: (i: number) => boolean): number {
  let from = 0;
  let to = n;
  while (from < to) {
    const middle = (from + to) >>> 1;
    if (condition(middle)) to = middle;
    else from = middle + 1;
  }
  return from;
}
