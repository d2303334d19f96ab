/** The text of a level book (CSV) → the reduced book, or a message that names line and column. */
import { type LevelBook, reduceLevelBook } from "../survey";
import { numberOrBlank, optional, readTable, text } from "./csv";

export type ReadBook =
  | { readonly ok: true; readonly book: LevelBook; readonly notes: readonly string[] }
  | { readonly ok: false; readonly message: string };

const COLUMNS = {
  point: text,
  bs: numberOrBlank,
  is: numberOrBlank,
  fs: numberOrBlank,
  elevation: numberOrBlank,
  remark: optional(text),
};

export function readLevelBook(source: string, file: string): ReadBook {
  const table = readTable(source, file, COLUMNS);
  if (!table.ok) return table;
  if (table.rows.length === 0) {
    return {
      ok: false,
      message: `${file}, line 2: found no rows, expected a benchmark with its bs and elevation.`,
    };
  }
  const reduced = reduceLevelBook(table.rows);
  if (!reduced.ok) {
    const lines = reduced.faults.map(
      ({ line, column, what }) => `${file}, line ${line}, column ${column}: ${what}.`,
    );
    return { ok: false, message: lines.join("\n") };
  }
  return { ok: true, book: reduced.book, notes: table.notes };
}
