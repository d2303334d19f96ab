/** Directions, walls and counts in words. */
import type { Point } from "../document";
import { signedArea } from "../geometry";
import { cornerName } from "../grading";
import { compass } from "../units";
import type { Notation } from "./notation";

/** The side of the building that wall `wall` closes: "north". */
export function wallSide(outline: readonly Point[], wall: number, north: number): string {
  const a = outline[wall];
  const b = outline[(wall + 1) % outline.length];
  if (!a || !b) return "";
  const side = signedArea(outline) > 0 ? 1 : -1;
  return compass([side * (b[1] - a[1]), side * (a[0] - b[0])], north);
}

/** "A–B" */
export function wallName(corners: number, wall: number): string {
  return `${cornerName(wall)}–${cornerName((wall + 1) % corners)}`;
}

/** "1 load", "11 loads" */
export function counted(count: number, one: string, many = `${one}s`): string {
  return `${grouped(count)} ${count === 1 ? one : many}`;
}

/** A whole number with its thousands set apart by a narrow space. */
export function grouped(count: number): string {
  return String(count).replace(/\B(?=(\d{3})+$)/g, "\u202f");
}

/** "A", "A and B", "A, B and C" */
export function listed(words: readonly string[]): string {
  const last = words.at(-1) ?? "";
  return words.length < 2 ? last : `${words.slice(0, -1).join(", ")} and ${last}`;
}

/** "7″ below the mark", "level with the mark" */
export function fromTheMark(m: number, { aboveBelow }: Notation): string {
  const words = aboveBelow(m);
  return words === "level" ? "level with the mark" : `${words} the mark`;
}

export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** "12 % of it on guessed ground"; empty where next to nothing is. */
export function guessedWords(share: number): string {
  return share < 0.005 ? "" : `${Math.round(share * 100)} % of it on guessed ground`;
}

/** The same as a fact's note. */
export function guessedNote(share = 0): { readonly note?: string } {
  const note = guessedWords(share);
  return note === "" ? {} : { note };
}
