/** The ground before and after, and the earth between. Part of what solve returns; units and signs as in `results.ts`. */
import type { Point } from "../document/schema";

/** A regular grid of cells; cell (i, j) is at index j * columns + i, its centre at x0 + (i + 0.5) * cell. */
export interface Grid {
  readonly x0: number;
  readonly y0: number;
  readonly cell: number;
  readonly columns: number;
  readonly rows: number;
}

/** The sampled ground, before and after. One value a cell. */
export interface GroundGrid {
  readonly grid: Grid;
  readonly existing: Float64Array;
  readonly finished: Float64Array;
  /** finished - existing; NaN inside the walls (the floor stands there; see earthwork.inside). */
  readonly depth: Float32Array;
  /** 1 where the existing ground is guessed. */
  readonly guessed: Uint8Array;
  /** 1 for cells whose centre is inside the walls. */
  readonly inside: Uint8Array;
  /** Outside the walls; a depth keeps its sign, so the greatest cut is negative. */
  readonly greatestFill: { readonly depth: number; readonly at: Point } | null;
  readonly greatestCut: { readonly depth: number; readonly at: Point } | null;
}

/** Contours at one height: open or closed runs of flat x, y. */
export interface Contour {
  readonly height: number;
  /** Every fifth (or so) line, drawn heavier and labelled. */
  readonly major: boolean;
  readonly lines: readonly Float64Array[];
  /** Runs over ground between the shots that is a guess all the same; missing: none. */
  readonly guessed?: readonly Float64Array[];
}

export interface EarthworkResult {
  /** Under the floor, from existing ground to the underside of the base course: exact on the triangulated ground. */
  readonly inside: {
    readonly cut: number;
    readonly fill: number;
    readonly area: number;
    readonly greatestCut: number;
    readonly greatestFill: number;
  };
  /** Outside the walls, on the grid; `error` is the estimate from two resolutions, m3. */
  readonly outside: {
    readonly cut: number;
    readonly fill: number;
    readonly area: number;
    readonly error: number;
  };
  readonly total: { readonly cut: number; readonly fill: number };
  /** Share of (cut + fill) that rests on guessed ground, 0 to 1. */
  readonly guessedShare: number;
  /** Ground disturbed: building plus where finished differs from existing, m2. */
  readonly disturbedArea: number;
}

/** The floor at which the cut, compacted, just makes the fill. */
export interface BalanceResult {
  /** Null where no floor of the layout's range does; then `why` says which there is more of. */
  readonly floor: number | null;
  /** Below and above the stripped ground at that floor: cut in the bank, fill as compacted, m3. */
  readonly cut: number | null;
  readonly fill: number | null;
  readonly why: "fill at every floor" | "cut at every floor" | null;
}

export interface CurvePoint {
  readonly floor: number;
  readonly cut: number;
  readonly fill: number;
}

export interface DriveStation {
  /** Distance along the centreline from the road, m. */
  readonly distance: number;
  readonly at: Point;
  readonly existing: number;
  readonly finished: number;
  /** Grade of the piece that starts here; positive climbs towards the building. Null at the last. */
  readonly grade: number | null;
}

export interface DriveResult {
  readonly id: string;
  readonly name: string;
  readonly length: number;
  /** Steepest grade, as an absolute value. */
  readonly steepest: number;
  readonly steepestAt: Point;
  readonly climbs: boolean;
  readonly stations: readonly DriveStation[];
}

export interface SectionLine {
  /** Distance along the section and height, pairs. */
  readonly existing: Float64Array;
  readonly finished: Float64Array;
  /** 1 per existing sample where guessed. */
  readonly guessed: Uint8Array;
  readonly start: Point;
  readonly end: Point;
  /** Distances at which the section enters and leaves the building, or null. */
  readonly building: readonly [number, number] | null;
}
