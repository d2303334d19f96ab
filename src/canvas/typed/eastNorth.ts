/**
 * Two typed lengths that give a place: "12, 5" is 12 east and 5 north; "5 S, 12 W" names its directions.
 *
 * Takes   a comma with a space after it, or a semicolon, between the two. A comma alone may be a decimal one: it
 *         parts two lengths where a mark, a zero before it or a sign after it tells that it isn't.
 * Units   metres, from the text in the project's notation.
 */
import { type LengthNotation, parseLength } from "../../units";

export interface EastNorth {
  readonly east: number;
  readonly north: number;
}

const between = /;|,\s+|(?<=['"′″nsew]),|(?<=^\s*[-+−]?0),|,(?=[-+−])/i;
/** A direction after a length, never the last letter of a unit. */
const directed = /^(.*[^a-z])([nsew])$/i;

export function isPair(text: string): boolean {
  return between.test(text);
}

/** The two lengths, or in words what is wrong. */
export function readPair(text: string, notation: LengthNotation): EastNorth | string {
  const parts = text.split(between).map((part) => part.trim());
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
