/**
 * Plain drawing marks in plan metres. The canvas and the sheets both paint these, so one place decides
 * what a contour or a corner looks like. Positions in metres; sizes of text, symbols and line widths in
 * paper millimetres (on screen 1 mm is about 3.78 px), so that they keep their size at every scale.
 */
import type { StyleName } from "./styles";

export type XY = readonly [number, number];

export interface LineMark {
  readonly kind: "line";
  /** Flat x, y. */
  readonly points: ArrayLike<number>;
  readonly closed?: boolean;
  readonly style: StyleName;
}

export interface AreaMark {
  readonly kind: "area";
  /** Outer rings and holes, even-odd; each flat x, y. */
  readonly rings: readonly ArrayLike<number>[];
  readonly style: StyleName;
}

/** A text that tells a length of a thing: what is left of it where that length already stands beside it. */
export interface LengthTold {
  /** The thing, as `thingKey` writes it. */
  readonly thing: string;
  /** The length as it is written. */
  readonly length: string;
  /** Empty: nothing is left. */
  readonly rest: string;
}

export interface TextMark {
  readonly kind: "text";
  /** After the shift, this place lies on the text's baseline (anchor says which end or the middle). */
  readonly at: XY;
  readonly text: string;
  readonly style: StyleName;
  /** Radians counter-clockwise from the x axis; missing: upright, whichever way the plan is turned. */
  readonly angle?: number;
  readonly anchor?: "start" | "middle" | "end";
  /** Shift on paper after placing, mm: right and up (in the text's own turned frame). */
  readonly shift?: XY;
  /** Clear a halo of paper colour behind it. */
  readonly halo?: boolean;
  /** Higher is kept first when labels would collide; 0 = always keep. */
  readonly rank?: number;
  readonly tells?: LengthTold;
}

export interface SymbolMark {
  readonly kind: "symbol";
  readonly at: XY;
  readonly symbol: "cross" | "plus" | "ring" | "dot" | "triangle" | "arrow" | "tick" | "chevron";
  /** Size on paper, mm. */
  readonly size: number;
  /** Direction, radians counter-clockwise from the x axis; missing: upright, whichever way the plan is turned. */
  readonly angle?: number;
  readonly style: StyleName;
}

export type DrawingMark = LineMark | AreaMark | TextMark | SymbolMark;

/** Marks that change together and are painted in order. */
export interface MarkLayer {
  readonly id:
    | "lot"
    | "features"
    | "existing"
    | "guessed"
    | "depth"
    | "finished"
    | "water"
    | "runs"
    | "drives"
    | "swales"
    | "ground-shapes"
    | "building"
    | "windows"
    | "dimensions"
    | "user-dimensions"
    | "sections"
    | "section-shown"
    | "section-ends"
    | "notes"
    | "corners"
    | "breaklines"
    | "setbacks"
    | "pits"
    | "squaring"
    | "shots"
    | "marks";
  readonly marks: readonly DrawingMark[];
}
