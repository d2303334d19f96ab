/** A beam's accuracy as data sheets print it: so much at such a distance, or an angle. Inside: rise over run. */
import { formatLength, roundingStep } from "./formatLength";
import { plainSigns } from "./lengthTokens";
import type { LengthNotation } from "./notation";
import { parseLength } from "./parseLength";

export type ParsedAccuracy =
  | { readonly ok: true; readonly ratio: number }
  | { readonly ok: false; readonly message: string };

const ACCEPTED = `Write it as on the data sheet: 1/16" at 100', 3 mm at 30 m, 0.1 mm/m or 10 arc seconds.`;
const ARC_SECOND = Math.PI / 180 / 3600;
const SECONDS = /^(\d+(?:[.,]\d+)?) ?(?:"|arc ?-?sec(?:ond)?s?\.?|sec(?:ond)?s?(?: of arc)?\.?)$/;
/** 10 % is no laser: whoever typed it meant something else. */
const WORST = 0.1;

/** Reads `1/16" at 100'`, `±3 mm at 30 m`, `3 mm in 10 m`, `0.1 mm/m`, `10 arc seconds`. */
export function parseBeamAccuracy(text: string): ParsedAccuracy {
  const plain = plainSigns(text)
    .toLowerCase()
    .replace(/^(?:±|\+ ?\/? ?-) ?/, "");
  const refuse = (why: string): ParsedAccuracy => ({ ok: false, message: `${why} ${ACCEPTED}` });
  if (plain === "") return refuse("Nothing is typed here yet.");
  const seconds = SECONDS.exec(plain);
  const ratio =
    seconds === null ? errorAtDistance(plain) : Math.tan(Number(seconds[1]?.replace(",", ".")) * ARC_SECOND);
  if (ratio === null || !(ratio > 0)) return refuse(`Can't read "${text.trim()}" as a beam's accuracy.`);
  if (ratio > WORST) return refuse(`"${text.trim()}" is more than one in ten, which no laser is.`);
  return { ok: true, ratio };
}

function errorAtDistance(plain: string): number | null {
  const split =
    /^(.+?) ?(?:\bat\b|@|\bper\b|\bover\b) ?(.+)$/.exec(plain) ??
    /^(.*[a-z'"]\.?) ?\/ ?(.+)$/.exec(plain) ??
    /^(.*(?:mm|cm|"|\bin\b)) in (.+)$/.exec(plain);
  if (split === null) return null;
  const [, small = "", far = ""] = split;
  if (!/[a-z'"]/.test(small) || !/[a-z'"]/.test(far)) return null;
  const error = parseLength(small, "in");
  const distance = parseLength(/\d/.test(far) ? far : `1 ${far}`, "ft");
  return error.ok && distance.ok && distance.m > 0 ? error.m / distance.m : null;
}

/** "±⅛″"; what is below the smallest step shown is said to be under it, for nothing is exact. */
export function formatPlusMinus(sigma: number, notation: LengthNotation, rounding: number): string {
  if (!Number.isFinite(sigma)) return "–";
  const step = roundingStep(notation, rounding);
  return Math.abs(sigma) < step
    ? `± under ${formatLength(step, notation, rounding)}`
    : `±${formatLength(Math.abs(sigma), notation, rounding)}`;
}
