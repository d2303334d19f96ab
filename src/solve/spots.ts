/**
 * The spots of existing ground that limit the floor: highest beside the walls, lowest along and inside them.
 *
 * Units   metres.
 * Method  A triangulated ground has its extremes at its points or on the edge of the area asked about: the
 *         points inside the area are looked at, and its edge at close steps. Under the floor it is exact.
 */
import type { VolumeCurve } from "../earthwork";
import { boundsOf, containsPoint, type Point } from "../geometry";
import { type Footprint, nearestSegment, nowhere, onWall, segmentsOf } from "../grading";
import type { Ground } from "../terrain";
import type { HeightAt } from "./grading-plan";

export interface BareSpot {
  readonly height: number;
  readonly at: Point;
}

export interface GroundSpots {
  /** Highest within the reach of the walls. */
  readonly uphill: BareSpot;
  /** Lowest and highest along each wall. */
  readonly walls: readonly { readonly lowest: BareSpot; readonly highest: BareSpot }[];
  readonly lowestInside: BareSpot;
}

/** Steps along walls and along the edge of the reach, m. */
const step = 0.25;

export function groundSpots(
  footprint: Footprint,
  ground: Ground,
  curve: VolumeCurve,
  height: HeightAt,
  reach: number,
): GroundSpots {
  const read = (at: Point): BareSpot => ({ height: height(at), at });
  const walls = footprint.walls.map((wall) => {
    const along = steps(wall.length).map((offset) => read(onWall(wall, offset)));
    return { lowest: lower(along), highest: higher(along) };
  });
  const edge = footprint.walls.flatMap((wall) =>
    steps(wall.length).map((offset) => read(onWall(wall, offset, reach))),
  );
  const round = footprint.ring.flatMap((corner) => circle(corner, reach).map(read));
  const inside = curve.lowest;
  return {
    uphill: higher([
      ...walls.map(({ highest }) => highest),
      ...edge,
      ...round,
      ...shotsBeside(footprint, ground, reach),
    ]),
    walls,
    lowestInside: inside
      ? { height: inside.z, at: [inside.x, inside.y] }
      : lower(walls.map(({ lowest }) => lowest)),
  };
}

/** Shots within the reach of the walls, those inside them too. */
function shotsBeside(
  { ring, walls }: Footprint,
  { tin, measuredPoints: count }: Ground,
  reach: number,
): BareSpot[] {
  const segments = segmentsOf(walls);
  const found = nowhere();
  const { minX, minY, maxX, maxY } = boundsOf(ring);
  const beside: BareSpot[] = [];
  for (let i = 0; i < count; i++) {
    const x = tin.x[i] as number;
    const y = tin.y[i] as number;
    if (x < minX - reach || x > maxX + reach || y < minY - reach || y > maxY + reach) continue;
    const isNear = nearestSegment(segments, x, y, found).distance <= reach;
    if (isNear || containsPoint(ring, x, y)) beside.push({ height: tin.z[i] as number, at: [x, y] });
  }
  return beside;
}

function steps(length: number): number[] {
  // A very long wall is looked at in no more than two thousand places.
  const count = Math.min(2000, Math.max(1, Math.ceil(length / step)));
  return Array.from({ length: count + 1 }, (_, i) => (length * i) / count);
}

function circle(centre: Point, radius: number): Point[] {
  return Array.from({ length: 24 }, (_, i): Point => {
    const angle = (i * Math.PI) / 12;
    return [centre[0] + radius * Math.cos(angle), centre[1] + radius * Math.sin(angle)];
  });
}

export function lower(spots: readonly BareSpot[]): BareSpot {
  return spots.reduce((a, b) => (b.height < a.height ? b : a));
}

export function higher(spots: readonly BareSpot[]): BareSpot {
  return spots.reduce((a, b) => (b.height > a.height ? b : a));
}
