/** Tables of points, places, polygons and lines (CSV) → plain arrays, or a message that names line and column. */
import { type Point, selfCrossing, signedArea } from "../geometry";
import type { Breakline } from "../terrain";
import { label, number, numberOrBlank, optional, readTable, text } from "./csv";
import { saysMark } from "./incoming/kinds";

type Bad = { readonly ok: false; readonly message: string };

/** Points of ground, a row each. `lines[i]` is the line of the file that point i stands on. */
export interface PointTable {
  readonly names: readonly string[];
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly z: Float64Array;
  readonly lines: readonly number[];
}

/** Reads points: columns x, y, z and, if there, name and kind. Rows whose kind is a mark aren't ground: passed over, and told. */
export function readPoints(
  source: string,
  file: string,
): { readonly ok: true; readonly points: PointTable; readonly notes: readonly string[] } | Bad {
  const columns = { name: optional(text), x: number, y: number, z: number, kind: optional(text) };
  const table = readTable(source, file, columns);
  if (!table.ok) return table;
  const rows = table.rows.filter(({ kind }) => !saysMark(kind));
  const points: PointTable = {
    names: rows.map((row) => row.name),
    x: Float64Array.from(rows, (row) => row.x),
    y: Float64Array.from(rows, (row) => row.y),
    z: Float64Array.from(rows, (row) => row.z),
    lines: rows.map((row) => row.line),
  };
  const marks = table.rows.length - rows.length;
  const told =
    marks === 0
      ? []
      : [`${file}: ${marks === 1 ? "one mark is" : `${marks} marks are`} no ground: left out.`];
  return { ok: true, points, notes: [...table.notes, ...told] };
}

/** Reads places in plan: columns x and y. */
export function readPlaces(
  source: string,
  file: string,
): { readonly ok: true; readonly places: readonly Point[]; readonly notes: readonly string[] } | Bad {
  const table = readTable(source, file, { x: number, y: number });
  if (!table.ok) return table;
  return { ok: true, places: table.rows.map((row): Point => [row.x, row.y]), notes: table.notes };
}

/** Reads a polygon: columns x and y, corners in order, the first repeated at the end or not. */
export function readRing(
  source: string,
  file: string,
): { readonly ok: true; readonly ring: readonly Point[]; readonly notes: readonly string[] } | Bad {
  const table = readTable(source, file, { x: number, y: number });
  if (!table.ok) return table;
  const rows = withoutRepeats(table.rows);
  const ring = rows.map((row): Point => [row.x, row.y]);
  if (ring.length < 3) {
    return { ok: false, message: `${file}: found ${ring.length} different corners, expected at least 3.` };
  }
  if (signedArea(ring) === 0) {
    return { ok: false, message: `${file}: the corners lie in one line, expected a polygon with an area.` };
  }
  const crossing = selfCrossing(ring);
  if (crossing) {
    const [one, other] = crossing.map((side) => sideInWords(rows, side));
    return {
      ok: false,
      message: `${file}: ${one} and ${other} meet. Expected the corners in order round a polygon that doesn't cross itself.`,
    };
  }
  return { ok: true, ring, notes: table.notes };
}

interface Corner {
  readonly x: number;
  readonly y: number;
  readonly line: number;
}

/** Corners without those that repeat the one before them, nor a last one that closes the ring. */
function withoutRepeats(rows: readonly Corner[]): readonly Corner[] {
  const same = (a: Corner | undefined, b: Corner | undefined) => a?.x === b?.x && a?.y === b?.y;
  const corners = rows.filter((row, i) => i === 0 || !same(row, rows[i - 1]));
  return corners.length > 1 && same(corners[0], corners.at(-1)) ? corners.slice(0, -1) : corners;
}

function sideInWords(rows: readonly Corner[], side: number): string {
  return `the side from line ${rows[side]?.line} to line ${rows[(side + 1) % rows.length]?.line}`;
}

/** Breaklines in the order that the file first names them. `rows[i]`: the line of the file of each corner of line i. */
export interface LineTable {
  readonly lines: readonly Breakline[];
  readonly rows: readonly (readonly number[])[];
}

/** Reads breaklines: columns line, x, y and, if there, z (may be blank). Rows with one line's name are its corners. */
export function readLines(
  source: string,
  file: string,
): ({ readonly ok: true; readonly notes: readonly string[] } & LineTable) | Bad {
  const columns = { line: label, x: number, y: number, z: optional(numberOrBlank) };
  const table = readTable(source, file, columns);
  if (!table.ok) return table;
  const byName = new Map<string, { x: number[]; y: number[]; z: (number | null)[]; rows: number[] }>();
  table.rows.forEach(({ line, x, y, z }, i) => {
    const held = byName.get(line) ?? { x: [], y: [], z: [], rows: [] };
    byName.set(line, held);
    held.x.push(x);
    held.y.push(y);
    held.z.push(z);
    held.rows.push(table.lines[i] as number);
  });
  for (const [name, { x, rows }] of byName) {
    if (x.length < 2) {
      const where = `${file}, line ${rows[0]}, column line`;
      return {
        ok: false,
        message: `${where}: the line "${name}" has only this corner, expected at least two.`,
      };
    }
  }
  return {
    ok: true,
    lines: [...byName].map(([name, { x, y, z }]) => ({ name, x, y, z })),
    rows: [...byName.values()].map(({ rows }) => rows),
    notes: table.notes,
  };
}
