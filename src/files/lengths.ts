/** Lengths in a table: all plain numbers in the table's own unit, or all with a unit as people write it (`32' 6"`, `9.75 m`). */
import { parseLength } from "../units";
import { type ColumnType, type DecimalSign, number } from "./csv";

export interface TableLength {
  readonly value: number;
  /** True: written with a unit, and the value is in metres. */
  readonly metres: boolean;
}

const expected = "a number such as 12.345, or a length with its unit such as 32' 6 1/2\" or 9.75 m";

export const length: ColumnType<TableLength> = { expected, optional: false, numeric: true, read };

export const lengthOrBlank: ColumnType<TableLength | null> = {
  ...length,
  expected: `${expected}, or nothing`,
  read: (cell, decimal) => (cell === "" ? null : read(cell, decimal)),
};

function read(cell: string, decimal: DecimalSign): TableLength | undefined {
  const plain = number.read(cell, decimal);
  if (plain !== undefined) return { value: plain, metres: false };
  // A length that is the same whatever a bare number would mean has all of its units written.
  const [one, other] = [parseLength(cell, "m"), parseLength(cell, "ft")];
  return one.ok && other.ok && one.m === other.m ? { value: one.m, metres: true } : undefined;
}

/** "m" where all lengths have units, null where none has; a message where some have. */
export function unitOfAll(
  lengths: readonly { readonly line: number; readonly length: TableLength }[],
  file: string,
): { readonly ok: true; readonly unit: "m" | null } | { readonly ok: false; readonly message: string } {
  const bare = lengths.find((each) => !each.length.metres);
  if (bare === undefined) return { ok: true, unit: lengths.length === 0 ? null : "m" };
  if (lengths.every((each) => !each.length.metres)) return { ok: true, unit: null };
  const message = `${file}, line ${bare.line}: ${bare.length.value} has no unit, but other rows have. Write a unit to each length, or to none.`;
  return { ok: false, message };
}
