/** Where a figure comes from: what a person is told beside it. Every value is written in the project's own notation. */
import type { Project } from "../../document/schema";
import type { Results } from "../../solve/results";

export interface WhyInput {
  readonly name: string;
  readonly figure: string;
}

export interface Why {
  /** What the figure is: "Bottom of trench". */
  readonly title: string;
  /** The figure as the window shows it. */
  readonly figure: string;
  readonly inputs: readonly WhyInput[];
  /** The rule in words. */
  readonly rule: string;
  /** The rule as a formula in words. */
  readonly formula: string;
  /** Where the rule comes from. */
  readonly source: string;
}

export type WhyKind =
  | "beam"
  | "shot"
  | "area"
  | "lot area"
  | "corner"
  | "limit"
  | "trench"
  | "drive"
  | "swale"
  | "swale peak"
  | "swale depth"
  | "swale speed"
  | "pipe"
  | "swale catchment"
  | "pond"
  | "leaving"
  | "roof side"
  | "footing drain"
  | "wall"
  | "bill"
  | "setout";

/**
 * A figure that can be asked about. `id` tells which: of a set-up, shot, rule, drive, swale or bill item its id, of a pipe its name, of a pond the place of its deepest spot, of
 * a corner its name, of a wall or a row to set out its index; of areas and the trench there is one each.
 */
export interface WhyTopic {
  readonly kind: WhyKind;
  readonly id: string;
}

/** How figures are written; the window passes the project's notation. */
export interface Figures {
  length(m: number): string;
  signed(m: number): string;
  reading(m: number): string;
  area(m2: number): string;
  volume(m3: number): string;
  slope(ratio: number): string;
  mass(kg: number): string;
  flow(m3PerSecond: number): string;
  speed(mPerSecond: number): string;
  rain(mPerSecond: number): string;
  bore(m: number): string;
}

export interface Asked {
  readonly project: Project;
  readonly results: Results;
  readonly figures: Figures;
}

export const firstPrinciples = "first principles";

/** A plain number such as swell: three decimals at most. */
export function plainNumber(value: number): string {
  return String(Number(value.toFixed(3)));
}
