/** Where swales cross drives. */
import { between, crossingShares, type Point, segmentsMeet } from "../geometry";
import type { DriveLine } from "./drive-line";
import type { SwaleLine } from "./swale-line";

export interface Crossing {
  readonly at: Point;
  /** Distances along the two lines, m. */
  readonly alongSwale: number;
  readonly alongDrive: number;
  /** Sine of the angle between them. */
  readonly square: number;
}

/** Lines that run all but along each other don't cross in any use of the word: no flatter angle is reckoned with. */
const leastSquare = 0.2;

/** Every place where the two lines cross, in the swale's direction. */
export function crossings(swale: SwaleLine, drive: DriveLine): Crossing[] {
  const found: Crossing[] = [];
  for (let i = 1; i < swale.line.length; i++) {
    const [a, b] = [swale.line[i - 1] as Point, swale.line[i] as Point];
    for (let k = 1; k < drive.line.length; k++) {
      const [c, d] = [drive.line[k - 1] as Point, drive.line[k] as Point];
      const shares = segmentsMeet(a, b, c, d) ? crossingShares(a, b, c, d) : null;
      if (!shares) continue;
      const [t, u] = shares;
      const [lengthS, lengthD] = [Math.hypot(b[0] - a[0], b[1] - a[1]), Math.hypot(d[0] - c[0], d[1] - c[1])];
      const across = (b[0] - a[0]) * (d[1] - c[1]) - (b[1] - a[1]) * (d[0] - c[0]);
      found.push({
        at: between(a, b, t),
        alongSwale: (swale.distances[i - 1] as number) + t * lengthS,
        alongDrive: (drive.distances[k - 1] as number) + u * lengthD,
        square: Math.max(leastSquare, Math.abs(across) / (lengthS * lengthD)),
      });
    }
  }
  return found;
}

/** A pipe is covered by so much earth at most, m: how far the earth over it is looked for. Our own choice. */
const mostOver = 2.5;

/** How far from a crossing the drive's earth may reach over the pipe, m. */
export function reachOverPipe({ square }: Crossing, { drive }: DriveLine, { swale }: SwaleLine): number {
  const overDrive = drive.width / 2 + drive.shoulder.width + mostOver * drive.sideSlope;
  const overSwale = swale.bottomWidth / 2 + mostOver * swale.sideSlope;
  return (overDrive + overSwale) / square;
}
