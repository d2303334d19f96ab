/** Scales that a scale ruler carries, and the choice of one. */
import type { Display } from "../document/schema";
import type { Bounds } from "../geometry";
import { type PaperName, type SheetLayout, sheetLayout } from "./papers";

export interface Scale {
  /** Metres on the ground for one metre of paper: 100 means 1:100. */
  readonly ratio: number;
  /** "1:100", "1″ = 10′", "⅛″ = 1′". */
  readonly words: string;
}

const architect = [
  [48, "¼″ = 1′"],
  [64, "³⁄₁₆″ = 1′"],
  [96, "⅛″ = 1′"],
  [128, "³⁄₃₂″ = 1′"],
  [192, "¹⁄₁₆″ = 1′"],
] as const;
/** Feet to the inch. */
const engineer = [10, 20, 30, 40, 50, 60, 80, 100, 150, 200, 300, 400, 500];
const metric = [50, 75, 100, 125, 150, 200, 250, 300, 400, 500, 750, 1000, 1250, 1500, 2000, 2500, 5000];

const footScales: readonly Scale[] = [
  ...architect.map(([ratio, words]) => ({ ratio, words })),
  ...engineer.map((feet) => ({ ratio: feet * 12, words: `1″ = ${feet}′` })),
].sort((a, b) => a.ratio - b.ratio);
const metricScales: readonly Scale[] = metric.map((ratio) => ({ ratio, words: `1:${ratio}` }));

export function usesFeet(display: Display): boolean {
  return display.length === "ft-in" || display.length === "in" || display.length === "ft";
}

/** The standard scales in the project's units, largest drawing first. */
export function standardScales(display: Display): readonly Scale[] {
  return usesFeet(display) ? footScales : metricScales;
}

/** Names a scale given as a ratio: by its standard name where it has one. */
export function scaleFor(ratio: number, display: Display): Scale {
  const known = [...standardScales(display), ...footScales, ...metricScales].find(
    (one) => one.ratio === ratio,
  );
  return known ?? { ratio, words: `1:${Number(ratio.toFixed(1))}` };
}

/** Paper kept free between what must be shown and the edge of the plan, mm. */
const breathing = 7;

function fits(bounds: Bounds, layout: SheetLayout, ratio: number): boolean {
  const width = ((bounds.maxX - bounds.minX) * 1000) / ratio;
  const height = ((bounds.maxY - bounds.minY) * 1000) / ratio;
  return width + 2 * breathing <= layout.plan.width && height + 2 * breathing <= layout.plan.height;
}

function largest(bounds: Bounds, layout: SheetLayout, display: Display): Scale {
  const scales = standardScales(display);
  const last = scales[scales.length - 1] as Scale;
  const standard = scales.find((scale) => fits(bounds, layout, scale.ratio));
  if (standard) return standard;
  // Larger than any standard scale can show: the next whole thousand.
  let ratio = Math.ceil(last.ratio / 1000) * 1000;
  while (!fits(bounds, layout, ratio)) ratio += Math.ceil(ratio / 10_000) * 1000;
  return scaleFor(ratio, display);
}

export interface Sheet {
  readonly layout: SheetLayout;
  readonly scale: Scale;
}

/**
 * Paper and scale for a drawing: the largest standard scale at which it fits, upright only where that gives a
 * larger one. With a given ratio the scale is kept and the way round with more room is taken.
 *
 * Units  bounds in metres; the ratio is metres on the ground for a metre of paper.
 */
export function chooseSheet(bounds: Bounds, paper: PaperName, display: Display, ratio?: number): Sheet {
  const flat = sheetLayout(paper, false);
  const tall = sheetLayout(paper, true);
  if (ratio !== undefined) {
    const layout = !fits(bounds, flat, ratio) && fits(bounds, tall, ratio) ? tall : flat;
    return { layout, scale: scaleFor(ratio, display) };
  }
  const flatScale = largest(bounds, flat, display);
  const tallScale = largest(bounds, tall, display);
  return tallScale.ratio < flatScale.ratio
    ? { layout: tall, scale: tallScale }
    : { layout: flat, scale: flatScale };
}
