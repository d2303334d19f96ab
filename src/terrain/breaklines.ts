/**
 * Points and breaklines to a triangulated surface: no triangle's side crosses a line.
 *
 * Method  The lines' corners join the points; a corner without a height takes that of the points' own
 *         surface. Crossing lines meet at their crossing (`line-crossings.ts`). Then the lines are forced into the
 *         triangles of all places (`force-edges.ts`). Where several stand on one place the first counts, points first.
 */
import { type Edge, forceEdges } from "./force-edges";
import type { Tin } from "./ground";
import { tinAt } from "./height";
import { type Crossing, type LinePiece, type LinePlaces, splitAtCrossings } from "./line-crossings";
import { withoutFlatRim } from "./rim";
import { firstAtPlace, type SnappedPoints, snapped } from "./snap";
import { type DroppedPoint, distinctMesh, droppedPoints, tinOf, triangulate } from "./triangulate";

/** Corners in order; z null where the corner has no height of its own. Metres. */
export interface Breakline {
  readonly name: string;
  readonly x: readonly number[];
  readonly y: readonly number[];
  readonly z: readonly (number | null)[];
}

/** A place where two heights were at hand: `heights[0]` of the first named, `heights[1]` of the second. */
export interface HeightConflict {
  readonly kind: "crossing" | "corner";
  readonly x: number;
  readonly y: number;
  readonly lines: readonly string[];
  readonly heights: readonly [number, number];
  readonly taken: number;
}

export type LinedTriangulation =
  | {
      readonly ok: true;
      readonly tin: Tin;
      /** Doubled points of the input, as triangulate reports them. */
      readonly dropped: readonly DroppedPoint[];
      readonly conflicts: readonly HeightConflict[];
    }
  | { readonly ok: false; readonly reason: "too-few" | "in-line" }
  /** Corners without a height where the points have no surface: indices of line and corner. */
  | {
      readonly ok: false;
      readonly reason: "no-height";
      readonly missing: readonly (readonly [number, number])[];
    };

/** Heights nearer to each other than this are not a conflict. */
const AGREED = 0.0005;

/** Surface of points with breaklines. The points come first in it, then the lines' corners and crossings. */
export function triangulateWithLines(
  x: ArrayLike<number>,
  y: ArrayLike<number>,
  z: ArrayLike<number>,
  lines: readonly Breakline[],
): LinedTriangulation {
  const heights = cornerHeights(x, y, z, lines);
  if (heights.missing.length > 0) return { ok: false, reason: "no-height", missing: heights.missing };
  const cornerX = joined(
    x,
    lines.flatMap((line) => line.x),
  );
  const cornerY = joined(
    y,
    lines.flatMap((line) => line.y),
  );
  const frame = snapped(cornerX, cornerY);
  const places: LinePlaces = {
    units: Array.from(frame.units.subarray(2 * x.length)),
    z: heights.z,
    given: lines.flatMap((line) => line.z.map((own) => (own === null ? 0 : 1))),
  };
  const split = splitAtCrossings(places, linePieces(lines));
  const units = joined(frame.units.subarray(0, 2 * x.length), places.units);
  const first = firstAtPlace(units);
  const points = {
    ...inMetres(cornerX, cornerY, units, frame),
    z: joined(z, heightsInPlace(places, first, x.length)),
  };
  const distinct = first.reduce((count, at, i) => count + (at === i ? 1 : 0), 0);
  if (distinct < 3) return { ok: false, reason: "too-few" };
  const mesh = distinctMesh(units, first, first.length - distinct);
  if (mesh) forceEdges(mesh, edgesOf(split.pieces, first, x.length));
  const sound = mesh && withoutFlatRim(mesh, points.x, points.y);
  if (!sound) return { ok: false, reason: "in-line" };
  return {
    ok: true,
    tin: tinOf(points, sound, distinct),
    dropped: droppedPoints(first.subarray(0, x.length)),
    conflicts: conflictsOf(points, first, x.length, lines, split.crossings),
  };
}

function joined(head: ArrayLike<number>, tail: readonly number[]): Float64Array {
  const whole = new Float64Array(head.length + tail.length);
  whole.set(head);
  whole.set(tail, head.length);
  return whole;
}

/** Heights of all lines' corners one after another, and the corners that can't have one. */
function cornerHeights(
  x: ArrayLike<number>,
  y: ArrayLike<number>,
  z: ArrayLike<number>,
  lines: readonly Breakline[],
): { z: number[]; missing: [number, number][] } {
  const heights: number[] = [];
  const missing: [number, number][] = [];
  const wanted = lines.some((line) => line.z.includes(null));
  const surface = wanted ? triangulate(x, y, z) : null;
  lines.forEach((line, l) => {
    line.z.forEach((own, corner) => {
      const read = () =>
        surface?.ok && tinAt(surface.tin, line.x[corner] as number, line.y[corner] as number)?.z;
      const height = own ?? read();
      if (typeof height === "number") heights.push(height);
      else missing.push([l, corner]);
    });
  });
  return { z: heights, missing };
}

/** The straight pieces of all lines, between corners numbered through all lines. */
function linePieces(lines: readonly Breakline[]): LinePiece[] {
  const pieces: LinePiece[] = [];
  let corner = 0;
  lines.forEach(({ x }, line) => {
    for (let i = 1; i < x.length; i++) pieces.push({ from: corner + i - 1, to: corner + i, line });
    corner += x.length;
  });
  return pieces;
}

/** Heights of the lines' places; on a place that several share, a given one takes over from one read off. */
function heightsInPlace({ z, given }: LinePlaces, first: Uint32Array, pointCount: number): number[] {
  const heights = [...z];
  const known = [...given];
  heights.forEach((height, i) => {
    const holder = (first[pointCount + i] as number) - pointCount;
    if (holder < 0 || known[holder] || !known[i]) return;
    heights[holder] = height;
    known[holder] = 1;
  });
  return heights;
}

/** All places in metres: points and corners as measured, the crossings after them where the grid has them. */
function inMetres(
  measuredX: Float64Array,
  measuredY: Float64Array,
  units: Float64Array,
  { originX, originY, cell }: SnappedPoints,
): Pick<Tin, "x" | "y"> {
  const x: number[] = [];
  const y: number[] = [];
  for (let i = 2 * measuredX.length; i < units.length; i += 2) {
    x.push(originX + (units[i] as number) * cell);
    y.push(originY + (units[i + 1] as number) * cell);
  }
  return { x: joined(measuredX, x), y: joined(measuredY, y) };
}

/** The pieces as edges between the places that hold, without those that have no length there. */
function edgesOf(pieces: readonly LinePiece[], first: Uint32Array, pointCount: number): Edge[] {
  return pieces
    .map(({ from, to }): Edge => [first[pointCount + from] as number, first[pointCount + to] as number])
    .filter(([from, to]) => from !== to);
}

function conflictsOf(
  { x, y, z }: Pick<Tin, "x" | "y" | "z">,
  first: Uint32Array,
  pointCount: number,
  lines: readonly Breakline[],
  crossings: readonly Crossing[],
): HeightConflict[] {
  const conflicts: HeightConflict[] = [];
  const add = (
    kind: HeightConflict["kind"],
    place: number,
    names: string[],
    heights: readonly [number, number],
  ) => {
    if (Math.abs(heights[0] - heights[1]) <= AGREED) return;
    const taken = z[first[place] as number] as number;
    conflicts.push({ kind, x: x[place] as number, y: y[place] as number, lines: names, heights, taken });
  };
  let place = pointCount;
  for (const line of lines) {
    for (const own of line.z) {
      const taken = z[first[place] as number] as number;
      if (own !== null) add("corner", place, [line.name], [taken, own]);
      place++;
    }
  }
  for (const { place: at, lines: two, heights } of crossings) {
    add(
      "crossing",
      pointCount + at,
      two.map((line) => (lines[line] as Breakline).name),
      heights,
    );
  }
  return conflicts;
}
