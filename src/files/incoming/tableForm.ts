/**
 * How a table of points that names no form is probably meant: what separates its cells, its decimal sign, whether line 1
 * names columns, and which column is what. A guess to be shown with the first rows, and changed by hand.
 *
 * Method  Each way of splitting is tried on the first rows; the one that reads most cells as numbers holds.
 */

import type { FileUnit } from "./units";

export type Separator = "," | ";" | "\t" | " ";

export interface TableForm {
  readonly separator: Separator;
  readonly decimal: "." | ",";
  /** The first row that isn't blank names the columns. */
  readonly header: boolean;
}

export const columnUses = ["name", "x", "y", "z", "latitude", "longitude", "line", "kind", "skip"] as const;

/** x: easting. y: northing. line: rows of one name are the corners of one line. kind: a point called a mark isn't ground. */
export type ColumnUse = (typeof columnUses)[number];

export interface TableGuess {
  readonly form: TableForm;
  readonly uses: readonly ColumnUse[];
  /** Names of the columns: those of the file, or "column 1" and so on. */
  readonly columns: readonly string[];
  /** The first rows below the names, as split. */
  readonly rows: readonly (readonly string[])[];
}

const ROWS_LOOKED_AT = 60;
const ROWS_SHOWN = 8;
const NUMBER = {
  ".": /^[+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:e[+-]?\d+)?$/i,
  ",": /^[+-]?(?:\d+(?:,\d+)?|,\d+)(?:e[+-]?\d+)?$/i,
};

const headings: readonly (readonly [ColumnUse, RegExp])[] = [
  ["latitude", /^(lat|latitude)\b/],
  ["longitude", /^(lon|lng|long|longitude)\b/],
  ["x", /^(x|e|east|easting|e_?coord|x_?coord)\b/],
  ["y", /^(y|n|north|northing|n_?coord|y_?coord)\b/],
  ["z", /^(z|h|elev|elevation|height|level|altitude|alt|rl)\b/],
  ["kind", /^(kind|code|feature)\b/],
  ["line", /^(line|string|polyline)\b/],
  ["name", /^(name|point|pt|pno|id|no|nr|number|label)\b/],
];

/** The best guess for a text, or for so much of its start as holds its first rows. `form`: parts that are settled already. */
export function guessTable(text: string, settled: Partial<TableForm> = {}): TableGuess {
  const lines = firstLines(text);
  const split = settled.separator ? settled : bestSplit(lines, settled.decimal);
  const separator = split.separator ?? ",";
  const decimal = split.decimal ?? bestSplit(lines, undefined, [separator]).decimal;
  const rows = lines.map((line) => cellsOf(line, separator));
  const header = settled.header ?? looksLikeHeader(rows, decimal);
  const body = header ? rows.slice(1) : rows;
  const width = Math.max(0, ...rows.map((row) => row.length));
  const names = header ? (rows[0] ?? []) : [];
  const columns = Array.from({ length: width }, (_, i) => names[i] || `column ${i + 1}`);
  return {
    form: { separator, decimal, header },
    columns,
    uses:
      header && namedUses(columns) ? (namedUses(columns) as ColumnUse[]) : placedUses(body, width, decimal),
    rows: body.slice(0, ROWS_SHOWN),
  };
}

/** The cells of one line, trimmed, without the quotes round them. */
export function cellsOf(line: string, separator: Separator): string[] {
  if (separator === " ") return line.trim().split(/\s+/);
  if (!line.includes('"')) return line.split(separator).map((cell) => cell.trim());
  const cells: string[] = [];
  const part = new RegExp(`\\s*(?:"((?:[^"]|"")*)"|([^${separator}]*))\\s*(?:${separator}|$)`, "y");
  while (part.lastIndex < line.length) {
    const found = part.exec(line);
    if (found === null) return line.split(separator).map((cell) => cell.trim());
    cells.push(found[1] === undefined ? (found[2] ?? "").trim() : found[1].replaceAll('""', '"'));
  }
  if (line.endsWith(separator)) cells.push("");
  return cells;
}

/** Units as heads of columns write them, in brackets. "ft" alone leaves open which foot, so that it is asked for. */
const unitHeads: Readonly<Record<string, FileUnit>> = {
  m: "m",
  metre: "m",
  metres: "m",
  meter: "m",
  meters: "m",
  cm: "cm",
  mm: "mm",
  km: "km",
  in: "in",
  yd: "yd",
  "us ft": "ft-us",
  "ft us": "ft-us",
  ftus: "ft-us",
};

/** The unit that the heads of all these columns name, "x (m)" or "height [mm]"; null where they don't, or differ. */
export function unitOfHeads(heads: readonly string[]): FileUnit | null {
  const named = heads.map((head) => {
    const word = /[([]\s*([^)\]]+?)\s*[)\]]\s*$/.exec(head)?.[1]?.toLowerCase().replaceAll("_", " ");
    return word === undefined ? undefined : unitHeads[word];
  });
  const [first] = named;
  return first !== undefined && named.every((unit) => unit === first) ? first : null;
}

/** The number in a cell, NaN where there is none. */
export function numberIn(cell: string, decimal: "." | ","): number {
  const plain = cell.charCodeAt(0) === 0x2212 ? `-${cell.slice(1)}` : cell;
  if (!NUMBER[decimal].test(plain)) return Number.NaN;
  const value = Number(decimal === "," ? plain.replace(",", ".") : plain);
  return Number.isFinite(value) ? value : Number.NaN;
}

/** Is this a row that holds nothing: blank, or a remark? */
export function isBlank(line: string): boolean {
  const start = line.trimStart();
  return start === "" || start.startsWith("#") || /^[,;\s]*$/.test(start);
}

function firstLines(text: string): string[] {
  const lines: string[] = [];
  let at = text.charCodeAt(0) === 0xfeff ? 1 : 0;
  while (at < text.length && lines.length < ROWS_LOOKED_AT) {
    const end = /\r\n|\r|\n/.exec(text.slice(at, at + 10_000));
    const line = text.slice(at, end ? at + end.index : at + 10_000);
    if (!isBlank(line)) lines.push(line);
    at += line.length + (end ? end[0].length : 0);
  }
  return lines;
}

function bestSplit(
  lines: readonly string[],
  decimal?: "." | ",",
  separators: readonly Separator[] = ["\t", ";", ",", " "],
): { separator: Separator; decimal: "." | "," } {
  let best = { separator: separators[0] ?? ",", decimal: decimal ?? ("." as const), score: -1 };
  for (const separator of separators) {
    for (const sign of decimal ? [decimal] : ([".", ","] as const)) {
      if (separator === sign) continue;
      let score = 0;
      for (const line of lines)
        for (const cell of cellsOf(line, separator)) if (!Number.isNaN(numberIn(cell, sign))) score++;
      if (score > best.score) best = { separator, decimal: sign, score };
    }
  }
  return best;
}

function looksLikeHeader(rows: readonly (readonly string[])[], decimal: "." | ","): boolean {
  const [first, second] = rows;
  if (first === undefined) return false;
  const numbers = (row: readonly string[]) =>
    row.filter((cell) => !Number.isNaN(numberIn(cell, decimal))).length;
  if (numbers(first) > 0) return false;
  return second === undefined ? namedUses(first) !== null : numbers(second) > 0;
}

/** What the columns' names say; null where they don't name a place. */
function namedUses(columns: readonly string[]): ColumnUse[] | null {
  const taken = new Set<ColumnUse>();
  const uses = columns.map((column): ColumnUse => {
    const word = column.trim().toLowerCase();
    const use = headings.find(([candidate, pattern]) => pattern.test(word) && !taken.has(candidate))?.[0];
    if (use === undefined) return "skip";
    taken.add(use);
    return use;
  });
  const placed = (taken.has("x") && taken.has("y")) || (taken.has("latitude") && taken.has("longitude"));
  return placed ? uses : null;
}

/** Without names: x y z in order; a name first where there are four; name, northing, easting, z where a remark follows. */
function placedUses(rows: readonly (readonly string[])[], width: number, decimal: "." | ","): ColumnUse[] {
  const isText = (column: number) =>
    rows.some((row) => row[column] && Number.isNaN(numberIn(row[column], decimal)));
  const wordFirst = width > 2 && isText(0);
  const remarkLast = width >= 5 && isText(width - 1);
  const order: ColumnUse[] = remarkLast
    ? ["name", "y", "x", "z"]
    : wordFirst || width >= 4
      ? ["name", "x", "y", "z"]
      : ["x", "y", "z"];
  return Array.from({ length: width }, (_, i) => order[i] ?? "skip");
}
