/** A reading as it was understood: in the readings' notation, and in that of heights where it is another. */
import { parseLength } from "../../units";
import type { Notation } from "../notation";

export function understood(m: number, notation: Notation): readonly string[] {
  const [reading, length] = [notation.reading(m), notation.length(m)];
  return reading === length ? [reading] : [reading, length];
}

/** What a text being typed will be taken as, or why it isn't understood yet; null for no text. */
export function typingWords(
  text: string,
  notation: Notation,
): { readonly ok: boolean; readonly words: string } | null {
  if (text.trim() === "") return null;
  const parsed = parseLength(text, notation.display.reading);
  if (!parsed.ok) return { ok: false, words: parsed.message };
  return { ok: true, words: `understood as ${understood(parsed.m, notation).join(" = ")}` };
}
