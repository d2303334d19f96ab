/**
 * Lines of equal value on a grid, between cell centres.
 *
 * Method  Marching squares: four neighbouring centres make a square, the line crosses its sides where the
 *         value lies between those of the side's ends. A centre counts as above when its value is at or over
 *         the level. Where two above face two below, their mean decides which pair is joined. Lines are
 *         followed from square to square, the greater values on the left.
 * Source  W. E. Lorensen, H. E. Cline, Marching Cubes, Computer Graphics 21 (1987), in the plane.
 */
import type { Grid } from "./grid";
import { LineBuffer } from "./line-buffer";
import type { ContourLines } from "./tin-contours";

export type GridValues = Float64Array | Float32Array;

/** A centre that takes no part: no square with it is drawn. */
const ABSENT = -1;

/**
 * Lines at each level, in the order of the levels, which must be ascending: flat x, y, joined. A closed line ends
 * with the place it starts from. Squares with a NaN, or a centre that `keep` refuses, are left out; lines end there.
 */
export function gridContours(
  values: GridValues,
  grid: Grid,
  levels: readonly number[],
  keep?: (cellIndex: number) => boolean,
): ContourLines[] {
  const reached = levelsReached(values, levels, keep);
  return traceLevels({ ...grid, values, reached }, levels);
}

/** The centres to trace between: how many levels each reaches, or ABSENT. */
export interface Lattice extends Grid {
  readonly values: GridValues;
  readonly reached: Int16Array;
}

function levelsReached(values: GridValues, levels: readonly number[], keep?: (cellIndex: number) => boolean) {
  const reached = new Int16Array(values.length);
  let count = 0;
  for (let i = 0; i < values.length; i++) {
    const value = values[i] as number;
    if (Number.isNaN(value) || (keep && !keep(i))) {
      reached[i] = ABSENT;
      continue;
    }
    // Neighbours are alike: start from the last answer.
    while (count < levels.length && (levels[count] as number) <= value) count++;
    while (count > 0 && (levels[count - 1] as number) > value) count--;
    reached[i] = count;
  }
  return reached;
}

/** Follows the lines of every level through the lattice. */
export function traceLevels(lattice: Lattice, levels: readonly number[]): ContourLines[] {
  const crossed = crossedSquares(lattice, levels.length);
  const tracer = new SquareTracer(lattice);
  return levels.map((level, k) => tracer.lines(level, k, crossed[k] as number[]));
}

/** For each level the squares that it crosses; a square is named by its lower left centre. */
function crossedSquares({ reached, columns, rows }: Lattice, levelCount: number): number[][] {
  const crossed: number[][] = Array.from({ length: levelCount }, () => []);
  for (let j = 0; j + 1 < rows; j++) {
    for (let i = 0, at = j * columns; i + 1 < columns; i++, at++) {
      const a = reached[at] as number;
      const b = reached[at + 1] as number;
      const c = reached[at + columns + 1] as number;
      const d = reached[at + columns] as number;
      if (a === b && b === c && c === d) continue;
      const least = Math.min(a, b, c, d);
      if (least === ABSENT) continue;
      const most = Math.max(a, b, c, d);
      for (let k = least; k < most; k++) (crossed[k] as number[]).push(at);
    }
  }
  return crossed;
}

/** Sides of a square, counter-clockwise from the bottom one; side k runs from corner k to corner k + 1. */
const SIDES = [0, 1, 2, 3] as const;

class SquareTracer {
  private readonly buffer = new LineBuffer();
  /** Per square one bit for each side that a line has entered by. */
  private readonly entered: Uint8Array;
  /** Step in the array to a square's corners, and to the square across a side. */
  private readonly cornerStep: readonly number[];
  private readonly acrossStep: readonly number[];
  private level = 0;
  private levelIndex = 0;

  constructor(private readonly lattice: Lattice) {
    const { columns } = lattice;
    this.entered = new Uint8Array(lattice.reached.length);
    this.cornerStep = [0, 1, columns + 1, columns, 0];
    this.acrossStep = [-columns, 1, columns, -1];
  }

  lines(level: number, levelIndex: number, squares: readonly number[]): ContourLines {
    this.level = level;
    this.levelIndex = levelIndex;
    const lines: ContourLines = [];
    for (const onlyOpen of [true, false]) {
      for (const square of squares) {
        for (const side of SIDES) {
          if (!this.isEntry(square, side) || (this.entered[square] as number) & (1 << side)) continue;
          if (onlyOpen && this.isPresent(square, side)) continue;
          this.follow(square, side);
          if (this.buffer.count > 1) lines.push(this.buffer.line());
        }
      }
    }
    for (const square of squares) this.entered[square] = 0;
    return lines;
  }

  private corner(square: number, corner: number): number {
    return square + (this.cornerStep[corner] as number);
  }

  private above(centre: number): boolean {
    return (this.lattice.reached[centre] as number) > this.levelIndex;
  }

  /** Lines enter where a side leads from above to below. */
  private isEntry(square: number, side: number): boolean {
    return this.above(this.corner(square, side)) && !this.above(this.corner(square, side + 1));
  }

  private isExit(square: number, side: number): boolean {
    return !this.above(this.corner(square, side)) && this.above(this.corner(square, side + 1));
  }

  /** Whether there is a drawn square across a side. */
  private isPresent(square: number, side: number): boolean {
    const { columns, rows, reached } = this.lattice;
    const i = square % columns;
    const j = (square - i) / columns;
    if (side === 0 ? j === 0 : side === 1 ? i + 2 === columns : side === 2 ? j + 2 === rows : i === 0)
      return false;
    const across = square + (this.acrossStep[side] as number);
    return SIDES.every((corner) => reached[this.corner(across, corner)] !== ABSENT);
  }

  private follow(startSquare: number, startSide: number): void {
    let square = startSquare;
    let side = startSide;
    this.buffer.clear();
    this.addCrossing(square, side);
    do {
      this.entered[square] = (this.entered[square] as number) | (1 << side);
      const exit = this.exitFrom(square, side);
      this.addCrossing(square, exit);
      if (!this.isPresent(square, exit)) return;
      square += this.acrossStep[exit] as number;
      side = (exit + 2) % 4;
    } while (square !== startSquare || side !== startSide);
  }

  /** The side by which the line leaves that entered by a side. */
  private exitFrom(square: number, entry: number): number {
    const next = (entry + 1) % 4;
    const last = (entry + 3) % 4;
    if (!this.isExit(square, next)) return this.isExit(square, last) ? last : (entry + 2) % 4;
    const saddle = this.isExit(square, last);
    return saddle && !this.middleAbove(square) ? last : next;
  }

  private middleAbove(square: number): boolean {
    const { values } = this.lattice;
    let sum = 0;
    for (const corner of SIDES) sum += values[this.corner(square, corner)] as number;
    return sum / 4 >= this.level;
  }

  /** Adds where the level crosses a side, reckoned from its lower end, so that both its squares agree. */
  private addCrossing(square: number, side: number): void {
    const from = this.corner(square, side);
    const to = this.corner(square, side + 1);
    const low = this.above(to) ? from : to;
    const high = low === from ? to : from;
    const { values, columns, cell, x0, y0 } = this.lattice;
    const lowValue = values[low] as number;
    const share = (this.level - lowValue) / ((values[high] as number) - lowValue);
    const t = Number.isFinite(share) ? share : 0.5; // an end without a value: half way
    const lowI = low % columns;
    const highI = high % columns;
    const lowJ = (low - lowI) / columns;
    const highJ = (high - highI) / columns;
    this.buffer.add(
      x0 + (lowI + 0.5 + t * (highI - lowI)) * cell,
      y0 + (lowJ + 0.5 + t * (highJ - lowJ)) * cell,
    );
  }
}
