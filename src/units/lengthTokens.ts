/**
 * Splits a typed length into numbers, fractions, unit marks and dashes, whatever primes, dashes, spaces and
 * ready-made fractions a keyboard or a copied text holds.
 */
import { halfWidth } from "./halfWidth";

export type LengthUnit = "ft" | "in" | "m" | "cm" | "mm";

/** An exact quotient of whole numbers, both safe integers unless very many digits were typed. */
export interface Quotient {
  readonly num: number;
  readonly den: number;
}

export type Token =
  | { readonly kind: "number"; readonly text: string; readonly value: Quotient }
  | { readonly kind: "fraction"; readonly text: string; readonly value: Quotient }
  | { readonly kind: "unit"; readonly text: string; readonly unit: LengthUnit }
  | { readonly kind: "dash"; readonly text: string }
  | { readonly kind: "other"; readonly text: string };

const READY_FRACTIONS: Readonly<Record<string, string>> = {
  "½": "1/2",
  "⅓": "1/3",
  "⅔": "2/3",
  "¼": "1/4",
  "¾": "3/4",
  "⅕": "1/5",
  "⅖": "2/5",
  "⅗": "3/5",
  "⅘": "4/5",
  "⅙": "1/6",
  "⅚": "5/6",
  "⅛": "1/8",
  "⅜": "3/8",
  "⅝": "5/8",
  "⅞": "7/8",
  "⅒": "1/10",
};

const UNIT_WORDS: Readonly<Record<string, LengthUnit>> = {
  "'": "ft",
  ft: "ft",
  foot: "ft",
  feet: "ft",
  '"': "in",
  in: "in",
  inch: "in",
  inches: "in",
  m: "m",
  metre: "m",
  metres: "m",
  meter: "m",
  meters: "m",
  cm: "cm",
  centimetre: "cm",
  centimetres: "cm",
  centimeter: "cm",
  centimeters: "cm",
  mm: "mm",
  millimetre: "mm",
  millimetres: "mm",
  millimeter: "mm",
  millimeters: "mm",
};

/** One spelling for every sign: ' and " for primes, - for dashes, n/d for fractions, single spaces. */
export function plainSigns(text: string): string {
  return halfWidth(text)
    .replace(/[⁰¹²³⁴⁵⁶⁷⁸⁹]+\u2044[₀₁₂₃₄₅₆₇₈₉]+/g, (fraction) => ` ${fraction.normalize("NFKC")} `)
    .replace(/[½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞⅒]/g, (sign) => ` ${READY_FRACTIONS[sign]} `)
    .replace(/[\u2044\u2215]/g, "/")
    .replace(/[″“”„ʺ〃]|['′’‘ʹ´`]{2}/g, '"')
    .replace(/[′’‘ʹ´`]/g, "'")
    .replace(/[‐‑‒–—−]/g, "-")
    .replace(/\s+/g, " ")
    .trim();
}

const TOKEN = /(\d+) ?\/ ?(\d+)|(\d+(?:[.,]\d+)?|[.,]\d+)|([a-z]+\.?|['"])|(-)|([^\s])/giy;

export function lengthTokens(plain: string): Token[] {
  const tokens: Token[] = [];
  let at = 0;
  while (at < plain.length) {
    if (plain[at] === " ") {
      at++;
      continue;
    }
    TOKEN.lastIndex = at;
    const match = TOKEN.exec(plain);
    if (match === null) break;
    at += match[0].length;
    tokens.push(toToken(match));
  }
  return tokens;
}

function toToken(match: RegExpExecArray): Token {
  const [text, num, den, number, word, dash] = match;
  if (num !== undefined && den !== undefined) {
    return { kind: "fraction", text, value: { num: Number(num), den: Number(den) } };
  }
  if (number !== undefined) return { kind: "number", text, value: decimalQuotient(number) };
  if (dash !== undefined) return { kind: "dash", text };
  const unit = word === undefined ? undefined : UNIT_WORDS[word.toLowerCase().replace(/\.$/, "")];
  return unit === undefined ? { kind: "other", text } : { kind: "unit", text, unit };
}

function decimalQuotient(text: string): Quotient {
  const [whole = "", decimals = ""] = text.split(/[.,]/);
  return { num: Number(whole + decimals), den: 10 ** decimals.length };
}
