/**
 * Prints a length as it is read on a tape, a rod or a drawing: 5′ 2⅝″, 62⅝″, 5.22′, 1.591 m, 1591 mm.
 *
 * Units     `m` in metres. `rounding` is the smallest fraction's denominator for inch notations (1 to 32, a power
 *           of two) and the number of decimals for the others.
 * Sign      minus is U+2212; what rounds to nothing has no sign.
 * Limits    a rounding that a notation can't show (8 decimals of a millimetre) gives way to the usual one.
 */
import { FOOT, INCH } from "./constants";
import type { LengthNotation } from "./notation";

const MINUS = "\u2212";
/** Stands for a figure that doesn't exist. */
const NO_FIGURE = "–";

const READY: Readonly<Record<string, string>> = {
  "1/2": "½",
  "1/4": "¼",
  "3/4": "¾",
  "1/8": "⅛",
  "3/8": "⅜",
  "5/8": "⅝",
  "7/8": "⅞",
};

const USUAL: Readonly<Record<LengthNotation, number>> = { "ft-in": 8, in: 8, ft: 2, m: 3, cm: 1, mm: 0 };
const MOST_DECIMALS = { ft: 4, m: 4, cm: 2, mm: 1 } as const;
const DECIMAL_UNITS = {
  ft: { metres: FOOT, sign: "′" },
  m: { metres: 1, sign: " m" },
  cm: { metres: 0.01, sign: " cm" },
  mm: { metres: 0.001, sign: " mm" },
} as const;

export function formatLength(m: number, notation: LengthNotation, rounding: number): string {
  if (!Number.isFinite(m)) return NO_FIGURE;
  const amount = formatAmount(Math.abs(m), notation, rounding);
  return m < 0 && !isNothing(m, notation, rounding) ? MINUS + amount : amount;
}

/** With + or −; nothing before what rounds to zero. */
export function formatSigned(m: number, notation: LengthNotation, rounding: number): string {
  const text = formatLength(m, notation, rounding);
  return m > 0 && Number.isFinite(m) && !isNothing(m, notation, rounding) ? `+${text}` : text;
}

/** "1′ 2″ above", "1′ 2″ below", "level". */
export function formatAboveBelow(m: number, notation: LengthNotation, rounding: number): string {
  return inWords(m, notation, rounding, ["above", "below", "level"]);
}

/** Depth = finished − existing: "1′ 2″ of fill", "3½″ of cut", "no change". */
export function depthInWords(depth: number, notation: LengthNotation, rounding: number): string {
  return inWords(depth, notation, rounding, ["of fill", "of cut", "no change"]);
}

/** The smallest step that the notation shows at this rounding, m. */
export function roundingStep(notation: LengthNotation, rounding: number): number {
  const places = usable(notation, rounding);
  if (notation === "ft-in" || notation === "in") return INCH / places;
  return DECIMAL_UNITS[notation].metres / 10 ** places;
}

/**
 * The rounding for one notation of a project: the chosen one where it is of the same kind (fractions or decimals)
 * as the project's lengths, else the usual one (⅛ in, 0.01 ft, 0.001 m, 0.1 cm, 1 mm).
 */
export function roundingFor(
  notation: LengthNotation,
  display: { readonly length: LengthNotation; readonly rounding: number },
): number {
  const same = notation === display.length || (isInches(notation) && isInches(display.length));
  return same ? display.rounding : USUAL[notation];
}

type Words = readonly [positive: string, negative: string, zero: string];

function inWords(m: number, notation: LengthNotation, rounding: number, words: Words): string {
  if (!Number.isFinite(m)) return NO_FIGURE;
  if (isNothing(m, notation, rounding)) return words[2];
  return `${formatAmount(Math.abs(m), notation, rounding)} ${m > 0 ? words[0] : words[1]}`;
}

function formatAmount(m: number, notation: LengthNotation, rounding: number): string {
  const places = usable(notation, rounding);
  if (notation === "in" || notation === "ft-in") {
    const parts = Math.round((m / INCH) * places);
    const perFoot = 12 * places;
    const feet = notation === "ft-in" ? Math.floor(parts / perFoot) : 0;
    const inches = `${inchParts(parts - feet * perFoot, places, feet > 0)}″`;
    return feet > 0 ? `${feet}′ ${inches}` : inches;
  }
  const unit = DECIMAL_UNITS[notation];
  return fixed(m / unit.metres, places) + unit.sign;
}

/** Whole inches and a real fraction in lowest terms; a fraction alone has no 0 before it unless feet stand there. */
function inchParts(parts: number, denominator: number, besideFeet: boolean): string {
  const whole = Math.floor(parts / denominator);
  let num = parts - whole * denominator;
  if (num === 0) return String(whole);
  let den = denominator;
  while (num % 2 === 0) {
    num /= 2;
    den /= 2;
  }
  return (whole > 0 || besideFeet ? String(whole) : "") + fractionSign(num, den);
}

function fractionSign(num: number, den: number): string {
  return READY[`${num}/${den}`] ?? `${digits(num, "⁰¹²³⁴⁵⁶⁷⁸⁹")}\u2044${digits(den, "₀₁₂₃₄₅₆₇₈₉")}`;
}

function digits(n: number, alphabet: string): string {
  return [...String(n)].map((digit) => alphabet[Number(digit)]).join("");
}

/** Rounds halves up, as 5.225′ typed by a person should, though 5.225 has no exact double. */
function fixed(value: number, decimals: number): string {
  const scale = 10 ** decimals;
  const scaled = value * scale;
  const whole = Math.round(scaled * (1 + Number.EPSILON));
  return (whole / scale).toFixed(decimals);
}

function isNothing(m: number, notation: LengthNotation, rounding: number): boolean {
  return !/[1-9½¼¾⅛⅜⅝⅞¹²³⁴⁵⁶⁷⁸⁹]/.test(formatAmount(Math.abs(m), notation, rounding));
}

function usable(notation: LengthNotation, rounding: number): number {
  const good = isInches(notation)
    ? [1, 2, 4, 8, 16, 32].includes(rounding)
    : Number.isInteger(rounding) && rounding >= 0 && rounding <= MOST_DECIMALS[notation];
  return good ? rounding : USUAL[notation];
}

function isInches(notation: LengthNotation): notation is "ft-in" | "in" {
  return notation === "ft-in" || notation === "in";
}
