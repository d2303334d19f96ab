import type { Thing } from "../../document";
import type { StepName } from "../../store/state";

/** Steps that deal with a kind of thing; what isn't named is looked at in any of them. */
const steps: Partial<Record<Thing["kind"], readonly StepName[]>> = {
  lot: ["lot"],
  feature: ["lot"],
  shot: ["shots", "setout"],
  building: ["building", "foundation"],
  door: ["building", "foundation"],
  window: ["building", "foundation"],
  mark: ["shots", "setout"],
  breakline: ["shots"],
  pit: ["shots", "foundation"],
  drive: ["drive"],
  pad: ["drive"],
  berm: ["drive"],
  "retaining-wall": ["drive"],
  "grade-point": ["drive"],
  swale: ["water"],
};

/** Does the inspector of these things belong to the step? Elsewhere it gives way to the step's own answer. */
export function belongsToStep(things: readonly Thing[], step: StepName): boolean {
  return things.every(({ kind }) => steps[kind]?.includes(step) ?? true);
}
