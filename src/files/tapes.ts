/** The text of taped sides and diagonals (CSV) → measures, or a message that names line and column. */
import type { TapedLength } from "../plot";
import { label, number, readTable } from "./csv";

export type ReadTapes =
  | { readonly ok: true; readonly tapes: readonly TapedLength[]; readonly notes: readonly string[] }
  | { readonly ok: false; readonly message: string };

const COLUMNS = { from: label, to: label, distance: number };

export function readTapes(source: string, file: string): ReadTapes {
  const table = readTable(source, file, COLUMNS);
  if (!table.ok) return table;
  if (table.rows.length === 0)
    return { ok: false, message: `${file}, line 2: found no rows, expected a side from corner to corner.` };
  const tapes = table.rows.map(({ from, to, distance }) => ({ from, to, distance }));
  return { ok: true, tapes, notes: table.notes };
}
