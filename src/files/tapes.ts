/** The text of taped sides and diagonals (CSV) → measures, or a message that names line and column. */
import type { TapedLength } from "../plot";
import { label, readTable } from "./csv";
import { length, unitOfAll } from "./lengths";

export type ReadTapes =
  | {
      readonly ok: true;
      readonly tapes: readonly TapedLength[];
      /** `lines[i]` is the line of the file that tape i stands on. */
      readonly lines: readonly number[];
      /** "m" where the lengths came with units, null where they are in a unit of their own. */
      readonly unit: "m" | null;
      readonly notes: readonly string[];
    }
  | { readonly ok: false; readonly message: string };

const COLUMNS = { from: label, to: label, distance: length };

export function readTapes(source: string, file: string): ReadTapes {
  const table = readTable(source, file, COLUMNS);
  if (!table.ok) return table;
  if (table.rows.length === 0)
    return { ok: false, message: `${file}, line 2: found no rows, expected a side from corner to corner.` };
  const units = unitOfAll(
    table.rows.map(({ line, distance }) => ({ line, length: distance })),
    file,
  );
  if (!units.ok) return units;
  const tapes = table.rows.map(({ from, to, distance }) => ({ from, to, distance: distance.value }));
  return { ok: true, tapes, lines: table.lines, unit: units.unit, notes: table.notes };
}
