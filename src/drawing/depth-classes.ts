/** The classes of cut and fill: one list for the depth map, its legend and the sheets. */
import type { Display } from "../document/schema";
import type { Ink } from "../look/tokens";
import { formatLength, INCH } from "../units";

/** A class of depth = finished - existing: from (included) to (left out), m; positive is fill. */
export interface DepthClass {
  readonly id: "cut3" | "cut2" | "cut1" | "cut0" | "none" | "fill0" | "fill1" | "fill2" | "fill3";
  readonly from: number;
  readonly to: number;
  /** Colour token; null for "no change". */
  readonly ink: Extract<Ink, `cut${number}` | `fill${number}`> | null;
  /** "over 18″ of cut", "4 to 9″ of fill", "no change". */
  readonly words: string;
  /** The same without cut or fill, for a tight legend: "over 18″", "4 to 9″". */
  readonly short: string;
}

const inchEdges = [0.5, 4, 9, 18].map((inches) => inches * INCH);
const footEdges = [0.05, 0.3, 0.75, 1.5].map((feet) => feet * 12 * INCH);
const metreEdges = [0.01, 0.1, 0.25, 0.5];

/** Depths at which the classes change, m, shallow to deep: round numbers in what the user reads. */
function edgesFor(display: Display): readonly number[] {
  if (display.length === "ft-in" || display.length === "in") return inchEdges;
  return display.length === "ft" ? footEdges : metreEdges;
}

/** Depths are read at a glance, so short units: inches, decimal feet, or millimetres. */
export function edgeText(edge: number, display: Display): string {
  if (display.length === "ft-in" || display.length === "in") return formatLength(edge, "in", 2);
  return display.length === "ft" ? formatLength(edge, "ft", 2) : formatLength(edge, "mm", 0);
}

/** "4 to 9″": the unit once, after the second number. */
function rangeText(from: string, to: string): string {
  const unit = /[″′]$|\s*[a-z]+$/.exec(to)?.[0] ?? "";
  return from.endsWith(unit) ? `${from.slice(0, from.length - unit.length)} to ${to}` : `${from} to ${to}`;
}

/**
 * Classes of cut and fill from the deepest cut to the deepest fill, with edges in round user units.
 *
 * Units  metres. Sign: positive is fill, negative is cut. The nine classes cover every depth without gap.
 */
export function depthClasses(display: Display): readonly DepthClass[] {
  const edges = edgesFor(display);
  const short = edges.map((edge, i) => {
    const next = edges[i + 1];
    const from = edgeText(edge, display);
    return next === undefined ? `over ${from}` : rangeText(from, edgeText(next, display));
  });
  const side = (name: "cut" | "fill"): DepthClass[] =>
    edges.map((edge, i) => {
      const next = edges[i + 1] ?? Number.POSITIVE_INFINITY;
      const id = `${name}${i as 0 | 1 | 2 | 3}` as const;
      const range = name === "fill" ? { from: edge, to: next } : { from: -next, to: -edge };
      return { id, ...range, ink: id, words: `${short[i]} of ${name}`, short: short[i] ?? "" };
    });
  const least = edges[0] ?? 0;
  const none: DepthClass = {
    id: "none",
    from: -least,
    to: least,
    ink: null,
    words: "no change",
    short: "none",
  };
  return [...side("cut").reverse(), none, ...side("fill")];
}

/** Where one class ends and the next begins, ascending: for a fast look-up of many cells. */
export function depthClassEdges(display: Display): readonly number[] {
  return depthClasses(display)
    .slice(1)
    .map((depthClass) => depthClass.from);
}

/** Index into `depthClasses` of a depth; -1 for NaN. */
export function depthClassAt(edges: readonly number[], depth: number): number {
  if (Number.isNaN(depth)) return -1;
  let i = 0;
  while (i < edges.length && depth >= (edges[i] ?? 0)) i++;
  return i;
}
