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
const engineer = [10, 20, 25, 30, 40, 50, 60, 80, 100, 150, 200, 300, 400, 500];
const metric = [50, 75, 100, 125, 150, 200, 250, 300, 400, 500, 750, 1000, 1250, 1500, 2000, 2500, 5000];

const footScales: readonly Scale[] = [
  ...architect.map(([ratio, words]) => ({ ratio, words })),
  ...engineer.map((feet) => ({ ratio: feet * 12, words: `1″ = ${feet}′` })),
].sort((a, b) => a.ratio - b.ratio);
const metricScales: readonly Scale[] = metric.map((ratio) => ({ ratio, words: `1:${ratio}` }));

/** Where paper comes in millimetres, rulers do too. */
const metricPapers: readonly PaperName[] = ["a4", "a3"];

export function usesFeet(display: Display): boolean {
  return display.length === "ft-in" || display.length === "in" || display.length === "ft";
}

/** Whether a sheet's scales are told in inches: for a project in feet, but on metric paper always in metric ratios. */
export function inInches(display: Display, paper: PaperName): boolean {
  return usesFeet(display) && !metricPapers.includes(paper);
}

/** The standard scales for a sheet, largest drawing first. */
export function standardScales(display: Display, paper: PaperName): readonly Scale[] {
  return inInches(display, paper) ? footScales : metricScales;
}

/** Names a scale given as a ratio: by its standard name where it has one. */
export function scaleFor(ratio: number, display: Display, paper: PaperName): Scale {
  const known = [...standardScales(display, paper), ...footScales, ...metricScales].find(
    (one) => one.ratio === ratio,
  );
  return known ?? { ratio, words: `1:${Number(ratio.toFixed(1))}` };
}

/** Paper kept free between what must be shown and the edge of the plan, mm. */
const breathing = 7;

/** Paper that a drawing takes, mm. */
export function paperNeeded(
  bounds: Bounds,
  ratio: number,
): { readonly width: number; readonly height: number } {
  return {
    width: ((bounds.maxX - bounds.minX) * 1000) / ratio + 2 * breathing,
    height: ((bounds.maxY - bounds.minY) * 1000) / ratio + 2 * breathing,
  };
}

function fits(bounds: Bounds, { plan }: SheetLayout, ratio: number): boolean {
  const { width, height } = paperNeeded(bounds, ratio);
  return width <= plan.width && height <= plan.height;
}

function largest(bounds: Bounds, layout: SheetLayout, display: Display, paper: PaperName): Scale {
  const scales = standardScales(display, paper);
  const last = scales[scales.length - 1] as Scale;
  const standard = scales.find((scale) => fits(bounds, layout, scale.ratio));
  if (standard) return standard;
  // Larger than any standard scale can show: the next whole thousand.
  let ratio = Math.ceil(last.ratio / 1000) * 1000;
  while (!fits(bounds, layout, ratio)) ratio += Math.ceil(ratio / 10_000) * 1000;
  return scaleFor(ratio, display, paper);
}

export interface Sheet {
  readonly layout: SheetLayout;
  readonly scale: Scale;
}

/**
 * Papers and scale for a drawing: the largest standard scale at which it fits, lying or upright or, where both ways
 * round allow it, both. With a given ratio the scale is kept, whether the drawing fits or not.
 *
 * Units  bounds in metres; the ratio is metres on the ground for a metre of paper.
 */
export function sheetChoices(
  bounds: Bounds,
  paper: PaperName,
  display: Display,
  ratio?: number,
): readonly [Sheet, ...Sheet[]] {
  const [flat, tall] = [sheetLayout(paper, false), sheetLayout(paper, true)];
  const scaleOn = (layout: SheetLayout) =>
    ratio === undefined ? largest(bounds, layout, display, paper) : scaleFor(ratio, display, paper);
  const lying: Sheet = { layout: flat, scale: scaleOn(flat) };
  const upright: Sheet = { layout: tall, scale: scaleOn(tall) };
  const holds = ({ layout, scale }: Sheet) => fits(bounds, layout, scale.ratio);
  if (holds(upright) && (!holds(lying) || upright.scale.ratio < lying.scale.ratio)) return [upright];
  return holds(upright) && upright.scale.ratio === lying.scale.ratio ? [lying, upright] : [lying];
}

/** The first choice: upright only where that gives a larger scale. */
export function chooseSheet(bounds: Bounds, paper: PaperName, display: Display, ratio?: number): Sheet {
  return sheetChoices(bounds, paper, display, ratio)[0];
}
