/** Areas of surfaces, m2. Source: first principles (half the cross product of two sides). */
import type { Tin } from "./ground";

/** Area of a surface seen from above. */
export function planArea(tin: Tin): number {
  return summed(tin, (ux, uy, _uz, vx, vy) => (ux * vy - uy * vx) / 2);
}

/** Area of a surface along its slopes. */
export function surfaceArea(tin: Tin): number {
  return summed(
    tin,
    (ux, uy, uz, vx, vy, vz) => Math.hypot(uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx) / 2,
  );
}

type OfSides = (ux: number, uy: number, uz: number, vx: number, vy: number, vz: number) => number;

function summed({ x, y, z, triangles }: Tin, areaOf: OfSides): number {
  let sum = 0;
  for (let e = 0; e < triangles.length; e += 3) {
    const a = triangles[e] as number;
    const b = triangles[e + 1] as number;
    const c = triangles[e + 2] as number;
    const ax = x[a] as number;
    const ay = y[a] as number;
    const az = z[a] as number;
    sum += areaOf(
      (x[b] as number) - ax,
      (y[b] as number) - ay,
      (z[b] as number) - az,
      (x[c] as number) - ax,
      (y[c] as number) - ay,
      (z[c] as number) - az,
    );
  }
  return sum;
}
