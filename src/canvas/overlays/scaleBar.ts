/** The length of the scale bar: the largest usual length that is not wider than its room. */
import { FOOT, formatLength, type LengthNotation } from "../../units";

const feet = [1 / 12, 1 / 6, 1 / 4, 1 / 2, 1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000];
const metres = [0.02, 0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100, 200, 500, 1000];

/** No bar is longer, px. Its room stays, so that what is fitted beside it doesn't depend on the zoom. */
export const barRoom = 130;
/** On a plan that is narrower than this, px, the bar takes half as much: the plan needs the room. */
const narrowPlan = 560;

export function barRoomOn(planWidth: number): number {
  return planWidth < narrowPlan ? barRoom / 2 : barRoom;
}

export interface ScaleBarLength {
  readonly m: number;
  readonly px: number;
  readonly text: string;
}

export function scaleBarLength(notation: LengthNotation, scale: number, room = barRoom): ScaleBarLength {
  const inFeet = notation === "ft-in" || notation === "in" || notation === "ft";
  const lengths = inFeet ? feet.map((each) => each * FOOT) : metres;
  const m = [...lengths].reverse().find((length) => length * scale <= room) ?? (lengths[0] as number);
  return { m, px: m * scale, text: inFeet ? feetText(m) : metreText(m) };
}

function feetText(m: number): string {
  return m < FOOT ? formatLength(m, "in", 1) : formatLength(m, "ft", 0);
}

function metreText(m: number): string {
  return m < 0.1 ? formatLength(m, "cm", 0) : formatLength(m, "m", m < 1 ? 1 : 0);
}
