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
function throughWalls(surface: GroundGrid, sign: 1 | -1): Float64Array {
  const { columns, rows } = surface.grid;
  const depth = Float64Array.from(surface.depth, (value) => sign * value);
  let front: number[] = [];
  for (let k = 0; k < depth.length; k++) if (Number.isNaN(depth[k])) front.push(k);
  while (front.length > 0) {
    const found: [number, number][] = [];
    for (const k of front) {
      const i = k % columns;
      const near = [i > 0 ? k - 1 : -1, i + 1 < columns ? k + 1 : -1, k - columns, k + columns];
      const known = near.filter((n) => n >= 0 && n < columns * rows && !Number.isNaN(depth[n]));
      if (known.length === 0) continue;
      found.push([k, known.reduce((sum, n) => sum + (depth[n] ?? 0), 0) / known.length]);
    }
    if (found.length === 0) return depth.fill(0);
    for (const [k, value] of found) depth[k] = value;
    front = front.filter((k) => Number.isNaN(depth[k]));
  }
  return depth;
}

function regions(surface: GroundGrid, project: Project, side: "cut" | "fill"): DrawingMark[] {
  const depth = throughWalls(surface, side === "fill" ? 1 : -1);
  const classes = depthClasses(project.display).filter((one) => one.ink?.startsWith(side));
  const shallowFirst = side === "fill" ? classes : [...classes].reverse();
  const marks = shallowFirst.flatMap((one): DrawingMark[] => {
    const rings = gridRegions(depth, surface.grid, side === "fill" ? one.from : -one.to);
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
  return { id: "depth", marks: [...regions(surface, project, "cut"), ...regions(surface, project, "fill")] };
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
