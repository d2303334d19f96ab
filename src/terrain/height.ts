/** Heights and gradients of surfaces at places. Metres; gradients rise over run. */
import type { Ground, GroundAt, Tin } from "./ground";
import { locate } from "./locate";
import { type PlaneAt, trianglePlane } from "./plane";

/** Height and gradient of a surface at (x, y), or null outside it. Exact on its triangles. */
export function tinAt(tin: Tin, x: number, y: number, from?: number): PlaneAt | null {
  const triangle = locate(tin, x, y, from);
  return triangle < 0 ? null : trianglePlane(tin, triangle, x, y);
}

/** The ground at (x, y): exact on its triangles, marked where it is guessed; null beyond its reach. */
export function groundAt(ground: Ground, x: number, y: number, from?: number): GroundAt | null {
  const triangle = locate(ground.tin, x, y, from);
  if (triangle < 0) return null;
  return { ...trianglePlane(ground.tin, triangle, x, y), guessed: ground.guessed[triangle] === 1 };
}
