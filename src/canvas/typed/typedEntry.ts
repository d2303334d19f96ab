/** What is typed while drawing: one or two fields (a length, then an angle), read in the project's notation. */
import { type LengthNotation, parseAngle, parseLength } from "../../units";

export interface Field {
  /** What it is called beside the pointer: "length", "angle", "width", "depth". */
  readonly name: string;
  readonly kind: "length" | "angle";
}

export interface TypedEntry {
  readonly fields: readonly Field[];
  readonly texts: readonly string[];
  readonly active: number;
}

/** Values by field name, in metres or radians; a field that is empty or not yet readable is missing. */
export type TypedValues = Readonly<Record<string, number>>;

export function emptyEntry(fields: readonly Field[]): TypedEntry {
  return { fields, texts: fields.map(() => ""), active: 0 };
}

export function isTyping(entry: TypedEntry): boolean {
  return entry.active > 0 || entry.texts.some((text) => text !== "");
}

/** Characters that start a number, and those that may follow. */
const starts = /^[0-9.,½¼¾⅛⅜⅝⅞]$/;
const follows = /^[0-9.,½¼¾⅛⅜⅝⅞'"′″°/ a-z-]$/i;

/**
 * The entry after a key, or null when the key isn't for it. Once something is `begun` on the plan, Tab belongs to the
 * drawing even before the first digit: it must not carry the keyboard off to a button.
 */
export function typeKey(entry: TypedEntry, key: string, begun = false): TypedEntry | null {
  if (entry.fields.length === 0) return null;
  const text = entry.texts[entry.active] ?? "";
  if (key === "Tab") {
    if (!(isTyping(entry) || begun) || entry.fields.length < 2) return null;
    return { ...entry, active: (entry.active + 1) % entry.fields.length };
  }
  if (key === "Backspace") return text === "" ? stepBack(entry) : withText(entry, text.slice(0, -1));
  const taken = text === "" ? starts.test(key) : follows.test(key);
  return taken ? withText(entry, text + key) : null;
}

function stepBack(entry: TypedEntry): TypedEntry | null {
  return entry.active > 0 ? { ...entry, active: entry.active - 1 } : null;
}

function withText(entry: TypedEntry, text: string): TypedEntry {
  const texts = entry.texts.slice();
  texts[entry.active] = text;
  return { ...entry, texts };
}

export function typedValues(entry: TypedEntry, notation: LengthNotation): TypedValues {
  const values: Record<string, number> = {};
  for (const [i, field] of entry.fields.entries()) {
    const value = readField(field, entry.texts[i] ?? "", notation);
    if (typeof value === "number") values[field.name] = value;
  }
  return values;
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
function readField(field: Field, text: string, notation: LengthNotation): number | null | string {
  if (text.trim() === "") return null;
  if (field.kind === "angle") {
    const angle = parseAngle(text);
    return angle.ok ? angle.radians : angle.message;
  }
  const length = parseLength(text, notation);
  return length.ok ? length.m : length.message;
}
