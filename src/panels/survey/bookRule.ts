/** The level book's one rule: which way its readings go, by the rods of its set-ups. */
import type { Setup } from "../../document";

export function bookRule(setups: readonly Pick<Setup, "rod">[]): string {
  const senses = new Set(setups.map(({ rod }) => rod.reads));
  if (senses.size > 1) return "Each set-up's rod says which way its readings go.";
  return `A bigger reading is ${senses.has("up") ? "higher" : "lower"} ground.`;
}
