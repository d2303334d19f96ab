/**
 * What the lot's lines enclose and how long they are, curves as curves though they are drawn by chords.
 *
 * Units   metres, m².
 * Method  Shoelace rule over the chords; each chord of a curve adds its segment r² (θ − sin θ) / 2, or takes it away where
 *         the curve bends inwards, and counts as long as its arc r θ.
 * Source  first principles.
 */
import type { Lot, Point } from "../document/schema";
import { signedArea } from "../geometry";
import { type LotLine, lotLines, piecesOf } from "./lotLines";

export interface LotSize {
  readonly area: number;
  readonly perimeter: number;
}

/** Null without lines that enclose something. */
export function lotSize(lot: Pick<Lot, "outline" | "deed" | "north">): LotSize | null {
  const { outline } = lot;
  if (outline.length < 3) return null;
  const lines = lotLines(lot).map((line) => lineSize(line, outline));
  const area = signedArea(outline) + lines.reduce((sum, { bulge }) => sum + bulge, 0);
  return { area: Math.abs(area), perimeter: lines.reduce((sum, { length }) => sum + length, 0) };
}

/** `bulge`: area between chords and curve, positive where it lies to the right of the way along. */
function lineSize(
  line: LotLine,
  outline: readonly Point[],
): { readonly length: number; readonly bulge: number } {
  const chords = piecesOf(line, outline.length).map((piece) => {
    const [a, b] = [outline[piece] as Point, outline[(piece + 1) % outline.length] as Point];
    return [b[0] - a[0], b[1] - a[1]] as const;
  });
  if (line.curve === null)
    return { length: chords.reduce((sum, chord) => sum + Math.hypot(...chord), 0), bulge: 0 };
  const step = line.curve.length / line.curve.radius / line.pieces;
  const [first = [0, 0], second = [0, 0]] = chords;
  // A curve to the left bulges to the right of its chords.
  const side = Math.sign(first[0] * second[1] - first[1] * second[0]);
  let [length, bulge] = [0, 0];
  for (const chord of chords) {
    const radius = Math.hypot(...chord) / (2 * Math.sin(step / 2));
    length += radius * step;
    bulge += (side * radius * radius * (step - Math.sin(step))) / 2;
  }
  return { length, bulge };
}
