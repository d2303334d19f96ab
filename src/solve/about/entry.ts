/** What a figure of the results as JSON is: the path to it, its unit, and the rule that it comes by. */

/**
 * The path as `results-json` writes it: names with points between, `[]` for every item of a list, `*` for any one name.
 * The first entry that fits a figure counts.
 */
export type Entry = readonly [path: string, unit: Unit, rule: string];

export type Unit =
  | "m"
  | "m2"
  | "m3"
  | "m3/s"
  | "m/s"
  | "s"
  | "rad"
  | "kg"
  | "kg/m3"
  | "rise over run"
  | "run for one of rise"
  | "0 to 1"
  | "count"
  | "index"
  | "loads"
  | "1"
  | "money"
  | "money for one unit"
  | "as `unit` beside it"
  | "as the document keeps it"
  | "m3, m2, m, 1 (of t⁰, t¹, t², t³)";

export const onPlan = "place on the plan, x east then y north";
