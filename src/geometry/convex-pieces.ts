/**
 * Simple rings cut into convex pieces.
 *
 * Method  Cut ears off until a triangle is left, then take out every diagonal whose two ends stay convex
 *         without it. At most four times as many pieces as there need be; a convex ring stays whole.
 * Source  G. H. Meisters, Polygons Have Ears, American Mathematical Monthly 82 (1975); S. Hertel,
 *         K. Mehlhorn, Fast Triangulation of Simple Polygons, FCT 1983.
 */
import type { Point } from "./point";
import { turn } from "./predicates";
import { counterClockwise, ringsSelfCross } from "./ring";

/**
 * Convex rings, counter-clockwise, that together cover the ring without overlap, on its own corners.
 * Corners in line with their neighbours, and doubled ones, are left out. None for a ring that has no
 * area or crosses itself: it has no inside.
 */
export function convexPieces(ring: readonly Point[]): Point[][] {
  const corners = withoutFlatCorners(counterClockwise(ring));
  if (corners.length < 3 || ringsSelfCross(corners)) return [];
  const pieces = earTriangles(corners);
  for (let i = 0; i < pieces.length; i++) {
    for (let j = i + 1; j < pieces.length; j++) {
      const whole = joined(corners, pieces[i] as number[], pieces[j] as number[]);
      if (!whole) continue;
      pieces[i] = whole;
      pieces.splice(j, 1);
      j = i; // the grown piece has new neighbours: look at all the others again
    }
  }
  return pieces.map((piece) => piece.map((corner) => corners[corner] as Point));
}

function earTriangles(corners: readonly Point[]): number[][] {
  const left = corners.map((_, index) => index);
  const triangles: number[][] = [];
  while (left.length > 3) {
    const at = left.findIndex((_, i) => isEar(corners, left, i));
    if (at < 0) throw new Error(`no ear among ${left.length} corners of a simple ring`);
    const [before, ear, after] = around(left, at);
    if (turnAt(corners, before, ear, after) > 0) triangles.push([before, ear, after]);
    left.splice(at, 1);
  }
  const last = left as [number, number, number];
  if (turnAt(corners, ...last) > 0) triangles.push(last);
  return triangles;
}

/** A corner that can be cut off: convex with no other corner in its triangle, or flat. */
function isEar(corners: readonly Point[], left: readonly number[], at: number): boolean {
  const [before, ear, after] = around(left, at);
  const bend = turnAt(corners, before, ear, after);
  if (bend <= 0) return bend === 0 && !spikes(corners, before, ear, after);
  return left.every(
    (other) =>
      other === before ||
      other === ear ||
      other === after ||
      turnAt(corners, before, ear, other) < 0 ||
      turnAt(corners, ear, after, other) < 0 ||
      turnAt(corners, after, before, other) < 0,
  );
}

/** Whether a flat corner turns straight back instead of running on. */
function spikes(corners: readonly Point[], a: number, b: number, c: number): boolean {
  const [ax, ay] = corners[a] as Point;
  const [bx, by] = corners[b] as Point;
  const [cx, cy] = corners[c] as Point;
  return (bx - ax) * (cx - bx) + (by - ay) * (cy - by) < 0;
}

/** Two pieces without the side they share, where the result is convex; else null. */
function joined(
  corners: readonly Point[],
  one: readonly number[],
  other: readonly number[],
): number[] | null {
  for (let i = 0; i < one.length; i++) {
    const from = one[i] as number;
    const to = one[(i + 1) % one.length] as number;
    const j = other.indexOf(to);
    if (j < 0 || other[(j + 1) % other.length] !== from) continue;
    // one runs on from `to` round to `from`; other then fills in between.
    const rest = turnedTo(one, (i + 1) % one.length);
    const between = turnedTo(other, (j + 1) % other.length).slice(1, -1);
    const whole = [...rest, ...between];
    return isConvex(corners, whole) ? whole : null;
  }
  return null;
}

function isConvex(corners: readonly Point[], piece: readonly number[]): boolean {
  return piece.every((_, i) => turnAt(corners, ...around(piece, i)) >= 0);
}

function turnedTo(list: readonly number[], start: number): number[] {
  return [...list.slice(start), ...list.slice(0, start)];
}

function around(list: readonly number[], i: number): [number, number, number] {
  const n = list.length;
  return [list[(i + n - 1) % n] as number, list[i] as number, list[(i + 1) % n] as number];
}

function turnAt(corners: readonly Point[], a: number, b: number, c: number): number {
  const [ax, ay] = corners[a] as Point;
  const [bx, by] = corners[b] as Point;
  const [cx, cy] = corners[c] as Point;
  return turn(ax, ay, bx, by, cx, cy);
}

function withoutFlatCorners(ring: readonly Point[]): Point[] {
  const kept = [...ring];
  for (let i = 0; i < kept.length && kept.length >= 3; ) {
    const n = kept.length;
    const [ax, ay] = kept[(i + n - 1) % n] as Point;
    const [bx, by] = kept[i] as Point;
    const [cx, cy] = kept[(i + 1) % n] as Point;
    if (turn(ax, ay, bx, by, cx, cy) === 0) {
      kept.splice(i, 1);
      i = Math.max(0, i - 1);
    } else i++;
  }
  return kept;
}
