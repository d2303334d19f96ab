/** A guide to each step of the job. */
import { drive, floor, water } from "./earth";
import type { GuideStep, StepGuide } from "./guide";
import { building, lot, shots } from "./site";
import { foundation, quantities, setout, sheets } from "./work";

export { type GuideStep, guideSteps, type StepGuide } from "./guide";

export const guides: Readonly<Record<GuideStep, StepGuide>> = {
  lot,
  shots,
  building,
  drive,
  water,
  floor,
  foundation,
  quantities,
  setout,
  sheets,
};

/** All texts of a guide, in reading order. */
export function textsOf(guide: StepGuide): readonly string[] {
  return [guide.about, ...guide.doing, ...guide.watch, ...guide.slips, ...guide.cautions, guide.caption];
}
