/** The classes of the maps of heights and steepness: one list for the map and its legend. */
import type { Display } from "../document/schema";
import { heightColours, slopeColours } from "../look/schemes";
import type { Theme } from "../look/tokens";
import { FOOT, formatLength, formatSigned, formatSlope } from "../units";

/** Classes in ascending order. */
export interface MapClasses {
  /** Where one class ends and the next begins: one fewer than colours. */
  readonly edges: readonly number[];
  readonly colours: readonly string[];
  /** The edges as they are read, and each class in words. */
  readonly edgeTexts: readonly string[];
  readonly words: readonly string[];
}

/** Most classes of heights: more could not be told apart in a legend. */
const mostClasses = 9;
/** Share of a step that is only the rounding of numbers. */
const rounding = 1e-6;
const footSteps = [0.1, 0.25, 0.5, 1, 2, 5, 10, 20, 50, 100, 200, 500].map((feet) => feet * FOOT);
const inchSteps = [1, 2, 3, 6, 12, 24, 60, 120, 240, 600, 1200, 2400, 6000].map((n) => (n * FOOT) / 12);
const metreSteps = [0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100, 200];

/** Round steps in the project's notation, ascending, m. */
export function roundSteps({ length }: Display): readonly number[] {
  if (length === "ft") return footSteps;
  return length === "ft-in" || length === "in" ? inchSteps : metreSteps;
}

/** What heights are told from: the reference mark's height, or null for the datum. */
export type HeightsFrom = number | null;

/** A round height, told from the mark where there is one. */
export function roundHeight(z: number, display: Display, from: HeightsFrom): string {
  const { length } = display;
  // Steps are round, so that few figures say all.
  const rounding = length === "ft" ? 2 : length === "m" ? 2 : length === "cm" || length === "mm" ? 0 : 1;
  const text =
    from === null
      ? formatLength(z, length, rounding)
      : Math.abs(z - from) < 1e-6
        ? "0"
        : formatSigned(z - from, length, rounding);
  return text.replace(/ 0″$/, "");
}

/**
 * Classes of equal, round height between the lowest and the highest ground, told from the mark where there is one.
 *
 * Units  metres. The step is the smallest usual one that needs no more than nine classes.
 */
export function heightClasses(low: number, high: number, display: Display, from: HeightsFrom): MapClasses {
  const origin = from ?? 0;
  const edgesOf = (step: number): readonly [first: number, after: number] => [
    Math.floor((low - origin) / step + rounding) + 1,
    Math.ceil((high - origin) / step - rounding),
  ];
  const fits = (step: number) => edgesOf(step)[1] - edgesOf(step)[0] < mostClasses;
  const steps = roundSteps(display);
  let step = steps.find(fits) ?? (steps[steps.length - 1] as number);
  while (!fits(step)) step *= 10;
  const [first, after] = edgesOf(step);
  const edges = Array.from({ length: Math.max(0, after - first) }, (_, i) => origin + (first + i) * step);
  const edgeTexts = edges.map((edge) => roundHeight(edge, display, from));
  return { edges, colours: heightColours(edges.length + 1), edgeTexts, words: classWords(edgeTexts) };
}

const slopeEdges = [0.01, 0.02, 0.05, 0.1, 0.2, 1 / 3];

/** Classes of steepness, rise over run, level to steep. */
export function slopeClasses({ slope }: Display, theme: Theme): MapClasses {
  const edgeTexts = slopeEdges.map((edge) =>
    formatSlope(edge, slope)
      .replace(/\.0 %$/, " %")
      .replace(/^33\.3 %$/, "33 %"),
  );
  return { edges: slopeEdges, colours: slopeColours(theme), edgeTexts, words: classWords(edgeTexts) };
}

function classWords(edges: readonly string[]): readonly string[] {
  const [first] = edges;
  const last = edges[edges.length - 1];
  if (first === undefined || last === undefined) return ["everywhere"];
  const middle = edges.slice(1).map((edge, i) => `${edges[i]} to ${edge}`);
  return [`under ${first}`, ...middle, `over ${last}`];
}
