/**
 * A drain round the footing: its inverts at an even fall both ways to its lowest corner, and where it comes out.
 *
 * Units   metres; fall rise over run.
 * Method  At the lowest corner its invert lies at the bottom of the footing, never under it; from there it rises both ways to
 *         the corner farthest off. Straight from each corner, clear of the building, the nearest ground is looked for that
 *         lies under the drain's invert there; that corner is the lowest one.
 * Source  First principles; a drain that must not lie under the footing: common practice, no source.
 */
import { distance, type Point, segmentsMeet } from "../geometry";
import type { Grid } from "../terrain";

export interface DrainGround {
  readonly grid: Grid;
  readonly z: Float64Array;
  readonly blocked: Uint8Array;
}

export interface DrainRun {
  readonly length: number;
  /** Corners, by index, and inverts there. */
  readonly lowCorner: number;
  readonly low: number;
  readonly highCorner: number;
  readonly high: number;
  /** One a corner. */
  readonly inverts: readonly number[];
  readonly outlet: {
    readonly at: Readonly<Point>;
    readonly distance: number;
    readonly invert: number;
  } | null;
}

/** `bottom`: of the footing, at its lowest. */
export function footingDrain(
  ring: readonly Point[],
  bottom: number,
  fall: number,
  ground: DrainGround,
): DrainRun {
  const outlets = ring.map((corner) => nearestOutlet(ring, corner, bottom, fall, ground));
  const lowCorner = outlets.reduce(
    (best, outlet, i) => ((outlet?.distance ?? Infinity) < (outlets[best]?.distance ?? Infinity) ? i : best),
    0,
  );
  const sides = ring.map((a, i) => distance(a, ring[(i + 1) % ring.length] as Point));
  const length = sides.reduce((sum, side) => sum + side, 0);
  const ways = ring.map((_, i) => {
    let way = 0;
    for (let k = lowCorner; k !== i; k = (k + 1) % ring.length) way += sides[k] as number;
    return Math.min(way, length - way);
  });
  const highCorner = ways.reduce((best, way, i) => (way > (ways[best] as number) ? i : best), lowCorner);
  return {
    length,
    lowCorner,
    low: bottom,
    highCorner,
    high: bottom + fall * (ways[highCorner] as number),
    inverts: ways.map((way) => bottom + fall * way),
    outlet: outlets[lowCorner] ?? null,
  };
}

function nearestOutlet(
  ring: readonly Point[],
  corner: Point,
  invert: number,
  fall: number,
  { grid, z, blocked }: DrainGround,
): DrainRun["outlet"] {
  let best: { at: Point; distance: number } | null = null;
  for (let i = 0; i < z.length; i++) {
    if (blocked[i] || (z[i] as number) > invert) continue;
    const at: Point = [
      grid.x0 + ((i % grid.columns) + 0.5) * grid.cell,
      grid.y0 + (Math.floor(i / grid.columns) + 0.5) * grid.cell,
    ];
    const away = distance(corner, at);
    if (best && away >= best.distance) continue;
    if ((z[i] as number) > invert - fall * away || crossesBuilding(ring, corner, at)) continue;
    best = { at, distance: away };
  }
  return best && { ...best, invert: invert - fall * best.distance };
}

/** Whether the straight way from a corner passes through the building; along or off its walls it doesn't. */
function crossesBuilding(ring: readonly Point[], corner: Point, at: Point): boolean {
  const length = distance(corner, at);
  const step = Math.min(0.05, length / 2);
  const start: Point = [
    corner[0] + ((at[0] - corner[0]) * step) / length,
    corner[1] + ((at[1] - corner[1]) * step) / length,
  ];
  return ring.some((a, i) => segmentsMeet(start, at, a, ring[(i + 1) % ring.length] as Point));
}
