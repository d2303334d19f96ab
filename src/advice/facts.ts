/** What the floor's rules ask of the site. Metres; slopes rise over run. */
import type { Apron, Foundation, Rules } from "../document/schema";
import type { Point } from "../geometry";
import type { BandRule } from "../solve/results";

/** A height at a named place. */
export interface Spot {
  readonly height: number;
  readonly place: string;
  readonly at: Point;
}

/** Floor heights at which a drive just reaches the steepest grade, climbing and falling to the door. */
export interface DriveLimits {
  readonly name: string;
  readonly climbing: number;
  readonly falling: number;
  /** Floors at which the grade just breaks by the most allowed, going up and coming down; null: a curve eases it. */
  readonly breaks: { readonly where: "landing" | "door"; readonly up: number; readonly down: number } | null;
  readonly at: Point;
}

export interface AdviceFacts {
  readonly topOfWallAboveFloor: number;
  readonly foundation: Foundation;
  readonly apron: Apron;
  readonly rules: Rules;
  readonly stripDepth: number;
  /** Existing ground: highest near the walls; lowest and highest along the walls; lowest inside them. */
  readonly uphill: Spot;
  readonly lowestAtWalls: Spot;
  readonly highestAtWalls: Spot;
  readonly lowestInside: Spot;
  /** Lowest along the walls in front of which the ground stays as it is; null: no such wall. */
  readonly lowestLeft?: Spot | null;
  readonly drives: readonly DriveLimits[];
  /** Highest bed of a swale near the walls. */
  readonly swaleNear: Spot | null;
  /** Highest water level of a pond near the walls. */
  readonly pondNear: Spot | null;
  /** Prints a length in the project's notation. */
  readonly length: (metres: number) => string;
}

export const practice = "common practice; no code is cited";

/** A rule before its switch. */
export type Rule = Omit<BandRule, "on">;

export function spot({ place, at }: Spot): { place: string; at: [number, number] } {
  return { place, at: [...at] };
}
