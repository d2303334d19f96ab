/**
 * What one step of the floor does to fill, cut and loads.
 *
 * Units   metres, m3 (fill as compacted, cut in the bank, topsoil off), loads of the user's truck.
 * Method  The bill a step higher less the bill here, both on the layout's grid, so that what the grid leaves out falls away.
 *         Loads aren't rounded up: that is how they follow the floor.
 * Source  First principles; swell, shrink and the truck are the user's figures.
 */
import type { Truck } from "../document/schema";
import { finishHeights, type Layout, sumOutside } from "../grading";
import { INCH } from "../units";
import { billAt, type FloorParts, type Reckoned, type ReckonedSite } from "./floor-parts";
import type { BillItem, CurvePoint, OneStep } from "./results";

/** An inch and ten millimetres of floor. */
const steps = [INCH, 0.01];

/** Cut and fill at a floor height, between the curve's points in a straight line; null outside the curve. */
export function curveAt(curve: readonly CurvePoint[], floor: number): CurvePoint | null {
  const index = curve.findIndex((point) => point.floor >= floor);
  const above = curve[index];
  const below = curve[index - 1];
  if (!above) return null;
  if (!below) return above.floor === floor ? above : null;
  const share = (floor - below.floor) / (above.floor - below.floor);
  const mix = (a: number, b: number) => a + share * (b - a);
  return { floor, cut: mix(below.cut, above.cut), fill: mix(below.fill, above.fill) };
}

export interface StepInput {
  readonly site: ReckonedSite;
  readonly project: Reckoned;
  readonly partsAt: (floor: number) => FloorParts;
}

/** An inch and a centimetre higher than a floor. */
export function oneStepUp(layout: Layout, { site, project, partsAt }: StepInput, floor: number): OneStep[] {
  const heights = new Float64Array(layout.existing.length);
  const at = (height: number) => {
    const outside = sumOutside(
      layout,
      height,
      finishHeights(layout.prepared, height, heights),
      project.materials,
    );
    return earthOf(billAt(site, partsAt(height), outside, project), project.truck);
  };
  const here = at(floor);
  return steps.map((step) => {
    const above = at(floor + step);
    return {
      step,
      fill: above.fill - here.fill,
      cut: above.cut - here.cut,
      loadsIn: above.loadsIn - here.loadsIn,
      loadsOut: above.loadsOut - here.loadsOut,
    };
  });
}

function earthOf(bill: readonly BillItem[], truck: Truck): Omit<OneStep, "step"> {
  const quantity = (id: string) => bill.find((item) => item.id === id)?.quantity ?? 0;
  const loads = (id: string) => partLoads(bill.find((item) => item.id === id)?.trucked ?? null, truck);
  return {
    fill: quantity("fill"),
    cut: quantity("cut"),
    loadsIn: loads("fill-loose") + loads("slab-fill-loose"),
    loadsOut: loads("cut-loose") + loads("trench-left"),
  };
}

function partLoads(trucked: BillItem["trucked"], { volume, payload }: Truck): number {
  if (!trucked) return 0;
  return Math.max(trucked.loose / volume, payload === null ? 0 : trucked.mass / payload);
}
