/** What the cells of the tables share: columns, and texts that are read as lengths, falls and numbers. */
import type { Edit } from "../../document";
import { halfWidth, parseLength, parseNumber, parseSlope } from "../../units";
import type { Notation } from "../notation";
import type { TableColumn } from "./model";

export const typed = (id: string, title: string, figure = true): TableColumn => ({
  id,
  title,
  typed: true,
  figure,
});
export const reckoned = (id: string, title: string, figure = true): TableColumn => ({
  id,
  title,
  typed: false,
  figure,
});
export const cannot = (why: string): Edit => ({ ok: false, why });
export const notTyped = () => cannot("This is computed, not typed.");

export function withLength(
  text: string,
  notation: Notation,
  least: number | null,
  then: (m: number) => Edit,
): Edit {
  const read = parseLength(text, notation.display.length);
  if (!read.ok) return cannot(read.message);
  return least !== null && read.m < least
    ? cannot(`This should be at least ${notation.length(least)}.`)
    : then(read.m);
}

export function withSlope(text: string, notation: Notation, then: (ratio: number) => Edit): Edit {
  const read = parseSlope(text, notation.display.slope);
  if (!read.ok) return cannot(read.message);
  return read.ratio < 0 ? cannot("A fall is typed without a minus.") : then(read.ratio);
}

export function withNumber(text: string, then: (value: number) => Edit): Edit {
  const value = parseNumber(
    halfWidth(text)
      .trim()
      .replace(/\s*:\s*1$/, ""),
  );
  return value > 0
    ? then(value)
    : cannot(`Can't read "${text.trim()}" as the run for one of rise. Write a number like 3.`);
}
