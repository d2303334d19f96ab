/**
 * Cut and fill between a triangulated surface and a level plane: exact.
 *
 * Method  Each triangle is clipped by the footprint, and each piece is a set of prisms in closed form.
 * Source  First principles.
 */
import type { Point } from "../geometry";
import type { Tin } from "../terrain";
import { forEachClipped, forEachFan, heightsOn } from "./clipped";
import { type Volume, VolumeSum } from "./volume";

/**
 * Volumes to bring a surface to the height `planeZ`, m, within a ring (or over all of the surface). Ground
 * above the plane is cut. `planArea` is the area reckoned on: the part of the ring on the surface.
 */
export function tinPlaneVolume(tin: Tin, ring: readonly Point[] | null, planeZ: number): Volume {
  const sum = new VolumeSum();
  forEachClipped(tin, ring, (polygon, triangle) => {
    const offsets = heightsOn(tin, triangle, polygon).map((z) => z - planeZ);
    forEachFan(polygon, (area, second, third) => {
      sum.add(area, offsets[0] as number, offsets[second] as number, offsets[third] as number);
    });
  });
  return sum.total();
}
