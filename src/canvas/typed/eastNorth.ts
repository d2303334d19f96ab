/**
 * Two typed lengths that give a place: "12, 5" is 12 east and 5 north of the plan's origin; "5 S, 12 W" names its
 * directions. "@12, 5" and "right 12, up 5" are counted from the place before.
 *
 * Takes   a comma with a space after it, or a semicolon, between the two. A comma alone may be a decimal one: it
 *         parts two lengths where a mark, a zero before it or a sign after it tells that it isn't, and where a place is
 *         asked for, or could be, in feet or inches: they have no decimal comma of their own.
 * Units   metres, from the text in the project's notation.
 */
import { type LengthNotation, parseLength } from "../../units";

export interface EastNorth {
  readonly east: number;
  readonly north: number;
}

/** Counted from the place before. */
export interface RightUp {
  readonly right: number;
  readonly up: number;
}

const between = /;|,\s+|(?<=['"′″nsew]),|(?<=^\s*[-+−]?0),|,(?=[-+−])/i;
/** A direction after a length, never the last letter of a unit. */
const directed = /^(.*[^a-z])([nsew])$/i;

const sides: Readonly<Record<string, string>> = { right: "e", left: "w", up: "n", down: "s" };
const side = /(right|left|up|down)/gi;

export function isPair(text: string, notation: LengthNotation): boolean {
  return isFromLast(text) || partsOf(text, notation).length > 1;
}

/** How to type the place that may have been meant where one length was read; nothing where none can be. */
export function placeMeant(text: string, notation: LengthNotation): string {
  const maybe = oneComma.test(text.trim()) && !isPair(text, notation);
  return maybe ? ` A place? Type a space after the comma: ${text.trim().replace(/\s*,/, ", ")}.` : "";
}

/** Is it counted from the place before? */
export function isFromLast(text: string): boolean {
  return /^\s*@/.test(text) || /(right|left|up|down)/i.test(text);
}

/** How far from the place before, or in words what is wrong. One side alone leaves the other at nothing. */
export function readFromLast(text: string, notation: LengthNotation): RightUp | string {
  const parts = text.replace(/^\s*@/, "").split(between);
  const named = parts.map((part) => part.replace(side, "").trim() + wayOf(part));
  if (named.length === 1 && /[ew]$/.test(wayOf(text))) named.push("0 n");
  if (named.length === 1 && /[ns]$/.test(wayOf(text))) named.push("0 e");
  const read = readPair(named.join("; "), notation);
  return typeof read === "string" ? read : { right: read.east, up: read.north };
}

function wayOf(part: string): string {
  const word = part.match(side)?.[0];
  return word === undefined ? "" : ` ${sides[word.toLowerCase()]}`;
}

/** One comma between figures, nothing round it that tells which kind it is. */
const oneComma = /^[^,;]*\d\s*,\d[^,;]*$/;
/** A group of three after one or two figures: thousands, most likely. After three it would be longer than any lot. */
const thousands = /(?<!\d)\d{1,2},\d{3}(?!\d)/;

function partsOf(text: string, notation: LengthNotation): readonly string[] {
  const parts = text.split(between);
  const inFeet = notation === "ft-in" || notation === "in" || notation === "ft";
  const parted = parts.length === 1 && inFeet && oneComma.test(text.trim()) && !thousands.test(text);
  return (parted ? text.split(",") : parts).map((part) => part.trim());
}

/** The two lengths, or in words what is wrong. */
export function readPair(text: string, notation: LengthNotation): EastNorth | string {
  const parts = partsOf(text, notation);
  if (parts.length === 1 && oneComma.test(text.trim()))
    return `${text.trim()} can be read as one length. For a place type a space after the comma, like 12, 5, or a semicolon.`;
  if (parts.length !== 2)
    return `Type how far east, a comma, a space and how far north, like 12, 5 or 12 W, 5 S.`;
  const read: { east?: number; north?: number } = {};
  for (const [i, part] of parts.entries()) {
    const named = directed.exec(part);
    const way = (named?.[2] ?? "en"[i] ?? "e").toLowerCase();
    const length = parseLength(named?.[1] ?? part, notation);
    if (!length.ok) return length.message;
    const axis = way === "n" || way === "s" ? "north" : "east";
    if (read[axis] !== undefined) return `Both lengths go ${axis}. Type one of each, like 12 W, 5 S.`;
    read[axis] = way === "w" || way === "s" ? -length.m : length.m;
  }
  return { east: read.east ?? 0, north: read.north ?? 0 };
}
