/** How far the ground must reach, and which floor heights and which piece of it are looked at. Metres. */
import type { Building, Grading, Lot } from "../document/schema";
import { type Bounds, boundsOf } from "../geometry";
import { farthestLook, grown, union } from "../grading";
import type { Tin } from "../terrain";
import { widestReach } from "./held-widths";
import type { GroundSpots } from "./spots";

/** The box is rounded out to whole steps, so that moving a thing a little doesn't make the ground anew. */
const boxStep = 32;
/** Room beside the slopes for the usual widths; wider shapes take their own, m. */
const usualRoom = 10;
/** Floors looked at: from this far under the lowest ground inside to this far over the highest beside, m. */
const rangeBelow = 0.5;
const rangeAbove = 1.5;

export function siteReach(
  tin: Tin,
  lot: Lot["outline"],
  outline: Building["outline"],
  grading: Grading,
): readonly [minX: number, minY: number, maxX: number, maxY: number] {
  const drawn = [
    ...lot,
    ...outline,
    ...grading.drives.flatMap(({ line }) => line),
    ...grading.swales.flatMap(({ line }) => line),
    ...[...grading.berms, ...grading.walls].flatMap(({ line }) => line),
    ...grading.pads.flatMap((pad) => pad.outline),
    ...grading.points.map(({ at }) => at),
  ];
  const room = Math.max(usualRoom, widestReach(grading) + 1);
  const box = grown(union(boundsOf(drawn), measuredBox(tin)), farthestLook + room);
  const out = (value: number) => Math.ceil(value / boxStep) * boxStep;
  return [-out(-box.minX), -out(-box.minY), out(box.maxX), out(box.maxY)];
}

/** Floor heights that are looked at whatever the floor is. */
export function usualFloorRange({ uphill, lowestInside }: GroundSpots): readonly [number, number] {
  return [lowestInside.height - rangeBelow, uphill.height + rangeAbove];
}

/** Floor heights the layout is made for; a floor beyond the usual ones widens it by whole metres. */
export function floorRange(spots: GroundSpots, floor: number): readonly [number, number] {
  const [low, high] = usualFloorRange(spots);
  return [floor < low ? Math.floor(floor - 0.5) : low, floor > high ? Math.ceil(floor + 0.5) : high];
}

/** The piece of ground where water is followed: the shots, the lot and all that grading changes. */
export function waterBox(tin: Tin, lot: Lot["outline"], graded: Bounds): Bounds {
  return union(union(measuredBox(tin), boundsOf(lot)), graded);
}

function measuredBox({ x, y, hull }: Tin): Bounds {
  return boundsOf(Array.from(hull, (i) => [x[i] as number, y[i] as number] as const));
}
