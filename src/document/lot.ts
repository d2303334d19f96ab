/** The lot as figures may lean on it. */
import { type Point, ringsSelfCross, signedArea } from "../geometry";
import type { Lot } from "./schema";

/** Lines round less than this are a slip of the hand, m2. */
const leastLot = 1;

/** What keeps the lot's lines from having an inside; null where they have one, or aren't drawn yet. */
export function lotFault(outline: readonly Point[]): "crosses" | "encloses-nothing" | null {
  if (outline.length < 3) return null;
  if (ringsSelfCross(outline)) return "crosses";
  return Math.abs(signedArea(outline)) > leastLot ? null : "encloses-nothing";
}

/** The lot with its lines where they have an inside, else without: no figure leans on lines that cross. */
export function soundLot(lot: Lot): Lot {
  return lotFault(lot.outline) === null ? lot : { ...lot, outline: [] };
}
