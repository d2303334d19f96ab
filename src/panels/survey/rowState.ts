/** Why a row of the level book counts in nothing just now, and how sure a height is; in words. */
import type { Shot } from "../../document";
import type { LevelledPoint } from "../../solve/results";
import { formatPlusMinus } from "../../units";
import type { Notation } from "../notation";

export type RowState = "aside" | "kept-out" | "waiting" | "untied";

/** Null for a row that counts, or that is still empty. */
export function rowState(shot: Shot, point: LevelledPoint | undefined, isKeptOut: boolean): RowState | null {
  if (shot.aside) return "aside";
  if (isKeptOut) return "kept-out";
  if (point?.waiting) return "waiting";
  return shot.reading !== null && point !== undefined && point.height === null ? "untied" : null;
}

export const stateWords: Readonly<Record<RowState, string>> = {
  aside: "set aside: counts in nothing",
  "kept-out":
    "kept out: it contradicts the other readings that tie the set-up, so the beam isn't taken from it",
  waiting: "waits: the laser was bumped, nobody knows before or after this row",
  untied: "not tied: its set-up has no height yet",
};

/** The short word in the height's place. */
export const stateWord: Readonly<Record<RowState, string>> = {
  aside: "",
  "kept-out": "kept out",
  waiting: "waits",
  untied: "not tied",
};

/** As `plusMinus`, for a narrow cell: "±<⅛″". */
export function shortPlusMinus(sigma: number | null | undefined, notation: Notation): string {
  return plusMinus(sigma, notation).replace("± under ", "±<");
}

/** "±⅛″" where the beam's accuracy and the distances are known, else nothing. */
export function plusMinus(sigma: number | null | undefined, { display }: Notation): string {
  if (sigma === null || sigma === undefined || sigma === 0) return "";
  return formatPlusMinus(sigma, display.length, display.rounding);
}
