/** The order of a table's rows for the eye: figures by their size, words by their letters, empty cells last. Pure. */
import { parseLength } from "../../units";

export interface Sort {
  readonly column: number;
  readonly down: boolean;
}

/** What a cell is put in order by; null where it is empty. */
export type SortKey = number | string | null;

/** A length as its metres, "above", "level" and "below" as its sign; anything else as its words. */
export function sortKeyOf(text: string): SortKey {
  const words = text.trim();
  if (words === "") return null;
  if (words === "level") return 0;
  const side = /\s(above|below)$/.exec(words);
  const read = parseLength(side ? words.slice(0, side.index) : words, "m");
  if (!read.ok) return words;
  return side?.[1] === "below" ? -read.m : read.m;
}

/** The items in order of their keys; equal ones keep the order they came in. */
export function ordered<T>(items: readonly T[], keyOf: (item: T) => SortKey, down: boolean): T[] {
  const turned = down ? -1 : 1;
  return items
    .map((item) => ({ item, key: keyOf(item) }))
    .sort((a, b) => {
      if (a.key === null || b.key === null) return Number(a.key === null) - Number(b.key === null);
      return turned * compared(a.key, b.key);
    })
    .map(({ item }) => item);
}

const byLetters = new Intl.Collator("en", { numeric: true, sensitivity: "base" });

function compared(a: number | string, b: number | string): number {
  if (typeof a === "number") return typeof b === "number" ? a - b : -1;
  return typeof b === "number" ? 1 : byLetters.compare(a, b);
}

/** The next press on the same head: up, down, and as it came. */
export function nextSort(sort: Sort | null, column: number): Sort | null {
  if (sort?.column !== column) return { column, down: false };
  return sort.down ? null : { column, down: true };
}
