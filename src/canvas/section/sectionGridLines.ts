/**
 * Round heights and lengths across a section, as close as their figures have room.
 *
 * Units  metres; heights told from the mark where there is one, lengths from the section's left end.
 */
import type { Display } from "../../document";
import { roundHeight, roundSteps } from "../../drawing/map-classes";
import { type SectionFit, sectionY } from "./sectionShapes";

export interface GridFigure {
  /** Height or length, m. */
  readonly at: number;
  readonly text: string;
}

/** Least between two lines, px. */
const apart = { heights: 22, lengths: 76 } as const;

/** A height's figure reaches this far below its line, px. */
const halfFigure = 8;

export function sectionGrid(
  fit: SectionFit,
  display: Display,
  mark: number | null,
): { readonly heights: readonly GridFigure[]; readonly lengths: readonly GridFigure[] } {
  const { range, scale, exaggeration } = fit;
  const stepFor = (pixels: number, least: number) =>
    roundSteps(display).find((step) => step * pixels >= least) ?? Infinity;
  const up = stepFor(scale * exaggeration, apart.heights);
  const along = stepFor(scale, apart.lengths);
  const origin = mark ?? 0;
  // Down to where the earth still shows, and a figure has room over the foot of the drawing.
  const foot = fit.height - halfFigure - sectionY(fit, range.high);
  const low = range.high - foot / (scale * exaggeration);
  return {
    heights: multiples(up, low - origin, range.high - origin).map((at) => ({
      at: origin + at,
      text: roundHeight(origin + at, display, mark),
    })),
    lengths: multiples(along, along / 2, range.length).map((at) => ({
      at,
      text: roundHeight(at, display, null),
    })),
  };
}

function multiples(step: number, from: number, to: number): number[] {
  if (!Number.isFinite(step)) return [];
  const first = Math.ceil(from / step - 1e-9);
  const count = Math.floor(to / step + 1e-9) - first + 1;
  return Array.from({ length: Math.max(0, count) }, (_, i) => (first + i) * step);
}
