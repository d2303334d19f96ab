/**
 * Cut and fill inside and outside the walls, and both against the floor height.
 *
 * Units   metres, m2, m3 in the ground.
 * Method  Inside exact on the triangulated ground (clipped prisms); outside on the grid. The error outside is
 *         the difference to a grid of about three and a half times the cell: more than what is left of it here.
 */
import type { VolumeCurve } from "../earthwork";
import type { FoundationLevels } from "../foundation";
import { type Finished, finishHeights, type Layout, type OutsideVolumes, sumOutside } from "../grading";
import type { CurvePoint, EarthworkResult } from "./results";

/** Floor heights of the curve. */
const curvePoints = 41;

export interface EarthworkInput {
  readonly levels: FoundationLevels;
  readonly curve: VolumeCurve;
  readonly finished: Finished;
  readonly buildingArea: number;
  /** Error of cut and fill outside, m3. */
  readonly error: number;
}

export function earthworkResult(input: EarthworkInput): EarthworkResult {
  const { levels, curve, buildingArea, error } = input;
  const { outside } = input.finished;
  const inside = curve.at(levels.undersideOfBase);
  const total = { cut: inside.cut + outside.cut, fill: inside.fill + outside.fill };
  const moved = total.cut + total.fill;
  const guessed = inside.guessedCut + inside.guessedFill + outside.guessed;
  return {
    inside: {
      cut: inside.cut,
      fill: inside.fill,
      area: buildingArea,
      greatestCut: inside.greatestCut,
      greatestFill: inside.greatestFill,
    },
    outside: { cut: outside.cut, fill: outside.fill, area: outside.area, error },
    total,
    guessedShare: moved > 0 ? Math.min(1, guessed / moved) : 0,
    disturbedArea: buildingArea + outside.area,
  };
}

/** Earth to move once the topsoil is off: lowering the ground by the strip is raising the plane by it. */
export function strippedEarth(
  curve: VolumeCurve,
  levels: FoundationLevels,
  strip: number,
  outside: OutsideVolumes,
): { cut: number; fill: number; fillInside: number } {
  const inside = curve.at(levels.undersideOfBase + strip);
  return {
    cut: inside.cut + outside.strippedCut,
    fill: inside.fill + outside.strippedFill,
    fillInside: inside.fill,
  };
}

/** How much the sums outside the walls change on a coarser grid, m3: the estimate of their error. */
export function outsideError(finished: Finished, coarse: Layout): number {
  const there = outsideAt(coarse, finished.floor, new Float64Array(coarse.existing.length));
  const { cut, fill } = finished.outside;
  return Math.abs(cut - there.cut) + Math.abs(fill - there.fill);
}

/** Cut and fill at floor heights from low to high. It depends on the layout alone. */
export function volumeAgainstFloor(
  coarse: Layout,
  curve: VolumeCurve,
  undersideBelowFloor: number,
  low: number,
  high: number,
): CurvePoint[] {
  const heights = new Float64Array(coarse.existing.length);
  return Array.from({ length: curvePoints }, (_, i) => {
    const floor = low + ((high - low) * i) / (curvePoints - 1);
    const outside = outsideAt(coarse, floor, heights);
    const inside = curve.at(floor - undersideBelowFloor);
    return { floor, cut: inside.cut + outside.cut, fill: inside.fill + outside.fill };
  });
}

const noTopsoil = { stripDepth: 0, respread: 0 };

function outsideAt(layout: Layout, floor: number, heights: Float64Array): OutsideVolumes {
  return sumOutside(layout, floor, finishHeights(layout.prepared, floor, heights), noTopsoil);
}
