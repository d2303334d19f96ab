/** The shapes of symbols, once, for canvas and sheets: strokes about the origin in units of the symbol's size. */
import type { SymbolMark } from "./marks";

export interface SymbolShape {
  /** Open or closed runs of flat x, y; y up. */
  readonly strokes: readonly (readonly number[])[];
  readonly closed: boolean;
  /** Painted with the style's fill (else stroked). */
  readonly filled: boolean;
}

const circle = (radius: number): number[] =>
  Array.from({ length: 48 }, (_, i) => {
    const angle = (Math.floor(i / 2) / 24) * 2 * Math.PI;
    return radius * (i % 2 === 0 ? Math.cos(angle) : Math.sin(angle));
  });

/** Symbols point along +x before they are turned; size 1 is the whole width (arrow, tick: the whole length). */
export const symbolShapes: Readonly<Record<SymbolMark["symbol"], SymbolShape>> = {
  cross: {
    strokes: [
      [-0.5, -0.5, 0.5, 0.5],
      [-0.5, 0.5, 0.5, -0.5],
    ],
    closed: false,
    filled: false,
  },
  plus: {
    strokes: [
      [-0.5, 0, 0.5, 0],
      [0, -0.5, 0, 0.5],
    ],
    closed: false,
    filled: false,
  },
  ring: { strokes: [circle(0.5)], closed: true, filled: true },
  dot: { strokes: [circle(0.5)], closed: true, filled: true },
  triangle: { strokes: [[-0.5, -0.32, 0.5, -0.32, 0, 0.55]], closed: true, filled: true },
  arrow: {
    strokes: [
      [-0.5, 0, 0.5, 0],
      [0.16, 0.2, 0.5, 0, 0.16, -0.2],
    ],
    closed: false,
    filled: false,
  },
  tick: { strokes: [[-0.5, 0, 0.5, 0]], closed: false, filled: false },
  chevron: { strokes: [[-0.35, 0.5, 0.35, 0, -0.35, -0.5]], closed: false, filled: false },
};
