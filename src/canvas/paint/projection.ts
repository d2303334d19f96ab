/** From plan metres to screen pixels for whole runs of places, and what of them lies off the screen. */
import type { View } from "../view/view";

export type Flat = ArrayLike<number>;
/** Metres to pixels, as the numbers a loop needs: px = a x + c y + e, py = b x + d y + f. */
export interface Projection {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly d: number;
  readonly cx: number;
  readonly cy: number;
  readonly e: number;
  readonly f: number;
}

export function projection(view: View): Projection {
  const c = Math.cos(view.angle) * view.scale;
  const s = Math.sin(view.angle) * view.scale;
  return {
    a: c,
    b: -s,
    c: -s,
    d: -c,
    cx: view.centre[0],
    cy: view.centre[1],
    e: view.width / 2,
    f: view.height / 2,
  };
}

export const px = (p: Projection, x: number, y: number): number => (x - p.cx) * p.a + (y - p.cy) * p.c + p.e;
export const py = (p: Projection, x: number, y: number): number => (x - p.cx) * p.b + (y - p.cy) * p.d + p.f;

/** World boxes of long runs, so that culling them costs nothing the second time. */
const boxes = new WeakMap<object, readonly [number, number, number, number]>();
const longRun = 64;

function boxOf(points: Flat): readonly [number, number, number, number] {
  const known = points.length >= longRun ? boxes.get(points) : undefined;
  if (known) return known;
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (let i = 0; i + 1 < points.length; i += 2) {
    const x = points[i] as number;
    const y = points[i + 1] as number;
    if (x < minX) minX = x;
    if (x > maxX) maxX = x;
    if (y < minY) minY = y;
    if (y > maxY) maxY = y;
  }
  const box = [minX, minY, maxX, maxY] as const;
  if (points.length >= longRun) boxes.set(points, box);
  return box;
}

/** Wider than any line or symbol, px. */
export const rim = 24;

export function isOffScreen(view: View, p: Projection, points: Flat): boolean {
  const [minX, minY, maxX, maxY] = boxOf(points);
  const mx = (minX + maxX) / 2;
  const my = (minY + maxY) / 2;
  const halfX = ((maxX - minX) * Math.abs(p.a) + (maxY - minY) * Math.abs(p.c)) / 2 + rim;
  const halfY = ((maxX - minX) * Math.abs(p.b) + (maxY - minY) * Math.abs(p.d)) / 2 + rim;
  const x = px(p, mx, my);
  const y = py(p, mx, my);
  return x + halfX < 0 || y + halfY < 0 || x - halfX > view.width || y - halfY > view.height;
}
