/**
 * Cut and fill between two triangulated surfaces: exact.
 *
 * Method  Each triangle of the one is clipped by the footprint, then by each triangle of the other that lies
 *         over it. On such a piece both surfaces are plane, so their difference is: prisms in closed form.
 * Source  First principles.
 */
import { type Bounds, clipConvexByConvex, type Point } from "../geometry";
import type { Tin } from "../terrain";
import { cornersOf, forEachClipped, forEachFan, heightsOn } from "./clipped";
import { TriangleIndex } from "./triangle-index";
import { type Volume, VolumeSum } from "./volume";

/**
 * Volumes to bring surface `from` to surface `to` where the two overlap, within a ring if one is given. Where
 * `from` is the higher there is cut. `planArea` is the area of the overlap reckoned on.
 */
export function tinToTinVolume(from: Tin, to: Tin, ring: readonly Point[] | null): Volume {
  const index = new TriangleIndex(to);
  const sum = new VolumeSum();
  forEachClipped(from, ring, (polygon, triangle) => {
    index.near(boxOf(polygon), (target) => {
      const piece = clipConvexByConvex(polygon, triangleRing(to, target));
      if (piece.length < 6) return;
      const before = heightsOn(from, triangle, piece);
      const after = heightsOn(to, target, piece);
      const offset = (i: number) => (before[i] as number) - (after[i] as number);
      forEachFan(piece, (area, second, third) => sum.add(area, offset(0), offset(second), offset(third)));
    });
  });
  return sum.total();
}

function triangleRing(tin: Tin, triangle: number): Point[] {
  const [ax, ay, bx, by, cx, cy] = cornersOf(tin, triangle) as [
    number,
    number,
    number,
    number,
    number,
    number,
  ];
  return [
    [ax, ay],
    [bx, by],
    [cx, cy],
  ];
}

function boxOf(polygon: readonly number[]): Bounds {
  let minX = Infinity;
  let minY = Infinity;
  let maxX = -Infinity;
  let maxY = -Infinity;
  for (let i = 0; i < polygon.length; i += 2) {
    minX = Math.min(minX, polygon[i] as number);
    maxX = Math.max(maxX, polygon[i] as number);
    minY = Math.min(minY, polygon[i + 1] as number);
    maxY = Math.max(maxY, polygon[i + 1] as number);
  }
  return { minX, minY, maxX, maxY };
}
