/** Reads and prints angles: radians inside, degrees (or degrees, minutes, seconds) outside. */
import { plainSigns } from "./lengthTokens";

export type ParsedAngle =
  | { readonly ok: true; readonly radians: number }
  | { readonly ok: false; readonly message: string };

const ACCEPTED = `Write an angle like 15, 15.5°, 15-30-20 or 15° 30' 20".`;
const ANGLE =
  /^([+-]?) ?(\d+(?:[.,]\d+)?|[.,]\d+)(?: ?(?:°|º|deg(?:rees?)?\b\.?)(?: ?(\d+(?:[.,]\d+)?) ?')?(?: ?(\d+(?:[.,]\d+)?) ?")?)?$/i;

/** "15.5°"; the number of decimals is one unless given. */
export function formatAngle(radians: number, decimals = 1): string {
  if (!Number.isFinite(radians)) return "–";
  const degrees = Math.abs((radians * 180) / Math.PI).toFixed(decimals);
  return `${radians < 0 && Number(degrees) > 0 ? "\u2212" : ""}${degrees}°`;
}

/** 315-30-00, 315:30:00 and 315 30 00, as surveyors type degrees, minutes and seconds, with their signs. */
function inSigns(plain: string): string {
  const parts = /^([+-]?) ?(\d+)([-: ])(\d+)(?:\3(\d+(?:[.,]\d+)?))?$/.exec(plain);
  const [, sign, degrees, between, minutes, seconds] = parts ?? [];
  // Two figures with a space between could be anything.
  if (parts === null || (between === " " && seconds === undefined)) return plain;
  return `${sign}${degrees}° ${minutes}'${seconds === undefined ? "" : ` ${seconds}"`}`;
}

export function parseAngle(text: string): ParsedAngle {
  const plain = inSigns(plainSigns(text));
  const match = ANGLE.exec(plain);
  if (match === null) {
    const lead = plain === "" ? "Nothing is typed here yet." : `Can't read "${text.trim()}" as an angle.`;
    return { ok: false, message: `${lead} ${ACCEPTED}` };
  }
  const [, sign, degrees = "0", minutes = "0", seconds = "0"] = match;
  const [d = 0, m = 0, s = 0] = [degrees, minutes, seconds].map((part) => Number(part.replace(",", ".")));
  if (m >= 60 || s >= 60) {
    return { ok: false, message: `"${text.trim()}": minutes and seconds stay below 60. ${ACCEPTED}` };
  }
  if (d > 360)
    return { ok: false, message: `"${text.trim()}" is more than a full turn of 360°. ${ACCEPTED}` };
  const value = ((d + m / 60 + s / 3600) * Math.PI) / 180;
  return { ok: true, radians: (sign === "-" ? -value : value) + 0 };
}
