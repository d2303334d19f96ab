/**
 * Whether the fill or cut round the building ends before the lot line.
 *
 * Units   metres.
 * Method  At places along the line: what the pad with its apron and slopes would make of the ground, and what all
 *         work together does. Where both lift it (or lower it), fill (cut) of the pad reaches the line; a drive that
 *         crosses it doesn't count, nor fill that a wall or swale stops before.
 * Source  First principles.
 */

import type { Point } from "../geometry";
import {
  apronOperator,
  type FloorRange,
  finishHeights,
  type GradingPlan,
  noLimits,
  type Places,
  type Prepared,
  placesAt,
  prepare,
} from "../grading";
import type { Reading } from "./floor-search";
import type { HeightAt } from "./grading-plan";

/** Steps along the line, m, and the most places on it. */
const step = 0.5;
const mostPlaces = 600;
/** Changes smaller than this are not work, m. */
const change = 0.01;

export interface LotEdge {
  readonly places: Places;
  readonly prepared: Prepared;
  /** The pad's own limits at a floor of 0; NaN where it leaves the ground alone. */
  readonly lower: Float64Array;
  readonly upper: Float64Array;
  readonly names: readonly string[];
}

export function lotEdge(
  outline: readonly Point[],
  plan: GradingPlan,
  height: HeightAt,
  range: FloorRange,
): LotEdge | null {
  if (outline.length < 3) return null;
  const points: Point[] = [];
  const names: string[] = [];
  const round = outline.reduce((sum, p, i) => sum + apart(p, outline[(i + 1) % outline.length] as Point), 0);
  const each = Math.max(step, round / mostPlaces);
  outline.forEach((start, i) => {
    const end = outline[(i + 1) % outline.length] as Point;
    const count = Math.max(1, Math.ceil(apart(start, end) / each));
    for (let k = 0; k < count; k++) {
      const t = k / count;
      points.push([start[0] + (end[0] - start[0]) * t, start[1] + (end[1] - start[1]) * t]);
      names.push(`lot line ${i + 1}`);
    }
  });
  const places = placesAt(points, height);
  const pad = apronOperator(plan);
  const limits = noLimits();
  const lower = new Float64Array(points.length);
  const upper = new Float64Array(points.length);
  points.forEach(([x, y], i) => {
    pad.limitsAt(x, y, places.existing[i] as number, limits);
    lower[i] = limits.share > 0 ? limits.lower : Number.NaN;
    upper[i] = limits.share > 0 ? limits.upper : Number.NaN;
  });
  return { places, prepared: prepare(places, plan, range), lower, upper, names };
}

function apart(a: Point, b: Point): number {
  return Math.hypot(b[0] - a[0], b[1] - a[1]);
}

/** By how much the nearest the pad's fill (cut) comes to lifting (lowering) the ground at the line it stays off it. */
export function roomAt(edge: LotEdge, floor: number, side: "fill" | "cut"): Reading {
  const z = finishHeights(edge.prepared, floor, new Float64Array(edge.lower.length));
  let margin = Number.POSITIVE_INFINITY;
  let worst = 0;
  for (let i = 0; i < z.length; i++) {
    const existing = edge.places.existing[i] as number;
    const lifted = Math.min(z[i] as number, (edge.lower[i] as number) + floor) - existing;
    const lowered = existing - Math.max(z[i] as number, (edge.upper[i] as number) + floor);
    const room = change - (side === "fill" ? lifted : lowered);
    if (room < margin) {
      margin = room;
      worst = i;
    }
  }
  return {
    margin,
    place: edge.names[worst] ?? "the lot line",
    at: [edge.places.x[worst] as number, edge.places.y[worst] as number],
  };
}
