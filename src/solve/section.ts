/**
 * The long section through the building, from its high side to its low side.
 *
 * Units   metres.
 * Method  Through the centre of the footprint, along whichever of the building's two ways is nearer to the
 *         steepest way of the ground under it. The ground is read once a layout; a floor costs one clamp a sample.
 */

import type { Bounds } from "../geometry";
import { centroid, containsPoint, type Point } from "../geometry";
import { type Footprint, finishHeights, type Places, type Prepared, placesAt } from "../grading";
import { fittedPlane, type Ground, groundAt } from "../terrain";
import type { HeightAt } from "./grading-plan";
import { oncePer } from "./once-per";
import type { SectionLine } from "./results";

const samples = 240;
/** Beyond the last of the slopes, m. */
const beyond = 3;

export interface SectionPlaces {
  readonly places: Places;
  readonly distance: Float64Array;
  readonly guessed: Uint8Array;
  readonly start: Point;
  readonly end: Point;
  readonly building: readonly [number, number] | null;
}

export function sectionPlaces(
  footprint: Footprint,
  ground: Ground,
  height: HeightAt,
  box: Bounds,
): SectionPlaces {
  const centre = centroid(footprint.ring);
  const along = downhill(footprint, height);
  const back = toEdge(box, centre, [-along[0], -along[1]]) + beyond;
  const ahead = toEdge(box, centre, along) + beyond;
  const length = back + ahead;
  const distance = Float64Array.from({ length: samples }, (_, i) => (length * i) / (samples - 1));
  const points = Array.from(
    distance,
    (d): Point => [centre[0] + along[0] * (d - back), centre[1] + along[1] * (d - back)],
  );
  const covered = Uint8Array.from(points, ([x, y]) => (containsPoint(footprint.ring, x, y) ? 1 : 0));
  return {
    places: placesAt(points, height, covered),
    distance,
    guessed: Uint8Array.from(points, ([x, y]) => (groundAt(ground, x, y)?.guessed === false ? 0 : 1)),
    start: points[0] as Point,
    end: points[samples - 1] as Point,
    building: through(footprint, centre, along, back),
  };
}

/** The section at a floor height; inside the walls it runs along the floor. */
export function sectionLine(section: SectionPlaces, prepared: Prepared, floor: number): SectionLine {
  const { places, distance, guessed, start, end, building } = section;
  const z = finishHeights(prepared, floor, new Float64Array(distance.length));
  for (let i = 0; i < z.length; i++) if (places.covered[i]) z[i] = floor;
  return {
    existing: existingOf(section),
    finished: pairs(distance, z),
    guessed,
    start: [...start],
    end: [...end],
    building,
  };
}

/** The same for every floor. */
const existingOf = oncePer(({ places, distance }: SectionPlaces) => pairs(distance, places.existing));

/** Unit vector along the building's way that is nearer to the steepest way down of the ground under it. */
function downhill({ ring, walls }: Footprint, height: HeightAt): Point {
  const middles = walls.map(({ start, end }): Point => [(start[0] + end[0]) / 2, (start[1] + end[1]) / 2]);
  const places = [...ring, ...middles];
  const { gx, gy } = fittedPlane(
    places.map(([x]) => x),
    places.map(([, y]) => y),
    places.map(height),
  );
  const longest = walls.reduce((a, b) => (b.length > a.length ? b : a));
  const [ux, uy] = longest.along;
  const slopeAlong = gx * ux + gy * uy;
  const slopeAcross = -gx * uy + gy * ux;
  if (Math.abs(slopeAlong) >= Math.abs(slopeAcross)) return slopeAlong > 0 ? [-ux, -uy] : [ux, uy];
  return slopeAcross > 0 ? [uy, -ux] : [-uy, ux];
}

/** Distance from a place inside a box to its edge. */
function toEdge(box: Bounds, [x, y]: Point, [dx, dy]: Point): number {
  const across = dx > 0 ? (box.maxX - x) / dx : dx < 0 ? (box.minX - x) / dx : Infinity;
  const up = dy > 0 ? (box.maxY - y) / dy : dy < 0 ? (box.minY - y) / dy : Infinity;
  return Math.max(0, Math.min(across, up));
}

/** Distances at which the section enters the building for the first and leaves it for the last time. */
function through({ ring }: Footprint, centre: Point, along: Point, back: number): [number, number] | null {
  const crossings = ring.flatMap((a, i) => {
    const b = ring[(i + 1) % ring.length] as Point;
    const before = (a[0] - centre[0]) * along[1] - (a[1] - centre[1]) * along[0];
    const after = (b[0] - centre[0]) * along[1] - (b[1] - centre[1]) * along[0];
    if (before > 0 === after > 0) return [];
    const t = before / (before - after);
    const x = a[0] + t * (b[0] - a[0]) - centre[0];
    const y = a[1] + t * (b[1] - a[1]) - centre[1];
    return [back + x * along[0] + y * along[1]];
  });
  if (crossings.length < 2) return null;
  return [Math.min(...crossings), Math.max(...crossings)];
}

function pairs(distance: Float64Array, heights: Float64Array): Float64Array {
  const flat = new Float64Array(2 * distance.length);
  for (let i = 0; i < distance.length; i++) {
    flat[2 * i] = distance[i] as number;
    flat[2 * i + 1] = heights[i] as number;
  }
  return flat;
}
