import type { LengthNotation } from "./notation";

/** A round figure that is written in feet and in metres, in both, the plan's own first: "4 ft (1.2 m)", "1.2 m (4 ft)". */
export function bothUnits(feet: string, metric: string, notation: LengthNotation): string {
  const inFeet = notation === "ft-in" || notation === "in" || notation === "ft";
  return inFeet ? `${feet} (${metric})` : `${metric} (${feet})`;
}
