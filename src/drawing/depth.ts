/** Cut and fill as areas by class, hatched two ways, and the deepest of each in words. For paper. */
import type { Project } from "../document/schema";
import type { GroundGrid, Results } from "../solve/results";
import { gridRegions } from "../terrain";
import { depthInWords } from "../units";
import { besidePoint } from "./beside";
import { type DrawContext, placeLabel, takeSymbol } from "./context";
import { depthClasses } from "./depth-classes";
import type { DrawingMark, MarkLayer, XY } from "./marks";
import { reserveLines } from "./reserve";

/** Size of the dot at the deepest place, mm. */
const dot = 1.1;

/**
 * Depths with the cells inside the walls filled from their neighbours, so that an area runs on under the
 * building (which covers it) instead of ending half a cell off the wall.
 */
function throughWalls(surface: GroundGrid): Float64Array {
  const { columns, rows } = surface.grid;
  const depth = Float64Array.from(surface.depth);
  const isKnown = (k: number) => k >= 0 && k < depth.length && !Number.isNaN(depth[k]);
  /** Mean of the known neighbours; NaN where there is none. */
  const meanAround = (k: number) => {
    const i = k % columns;
    let sum = 0;
    let count = 0;
    for (const n of [i > 0 ? k - 1 : -1, i + 1 < columns ? k + 1 : -1, k - columns, k + columns]) {
      if (!isKnown(n)) continue;
      sum += depth[n] ?? 0;
      count++;
    }
    return sum / count;
  };
  let front: number[] = [];
  for (let k = 0; k < columns * rows; k++) if (!isKnown(k)) front.push(k);
  while (front.length > 0) {
    const means = front.map(meanAround);
    const rest: number[] = [];
    for (const [i, k] of front.entries()) {
      const mean = means[i] ?? Number.NaN;
      if (Number.isNaN(mean)) rest.push(k);
      else depth[k] = mean;
    }
    if (rest.length === front.length) return depth.fill(0);
    front = rest;
  }
  return depth;
}

function regions(
  filled: Float64Array,
  { grid }: GroundGrid,
  project: Project,
  side: "cut" | "fill",
): DrawingMark[] {
  const depth = side === "fill" ? filled : filled.map((value) => -value);
  const classes = depthClasses(project.display).filter((one) => one.ink?.startsWith(side));
  const shallowFirst = side === "fill" ? classes : [...classes].reverse();
  const marks = shallowFirst.flatMap((one): DrawingMark[] => {
    const rings = gridRegions(depth, grid, side === "fill" ? one.from : -one.to);
    return one.ink && rings.length > 0 ? [{ kind: "area", rings, style: one.ink }] : [];
  });
  const [widest] = marks;
  if (widest?.kind !== "area") return [];
  return [...marks, { kind: "area", rings: widest.rings, style: `${side}-hatch` }];
}

function spot(project: Project, context: DrawContext, deepest: { depth: number; at: XY }): DrawingMark[] {
  const words = depthInWords(deepest.depth, project.display.length, project.display.rounding);
  const texts = placeLabel(context, "depth", besidePoint(deepest.at, words, "depth-label", dot));
  if (texts.length === 0) return [];
  takeSymbol(context, "depth", deepest.at, dot);
  return [{ kind: "symbol", at: deepest.at, symbol: "dot", size: dot, style: "depth-spot" }, ...texts];
}

/** Areas of cut and fill by class, shallow below deep; nothing while there is no finished ground. */
export function drawDepth(project: Project, results: Results): MarkLayer {
  const { surface } = results;
  if (!surface) return { id: "depth", marks: [] };
  const filled = throughWalls(surface);
  const marks = (["cut", "fill"] as const).flatMap((side) => regions(filled, surface, project, side));
  return { id: "depth", marks };
}

/** The deepest cut and the deepest fill outside the walls, as dots with words. */
export function drawDepthSpots(project: Project, results: Results, context: DrawContext): MarkLayer {
  context.labels.forget("depth");
  reserveLines(project, results, context);
  const { surface } = results;
  const least = depthClasses(project.display).find((one) => one.id === "fill0")?.from ?? 0;
  const spots = [surface?.greatestCut, surface?.greatestFill].flatMap((deepest) =>
    deepest && Math.abs(deepest.depth) >= least ? spot(project, context, deepest) : [],
  );
  return { id: "depth", marks: spots };
}
