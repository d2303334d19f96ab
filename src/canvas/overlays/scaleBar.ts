/** The length of the scale bar: the largest usual length that is not wider than its room. */
import { FOOT, formatLength, type LengthNotation } from "../../units";

const feet = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000];
const metres = [0.2, 0.5, 1, 2, 5, 10, 20, 50, 100, 200, 500, 1000];

export interface ScaleBarLength {
  readonly m: number;
  readonly px: number;
  readonly text: string;
}

export function scaleBarLength(notation: LengthNotation, scale: number, room: number): ScaleBarLength {
  const inFeet = notation === "ft-in" || notation === "in" || notation === "ft";
  const lengths = inFeet ? feet.map((each) => each * FOOT) : metres;
  const m = [...lengths].reverse().find((length) => length * scale <= room) ?? (lengths[0] as number);
  const text = inFeet ? formatLength(m, "ft", 0) : formatLength(m, "m", m < 1 ? 1 : 0);
  return { m, px: m * scale, text };
}
