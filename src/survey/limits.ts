/** When readings disagree too much. Common practice for a rotary laser on a building site; no source. */
import { formatLength, type LengthNotation } from "../units";

/** About 1/4 in: more than the reading error of a laser and receiver, so the tripod may have moved, m. */
const LASER_MOVED = 0.006;
/** About 1 in, what earthwork is held to: beyond it heights are of no use, m. */
export const GROSS_ERROR = 0.025;
/** 25 ft, the longest rods in common use, m. */
export const LONGEST_ROD = 7.62;
/** A reading so many times the middle one of its set-up was likely typed in another unit (feet for inches: 12). */
export const MUCH_LARGER = 10;
/** The same the other way; a point just below the beam has an honestly small reading, so this is looser. */
export const MUCH_SMALLER = 50;
/** Beyond a rod's length so many times the middle one is asked about; else the site is just steep. */
export const LARGER = 3;

/** Subtracting heights leaves rounding far below this, m; a difference of just a limit is still within it. */
const ROUNDING = 1e-9;

/** A second look within this found the beam where it was. */
export const BEAM_MOVED = LASER_MOVED + ROUNDING;

/** How grave a disagreement is: null while it is within what readings scatter anyway. */
export function gravity(m: number): "caution" | "error" | null {
  if (Math.abs(m) > GROSS_ERROR + ROUNDING) return "error";
  return Math.abs(m) > LASER_MOVED + ROUNDING ? "caution" : null;
}

/** A small distance as the project writes lengths, finely: "½″", "0.04 ft", "12 mm"; both ways where it has no notation. */
export function apart(m: number, notation: LengthNotation | null): string {
  const small = Math.abs(m);
  const millimetres = formatLength(small, "mm", 0);
  const inches = formatLength(small, "in", 16);
  if (notation === null) return `${millimetres} (${inches})`;
  if (notation === "ft") return formatLength(small, "ft", 2);
  // A blunder of metres isn't counted in inches.
  if (small > 1)
    return formatLength(
      small,
      notation === "in" ? "ft-in" : notation,
      notation === "ft-in" || notation === "in" ? 8 : 3,
    );
  return notation === "ft-in" || notation === "in" ? inches : millimetres;
}
