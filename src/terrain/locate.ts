/**
 * Which triangle a place lies in.
 *
 * Method  A walk through the triangles towards the place: leave by a side that has the place on its far
 *         side, never by the one just come in by; the side tried first alternates, so that no surface can
 *         lead it round in a circle. Bounded; should the bound be reached, all triangles are looked through.
 * Source  O. Devillers, S. Pion, M. Teillaud, Walking in a Triangulation, International Journal of
 *         Foundations of Computer Science 13 (2002).
 */
import type { Tin } from "./ground";

/** A place this share of its coordinates outside the rim still counts as on it: rounding, not distance. */
const ON_RIM = 2 ** -48;

/**
 * Index of a triangle that holds (x, y), or -1 outside the rim; a place on a side or corner gets any of the
 * adjoining ones. `from` is a triangle to start at: give the last answer when queries lie close together.
 */
export function locate(tin: Tin, x: number, y: number, from = 0): number {
  const { triangles, halfedges, x: px, y: py } = tin;
  const count = triangles.length / 3;
  let triangle = from >= 0 && from < count ? from : 0;
  let cameBy = -1;
  let first = 0;
  for (let step = 0; step <= count; step++) {
    const base = 3 * triangle;
    let leave = -1;
    let outside = false;
    let corner = first;
    for (let k = 0; k < 3; k++) {
      const e = base + corner;
      corner = corner === 2 ? 0 : corner + 1;
      if (e === cameBy) continue;
      const a = triangles[e] as number;
      const b = triangles[base + corner] as number;
      const ax = px[a] as number;
      const ay = py[a] as number;
      const ux = (px[b] as number) - ax;
      const uy = (py[b] as number) - ay;
      const side = ux * (y - ay) - uy * (x - ax);
      if (side >= 0) continue;
      leave = halfedges[e] as number;
      if (leave >= 0) break;
      const size = Math.abs(x) + Math.abs(y) + Math.abs(ax) + Math.abs(ay);
      if (-side > ON_RIM * size * (Math.abs(ux) + Math.abs(uy))) outside = true;
    }
    if (leave < 0) return outside ? -1 : triangle;
    cameBy = leave;
    triangle = (leave / 3) | 0;
    first = first === 2 ? 0 : first + 1;
  }
  return scan(tin, x, y);
}

/** Looks through all triangles. */
function scan(tin: Tin, x: number, y: number): number {
  for (let base = 0; base < tin.triangles.length; base += 3) {
    if (holds(tin, base, x, y)) return base / 3;
  }
  return -1;
}

function holds(tin: Tin, base: number, x: number, y: number): boolean {
  for (let k = 0; k < 3; k++) {
    const a = tin.triangles[base + k] as number;
    const b = tin.triangles[base + ((k + 1) % 3)] as number;
    const ax = tin.x[a] as number;
    const ay = tin.y[a] as number;
    if (((tin.x[b] as number) - ax) * (y - ay) - ((tin.y[b] as number) - ay) * (x - ax) < 0) return false;
  }
  return true;
}
