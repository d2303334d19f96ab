/** The text of a deed's calls (CSV) → courses, or a message that names line and column. */
import type { DeedCall } from "../plot";
import { parseDeedBearing } from "../units";
import { number, numberOrBlank, optional, readTable, text } from "./csv";

export interface Call extends DeedCall {
  readonly line: number;
}

export type ReadCalls =
  | { readonly ok: true; readonly calls: readonly Call[]; readonly notes: readonly string[] }
  | { readonly ok: false; readonly message: string };

const COLUMNS = {
  bearing: text,
  distance: number,
  radius: optional(numberOrBlank),
  turns: optional(text),
};

export function readCalls(source: string, file: string): ReadCalls {
  const table = readTable(source, file, COLUMNS);
  if (!table.ok) return table;
  const faults: string[] = [];
  const calls = table.rows.map(({ line, bearing, distance, radius, turns }): Call => {
    const direction = bearing === "" && radius !== null ? null : parseDeedBearing(bearing);
    if (direction?.ok === false) faults.push(`${file}, line ${line}, column bearing: ${direction.message}`);
    const side = sideOf(turns);
    if (radius !== null && side === null)
      faults.push(`${file}, line ${line}, column turns: a curve turns left or right, found "${turns}".`);
    const curve = radius === null || side === null ? null : { radius, turns: side };
    return { line, bearing: direction?.ok ? direction.radians : null, distance, curve };
  });
  return faults.length > 0
    ? { ok: false, message: faults.join("\n") }
    : { ok: true, calls, notes: table.notes };
}

function sideOf(turns: string | null): "left" | "right" | null {
  const word = (turns ?? "").toLowerCase();
  if (word === "l" || word === "left") return "left";
  return word === "r" || word === "right" ? "right" : null;
}
