/**
 * How much of a line has work on it.
 *
 * Units   metres.
 * Method  Close places along the line say where there is work; where it begins or ends between two of them, the place at which
 *         the ground stops changing is found by halving.
 * Source  First principles.
 */

/** Where work ends is found to this, and a change this small is none, m. */
const closeness = 1e-4;
const nothing = 1e-5;

/** `depths`: finished − existing at `alongs`; `change`: the least that is work. Never more than the line. */
export function coveredLength(
  alongs: readonly number[],
  depths: readonly number[],
  change: number,
  depthAt: (along: number) => number,
): number {
  let covered = 0;
  for (let i = 1; i < alongs.length; i++) {
    const [from, to] = [alongs[i - 1] as number, alongs[i] as number];
    const [before, after] = [i - 1, i].map((k) => Math.abs(depths[k] as number) >= change);
    if (before && after) covered += to - from;
    else if (before) covered += endOfWork(from, to, depthAt) - from;
    else if (after) covered += to - endOfWork(to, from, depthAt);
  }
  return covered;
}

/** From a place with work towards one without. */
function endOfWork(work: number, none: number, depthAt: (along: number) => number): number {
  let [near, far] = [work, none];
  while (Math.abs(far - near) > closeness) {
    const middle = (near + far) / 2;
    if (Math.abs(depthAt(middle)) >= nothing) near = middle;
    else far = middle;
  }
  return near;
}
