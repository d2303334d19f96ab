/**
 * What was read on the rod → how far the ground lies below the beam.
 *
 * Units   metres.
 * Sign    `down` grows as the ground falls, whatever rod it was.
 * Method  Plain rod, story pole, laser line: reading + receiver's offset. A rod that reads up (direct elevation, cut and
 *         fill): - reading; where it reads zero then takes the beam's place, so that height = zero + reading and an
 *         offset that stays the same cancels. Off this come, where the distance D is known, the line of sight's tilt
 *         x D, and on request curvature and refraction.
 * Source  Curvature less refraction 0.0673 D² m, D in km: refraction is one seventh of curvature, D² / 12,740 km
 *         (usual textbook constants). The rest: first principles.
 */
import type { Point, Setup, Shot } from "../document/schema";
import { type References, stoodAt } from "./references";

export interface Reading {
  readonly down: number;
  /** From the laser to the rod, null while one of them has no place. */
  readonly distance: number | null;
  /** Standard deviation by the beam's accuracy at that distance; null while one of the two isn't known. */
  readonly sigma: number | null;
}

/** By shot; missing for a row that is still empty, and for one whose set-up isn't there. */
export type Readings = Pick<ReadonlyMap<Shot, Reading>, "get">;

/** Metres a square metre of sight: 0.0673 m at one kilometre. */
const CURVATURE_AND_REFRACTION = 0.0673e-6;

/** How much too large a reading is at so many metres, for the earth's curvature less refraction, m. */
export function curvatureAndRefraction(distance: number): number {
  return CURVATURE_AND_REFRACTION * distance * distance;
}

/** Each is worked out when it is asked for: a crowd of shots is asked one by one, and none of them is kept. */
export function readingsOf(refs: References, longSights: boolean): Readings {
  return {
    get(shot) {
      const setup = refs.setups.get(shot.setup);
      if (shot.reading === null || setup === undefined) return undefined;
      return readOne(shot.reading.m, setup, stoodAt(shot, refs), longSights);
    },
  };
}

function readOne(reading: number, setup: Setup, at: Point | null, longSights: boolean): Reading {
  const distance = at && setup.at ? Math.hypot(at[0] - setup.at[0], at[1] - setup.at[1]) : null;
  const plain = setup.rod.reads === "up" ? -reading : reading + (setup.rod.offset?.m ?? 0);
  const known = distance ?? 0;
  const tilt = setup.collimation * known;
  const down = plain - tilt - (longSights ? curvatureAndRefraction(known) : 0);
  const sigma = distance === null || setup.accuracy === null ? null : setup.accuracy.ratio * distance;
  return { down, distance, sigma };
}
