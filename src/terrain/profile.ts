/** The ground along a line. */
import { cornerDistances, type Point, pointAlong } from "../geometry";
import type { Ground } from "./ground";
import { locate } from "./locate";
import { trianglePlane } from "./plane";

/** Samples along a line: distance from its start, height (NaN beyond the ground's reach), 1 where guessed. */
export interface Profile {
  readonly distance: Float64Array;
  readonly z: Float64Array;
  readonly guessed: Uint8Array;
}

/** Heights along a line at its corners and in between at most `step` metres apart. */
export function profile(ground: Ground, line: readonly Point[], step: number): Profile {
  const distance = Float64Array.from(sampleDistances(cornerDistances(line), step));
  const z = new Float64Array(distance.length);
  const guessed = new Uint8Array(distance.length);
  let last = 0;
  for (let i = 0; i < distance.length; i++) {
    const [x, y] = pointAlong(line, distance[i] as number).at;
    const triangle = locate(ground.tin, x, y, last);
    z[i] = triangle < 0 ? Number.NaN : trianglePlane(ground.tin, triangle, x, y).z;
    guessed[i] = triangle < 0 ? 1 : (ground.guessed[triangle] as number);
    if (triangle >= 0) last = triangle;
  }
  return { distance, z, guessed };
}

function sampleDistances(corners: Float64Array, step: number): number[] {
  if (!(step > 0)) throw new Error(`a profile needs a step above zero, not ${step}`);
  const at = [0];
  for (let i = 1; i < corners.length; i++) {
    const from = corners[i - 1] as number;
    const length = (corners[i] as number) - from;
    const parts = Math.ceil(length / step);
    for (let k = 1; k <= parts; k++) at.push(from + (length * k) / parts);
  }
  return at;
}
