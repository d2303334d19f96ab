/** Planes over plan coordinates: through a triangle, and fitted to points. Source: first principles. */
import type { Ground, Tin } from "./ground";

/** Height and gradient (rise over run, east and north) of the plane of a triangle at one place. */
export interface PlaneAt {
  readonly z: number;
  readonly gx: number;
  readonly gy: number;
}

/** The plane of a triangle of the surface at (x, y). A triangle without area is taken as level. */
export function trianglePlane(tin: Tin, triangle: number, x: number, y: number): PlaneAt {
  const a = tin.triangles[3 * triangle] as number;
  const b = tin.triangles[3 * triangle + 1] as number;
  const c = tin.triangles[3 * triangle + 2] as number;
  const ax = tin.x[a] as number;
  const ay = tin.y[a] as number;
  const az = tin.z[a] as number;
  const ux = (tin.x[b] as number) - ax;
  const uy = (tin.y[b] as number) - ay;
  const uz = (tin.z[b] as number) - az;
  const vx = (tin.x[c] as number) - ax;
  const vy = (tin.y[c] as number) - ay;
  const vz = (tin.z[c] as number) - az;
  const twice = ux * vy - uy * vx;
  if (twice === 0) return { z: az, gx: 0, gy: 0 };
  const gx = (uz * vy - vz * uy) / twice;
  const gy = (vz * ux - uz * vx) / twice;
  return { z: az + gx * (x - ax) + gy * (y - ay), gx, gy };
}

/** Below this share of the greater spread, the spread across a line of points tells nothing of its slope. */
const LEAST_SPREAD = 1e-9;

/**
 * The plane z = a + gx x + gy y with the least sum of squared height differences to the points. Points that
 * are all but in line get no slope across that line.
 */
export function fittedPlane(
  x: ArrayLike<number>,
  y: ArrayLike<number>,
  z: ArrayLike<number>,
): Ground["plane"] {
  const n = x.length;
  const mx = mean(x);
  const my = mean(y);
  const mz = mean(z);
  let xx = 0;
  let xy = 0;
  let yy = 0;
  let xz = 0;
  let yz = 0;
  for (let i = 0; i < n; i++) {
    const dx = (x[i] as number) - mx;
    const dy = (y[i] as number) - my;
    const dz = (z[i] as number) - mz;
    xx += dx * dx;
    xy += dx * dy;
    yy += dy * dy;
    xz += dx * dz;
    yz += dy * dz;
  }
  const [gx, gy] = gradient(xx, xy, yy, xz, yz);
  return { a: mz - gx * mx - gy * my, gx, gy };
}

/** Solves the two normal equations along the axes of greatest and least spread. */
function gradient(xx: number, xy: number, yy: number, xz: number, yz: number): [number, number] {
  const angle = Math.atan2(2 * xy, xx - yy) / 2;
  const cos = Math.cos(angle);
  const sin = Math.sin(angle);
  const along = cos * cos * xx + 2 * cos * sin * xy + sin * sin * yy;
  const across = sin * sin * xx - 2 * cos * sin * xy + cos * cos * yy;
  const slopeAlong = along > 0 ? (cos * xz + sin * yz) / along : 0;
  const slopeAcross = across > LEAST_SPREAD * along ? (cos * yz - sin * xz) / across : 0;
  return [cos * slopeAlong - sin * slopeAcross, sin * slopeAlong + cos * slopeAcross];
}

function mean(values: ArrayLike<number>): number {
  let sum = 0;
  for (let i = 0; i < values.length; i++) sum += values[i] as number;
  return sum / values.length;
}
