/** The text of a deed's calls (CSV) → courses, or a message that names line and column. */
import type { DeedCall } from "../plot";
import { parseDeedBearing } from "../units";
import { optional, readTable, text } from "./csv";
import { length, lengthOrBlank, unitOfAll } from "./lengths";

export interface Call extends DeedCall {
  readonly line: number;
}

export type ReadCalls =
  | {
      readonly ok: true;
      readonly calls: readonly Call[];
      /** "m" where the lengths came with units, null where they are in a unit of their own. */
      readonly unit: "m" | null;
      readonly notes: readonly string[];
    }
  | { readonly ok: false; readonly message: string };

const COLUMNS = {
  bearing: text,
  distance: length,
  radius: optional(lengthOrBlank),
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
    const curve = radius === null || side === null ? null : { radius: radius.value, turns: side };
    return { line, bearing: direction?.ok ? direction.radians : null, distance: distance.value, curve };
  });
  const lengths = table.rows.flatMap(({ line, distance, radius }) =>
    [distance, ...(radius === null ? [] : [radius])].map((each) => ({ line, length: each })),
  );
  const units = unitOfAll(lengths, file);
  if (!units.ok) faults.push(units.message);
  if (!units.ok || faults.length > 0) return { ok: false, message: faults.join("\n") };
  return { ok: true, calls, unit: units.unit, notes: table.notes };
}

function sideOf(turns: string | null): "left" | "right" | null {
  const word = (turns ?? "").toLowerCase();
  if (word === "l" || word === "left") return "left";
  return word === "r" || word === "right" ? "right" : null;
}
