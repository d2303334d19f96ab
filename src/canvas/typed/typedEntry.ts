/** What is typed while drawing: one or two fields (a length, then a bearing), read in the project's notation. */

import { type LengthNotation, parseAngle, parseBearing, parseLength } from "../../units";
import {
  type EastNorth,
  isFromLast,
  isPair,
  placeMeant,
  type RightUp,
  readFromLast,
  readPair,
} from "./eastNorth";

export interface Field {
  /** What it is called beside the pointer: "length", "bearing", "width", "depth". */
  readonly name: string;
  /** A bearing is clockwise from the plan's north; a place is two lengths, east and north. */
  readonly kind: "length" | "angle" | "bearing" | "place";
  /** Instead of the length a place can be typed: the values "east" and "north", or "right" and "up" of the place before. */
  readonly pair?: true;
  /** There is no place before yet: a pair is counted from the plan's origin. */
  readonly first?: true;
  /** Enter with this given goes on to the next field, as Tab does, while that one is empty. */
  readonly thenNext?: true;
}

export interface TypedEntry {
  readonly fields: readonly Field[];
  readonly texts: readonly string[];
  readonly active: number;
  /** What stands in the active field was refused: it is marked, and what is typed next takes its place. */
  readonly refused?: true;
}

/** Values by field name, in metres or radians; a field that is empty or not yet readable is missing. */
export type TypedValues = Readonly<Record<string, number>>;

export function emptyEntry(fields: readonly Field[]): TypedEntry {
  return { fields, texts: fields.map(() => ""), active: 0 };
}

export function isTyping(entry: TypedEntry): boolean {
  return entry.active > 0 || entry.texts.some((text) => text !== "");
}

/** One letter of any script, as against a named key. */
export function isLetter(key: string): boolean {
  return /^\p{L}$/u.test(key);
}

/** Characters that start a number, and those that may follow. */
const starts = /^[0-9.,½¼¾⅛⅜⅝⅞]$/;
const follows = /^[0-9.,;½¼¾⅛⅜⅝⅞'"′″’”°º/ a-z+−-]$/i;
/** A bearing may also begin as a deed writes it: N 45° E. */
const bearingStarts = /^[0-9.,ns]$/i;

/**
 * The entry after a key, or null when the key isn't for it. Once something is `begun` on the plan, Tab belongs to the
 * drawing even before the first digit: it must not carry the keyboard off to a button.
 */
export function typeKey(entry: TypedEntry, key: string, begun = false): TypedEntry | null {
  if (entry.fields.length === 0) return null;
  const text = entry.refused ? "" : (entry.texts[entry.active] ?? "");
  if (key === "Tab") {
    if (!(isTyping(entry) || begun) || entry.fields.length < 2) return null;
    return { fields: entry.fields, texts: entry.texts, active: (entry.active + 1) % entry.fields.length };
  }
  if (key === "Backspace" && entry.refused) return withText(entry, "");
  if (key === "Backspace") return text === "" ? stepBack(entry) : withText(entry, text.slice(0, -1));
  // The letters N and S also pick tools, so they begin a bearing only in its field or where a piece is begun.
  const begins = entry.active > 0 && entry.fields[entry.active]?.kind === "bearing" ? bearingStarts : starts;
  const taken = text === "" ? begins.test(key) || beginsPlace(entry, key) : follows.test(key);
  if (taken) return ownField(withText(entry, text + key));
  return begun && text === "" && /^[ns]$/i.test(key) ? bearingFirst(entry, key) : null;
}

const isAngle = ({ kind }: Field): boolean => kind === "bearing" || kind === "angle";

/** An angle that was typed where a length stands goes to its own field: nothing but an angle has the sign of degrees. */
function ownField(entry: TypedEntry): TypedEntry {
  const { fields, texts, active } = entry;
  const text = texts[active] ?? "";
  const own = fields.findIndex(isAngle);
  if (!/[°º]/.test(text) || own < 0 || isAngle(fields[active] as Field)) return entry;
  const moved = fields.map((_, i) => (i === own ? text : i === active ? "" : (texts[i] ?? "")));
  return { fields, texts: moved, active: own };
}

/** What goes on from a place may have its bearing first, as a deed writes it: N 10 E. No other tool is picked there. */
function bearingFirst(entry: TypedEntry, key: string): TypedEntry | null {
  const own = entry.fields.findIndex(({ kind }) => kind === "bearing");
  if (own < 0 || (entry.texts[own] ?? "") !== "") return null;
  return withText({ fields: entry.fields, texts: entry.texts, active: own }, key);
}

/** Places lie on either side of where they are counted from: there a minus begins a figure, and @ one from the last place. */
function beginsPlace({ fields, active }: TypedEntry, key: string): boolean {
  const field = fields[active];
  if (field?.pair && !field.first && key === "@") return true;
  return (field?.pair || field?.kind === "place") === true && /^[-−]$/.test(key);
}

/** The entry with its active field, or the first one at fault, marked as refused. */
export function refusedEntry(entry: TypedEntry, notation: LengthNotation): TypedEntry {
  const at = entry.fields.findIndex((field, i) => isFault(readField(field, entry.texts[i] ?? "", notation)));
  return { ...entry, active: at < 0 ? entry.active : at, refused: true };
}

const isFault = (value: unknown): boolean => typeof value === "string";

/** What the text of a field is, in a word or a few: a place says what it is counted from. */
export function fieldWords(field: Field, text: string, notation: LengthNotation): string {
  if (field.kind !== "place" && !field.pair) return field.name;
  if (field.pair && isFromLast(text)) return "from the last place";
  return field.kind === "place" || isPair(text, notation) ? "place from the origin" : field.name;
}

function stepBack(entry: TypedEntry): TypedEntry | null {
  return entry.active > 0 ? { ...entry, active: entry.active - 1 } : null;
}

function withText(entry: TypedEntry, text: string): TypedEntry {
  const texts = entry.texts.slice();
  texts[entry.active] = text;
  return { fields: entry.fields, texts, active: entry.active };
}

export function typedValues(entry: TypedEntry, notation: LengthNotation): TypedValues {
  const values: Record<string, number> = {};
  for (const [i, field] of entry.fields.entries()) {
    const value = readField(field, entry.texts[i] ?? "", notation);
    if (typeof value === "number") values[field.name] = value;
    else if (value !== null && typeof value !== "string") Object.assign(values, value);
  }
  return values;
}

/** The entry at its next field, where Enter has that to be given first; null where Enter ends the typing. */
export function nextWanted(entry: TypedEntry, notation: LengthNotation): TypedEntry | null {
  const { fields, texts, active } = entry;
  const field = fields[active];
  if (!field?.thenNext || typeof readField(field, texts[active] ?? "", notation) !== "number") return null;
  return texts[active + 1]?.trim() === "" ? { fields, texts, active: active + 1 } : null;
}

const figures: Readonly<Record<Field["kind"], string>> = {
  length: `a length in figures, like 40'6" or 12.35 m`,
  angle: "an angle in degrees, like 15",
  place: "how far east and north of the plan's origin, like 12, 5 or 12 W, 5 S",
  bearing: "a bearing clockwise from north, like 268.5, or like S 88.5 W",
};

const fromOrigin = ", or a place: 12, 5 from the plan's origin";
const fromBoth = `${fromOrigin}, @12, 5 from the last place`;
const noPlaceYet =
  "There is no last place yet to count from. Type the first one from the plan's origin, like 12, 5 or 12 W, 5 S.";

/** What the active field takes, for a key that it has no use for; null where nothing can be typed. */
export function wantedWords(entry: TypedEntry): string | null {
  const field = entry.fields[entry.active];
  if (!field) return null;
  const places = field.pair ? (field.first ? fromOrigin : fromBoth) : "";
  return `Type ${figures[field.kind]}${places}.`;
}

/**
 * A length was typed where a bearing belongs to it: by keys alone nothing else tells the way. The words that ask for
 * it, null where nothing is lacking.
 */
export function bearingAsked({ fields, texts }: TypedEntry, notation: LengthNotation): string | null {
  const texted = (kind: string) => fields.some((field, i) => field.kind === kind && texts[i]?.trim());
  const at = fields.findIndex(({ kind }) => kind === "length");
  const length = texts[at]?.trim() ?? "";
  const hasBearing = fields.some(({ kind }) => kind === "bearing");
  if (!hasBearing || length === "" || texted("bearing") || isPair(length, notation)) return null;
  const meant = fields[at]?.pair ? placeMeant(length, notation) : "";
  return `Which way? Type its bearing as well (Tab, then degrees clockwise from north), hold a direction by an arrow key, or move the pointer that way.${meant}`;
}

/** Why the entry can't be used, in words; null when all that was typed can be read. */
export function entryFault(entry: TypedEntry, notation: LengthNotation): string | null {
  for (const [i, field] of entry.fields.entries()) {
    const value = readField(field, entry.texts[i] ?? "", notation);
    if (typeof value === "string") return value;
  }
  return null;
}

/** The value, null for nothing typed, or the reason in words. */
function readField(
  field: Field,
  text: string,
  notation: LengthNotation,
): number | EastNorth | RightUp | null | string {
  if (text.trim() === "") return null;
  const counted = (field.pair || field.kind === "place") && isFromLast(text);
  if (counted && (field.first || !field.pair)) return noPlaceYet;
  if (counted) return readFromLast(text, notation);
  if (field.kind === "place" || (field.pair && isPair(text, notation))) return readPair(text, notation);
  if (field.kind !== "length") {
    const angle = field.kind === "bearing" ? parseBearing(text) : parseAngle(text);
    return angle.ok ? angle.radians : angle.message;
  }
  const length = parseLength(text, notation);
  if (length.ok) return length.m;
  return field.pair ? length.message + placeMeant(text, notation) : length.message;
}
