/**
 * Reads a length as people write it on a sketch, in a level book or on a drawing.
 *
 * Units   answer in metres; `notation` gives the unit of a number without one ("ft-in": feet).
 * Method  Marks and fractions are summed as whole numbers and divided once, so 62 5/8" is the nearest
 *         double to 1.590675 m.
 * Source  First principles; 1 in = 25.4 mm, 1 ft = 304.8 mm exactly.
 * Errors  What has two likely meanings is asked about, not guessed: a fraction without a mark outside an inch
 *         column, 5-2 outside a feet-and-inches column, 25/8 (2 5/8?), 12 inches or more beside feet, 1,250 feet.
 */
import { type LengthUnit, lengthTokens, plainSigns, type Quotient, type Token } from "./lengthTokens";
import type { LengthNotation } from "./notation";

export type ParsedLength =
  | { readonly ok: true; readonly m: number }
  | { readonly ok: false; readonly message: string };

/** Metres in a unit, as a quotient of whole numbers. */
const IN_METRES: Readonly<Record<LengthUnit, Quotient>> = {
  ft: { num: 3048, den: 10_000 },
  in: { num: 254, den: 10_000 },
  m: { num: 1, den: 1 },
  cm: { num: 1, den: 100 },
  mm: { num: 1, den: 1000 },
};

const UNIT_NAMES: Readonly<Record<LengthUnit, string>> = {
  ft: "feet",
  in: "inches",
  m: "metres",
  cm: "centimetres",
  mm: "millimetres",
};

/** What tapes, rules and scales are divided into. */
const DIVISIONS = [2, 3, 4, 5, 6, 8, 10, 12, 16, 20, 24, 32, 40, 50, 64, 100, 128];
/** Longer than any site and any map grid coordinate, m. */
const LONGEST = 1e8;

export function parseLength(text: string, notation: LengthNotation): ParsedLength {
  const plain = plainSigns(text);
  if (plain === "") return refuse(`Nothing is typed here yet. ${acceptedLengths(notation)}`);
  const tokens = lengthTokens(plain);
  const sign = tokens[0]?.text === "-" ? -1 : 1;
  if (tokens[0]?.text === "-" || tokens[0]?.text === "+") tokens.shift();
  const parts = readParts(tokens);
  if ("junk" in parts) return refuse(junkMessage(text, parts.before, parts.junk, notation));
  const length = interpret(parts.parts, notation);
  if (typeof length === "string") return refuse(`"${text.trim()}": ${length}`);
  const m = sign * (length.num / length.den) + 0; // + 0 turns -0 into 0
  if (!(Math.abs(m) <= LONGEST))
    return refuse(`"${text.trim()}" is longer than any site. ${acceptedLengths(notation)}`);
  return { ok: true, m };
}

/** A number, fraction or both, with the unit typed after it. */
interface Part {
  readonly text: string;
  readonly whole: (Token & { readonly kind: "number" }) | null;
  readonly fraction: (Token & { readonly kind: "fraction" }) | null;
  readonly unit: LengthUnit | null;
}

type Parts = { readonly parts: readonly Part[] } | { readonly before: string; readonly junk: string };

function readParts(tokens: readonly Token[]): Parts {
  const parts: Part[] = [];
  let at = 0;
  while (at < tokens.length) {
    const start = parts.length > 0 && tokens[at]?.kind === "dash" ? at + 1 : at;
    const [part, next] = readPart(tokens, start);
    if (part === null) return { before: words(tokens.slice(0, at)), junk: words(tokens.slice(at)) };
    parts.push(part);
    at = next;
  }
  return parts.length > 0 ? { parts } : { before: "", junk: "" };
}

function readPart(tokens: readonly Token[], start: number): [Part | null, number] {
  let at = start;
  const first = tokens[at];
  const whole = first?.kind === "number" ? first : null;
  if (whole !== null) at++;
  const dashed = whole !== null && tokens[at]?.kind === "dash" && tokens[at + 1]?.kind === "fraction";
  const second = tokens[dashed ? at + 1 : at];
  const fraction = second?.kind === "fraction" ? second : null;
  if (fraction !== null) at += dashed ? 2 : 1;
  if (whole === null && fraction === null) return [null, start];
  const mark = tokens[at];
  const unit = mark?.kind === "unit" ? mark.unit : null;
  if (unit !== null) at++;
  return [{ text: words(tokens.slice(start, at)), whole, fraction, unit }, at];
}

/** The length as a quotient, or a sentence that says why not. */
function interpret(parts: readonly Part[], notation: LengthNotation): Quotient | string {
  for (const part of parts) {
    const fault = partFault(part);
    if (fault !== null) return fault;
  }
  const [first, second] = parts;
  if (first === undefined || parts.length > 2)
    return `too many numbers for one length. ${acceptedLengths(notation)}`;
  return second === undefined ? single(first, notation) : feetAndInches(first, second, notation);
}

function single(part: Part, notation: LengthNotation): Quotient | string {
  const own = bareUnit(notation);
  if (part.unit === null && part.fraction !== null && own !== "in") {
    return (
      `a fraction without a mark could be inches or ${UNIT_NAMES[own]}. ` +
      `Write ${bareWords(part)}" for inches${own === "ft" ? `, ${bareWords(part)}' for feet` : ""}.`
    );
  }
  const unit = part.unit ?? own;
  const fault = commaFault(part, unit);
  return fault ?? times(quantity(part), IN_METRES[unit]);
}

function feetAndInches(feet: Part, inches: Part, notation: LengthNotation): Quotient | string {
  const marked = feet.unit === "ft";
  if ((feet.unit !== null && !marked) || (inches.unit !== null && inches.unit !== "in")) {
    return `only feet and inches go together in one length. ${acceptedLengths(notation)}`;
  }
  if (feet.fraction !== null || feet.whole?.value.den !== 1) {
    return `feet with inches beside them must be a whole number, found ${bareWords(feet)}.`;
  }
  const sure = marked || inches.fraction !== null || notation === "ft-in";
  const f = feet.whole?.text ?? feet.text;
  const i = bareWords(inches);
  if (!sure) {
    return `is it ${f} feet ${i} inches, or ${f} and a fraction? Write ${f}' ${i}" or ${f} ${i}/8".`;
  }
  const fault = commaFault(inches, "in");
  if (fault !== null) return fault;
  const over = quantity(inches);
  if (over.num >= 12 * over.den) {
    return `${i} inches beside feet: expected less than 12. Write ${i}" alone if it is all inches.`;
  }
  const whole = { num: 12 * feet.whole.value.num, den: 1 };
  return times(plus(whole, over), IN_METRES.in);
}

function partFault({ whole, fraction }: Part): string | null {
  if (fraction === null) return null;
  const { num, den } = fraction.value;
  if (den === 0) return `${fraction.text} divides by nothing.`;
  if (num >= den) return `${fraction.text} is not less than one. ${splitGuess(fraction.text)}`;
  if (!DIVISIONS.includes(den))
    return `no tape is divided into ${den} parts. Expected halves, quarters, 8ths, 16ths, 32nds.`;
  if (whole !== null && whole.value.den !== 1)
    return `a decimal and a fraction together, ${whole.text} and ${fraction.text}. Use one.`;
  return null;
}

/** 25/8 was most likely meant as 2 5/8. */
function splitGuess(fraction: string): string {
  const match = /^(\d+)(\d) ?\/ ?(\d+)$/.exec(fraction);
  if (match === null || Number(match[2]) >= Number(match[3]))
    return "Write whole inches and the rest apart, as in 2 5/8.";
  return `Is it ${match[1]} ${match[2]}/${match[3]}? Then put a space or a dash between.`;
}

/** 1,250 mm is 1250 to one person and 1.25 to another; in metres and centimetres the comma is a decimal sign. */
function commaFault({ whole }: Part, unit: LengthUnit): string | null {
  if (whole === null || unit === "m" || unit === "cm" || !/^[1-9]\d{0,2},\d{3}$/.test(whole.text))
    return null;
  const [before, after] = whole.text.split(",");
  return `is it ${before}${after} or ${before}.${after} ${UNIT_NAMES[unit]}? Write it without the comma, or with a point.`;
}

function quantity({ whole, fraction }: Part): Quotient {
  const zero = { num: 0, den: 1 };
  return plus(whole?.value ?? zero, fraction?.value ?? zero);
}

function plus(a: Quotient, b: Quotient): Quotient {
  if (b.num === 0) return a;
  return { num: a.num * b.den + b.num * a.den, den: a.den * b.den };
}

function times(a: Quotient, b: Quotient): Quotient {
  return { num: a.num * b.num, den: a.den * b.den };
}

function bareUnit(notation: LengthNotation): LengthUnit {
  return notation === "ft-in" ? "ft" : notation;
}

function words(tokens: readonly Token[]): string {
  return tokens
    .map((token) => token.text)
    .join(" ")
    .replace(/ (['"])/g, "$1");
}

/** The part without its unit, fraction after a space. */
function bareWords({ whole, fraction }: Part): string {
  return [whole?.text, fraction?.text].filter((text) => text !== undefined).join(" ");
}

/** One sentence that shows the forms that are taken, for messages and hints. */
export function acceptedLengths(notation: LengthNotation): string {
  return (
    `Write a length like 62 5/8", 5' 2 5/8", 5.22 ft, 1.591 m or 1591 mm; ` +
    `a number alone is taken as ${UNIT_NAMES[bareUnit(notation)]}.`
  );
}

function junkMessage(text: string, before: string, junk: string, notation: LengthNotation): string {
  if (before === "" || junk === "")
    return `Can't read "${text.trim()}" as a length. ${acceptedLengths(notation)}`;
  return `Understood ${before}, but not "${junk}" after it. ${acceptedLengths(notation)}`;
}

function refuse(message: string): ParsedLength {
  return { ok: false, message };
}
