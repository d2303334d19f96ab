/**
 * Reads a table of comma-separated values strictly: every row is either understood or named.
 *
 * Form    Line 1 names the columns, in any order and case, with metres behind a name if wanted: "x (m)". Fields may be quoted; LF, CRLF or CR ends a line;
 *         a byte-order mark and rows without a single filled cell are passed over. Semicolons or tabs may
 *         separate instead (line 1 decides); then a comma may be the decimal sign, if no number of the
 *         file uses a point.
 * Errors  A message that names file, line (the header is line 1), column, what was found and what was expected.
 * Source  RFC 4180 for the quoting.
 */

/** How one column is read. `optional`: the column may be missing altogether; its cells then count as empty. */
export interface ColumnType<T> {
  readonly expected: string;
  readonly optional: boolean;
  readonly numeric: boolean;
  /** The value of a trimmed cell, or undefined when it can't be read. */
  read(cell: string, decimal: DecimalSign): T | undefined;
}

export type DecimalSign = "." | ",";
export type Columns = Readonly<Record<string, ColumnType<unknown>>>;
type Values<C extends Columns> = { readonly [K in keyof C]: C[K] extends ColumnType<infer T> ? T : never };
/** One row: its values by column name, and the line it starts on (unless a column has that name: see Table). */
export type Row<C extends Columns> = Values<C> & Omit<{ readonly line: number }, keyof C>;

export type Table<C extends Columns> =
  | {
      readonly ok: true;
      readonly rows: readonly Row<C>[];
      /** The line of the file that each row starts on. */
      readonly lines: readonly number[];
      readonly notes: readonly string[];
    }
  | { readonly ok: false; readonly message: string };

const NUMBER = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?$/i;
const MESSAGES_SHOWN = 8;

/** A finite number; exponents are fine. */
export const number: ColumnType<number> = {
  expected: "a number such as 12.345 or 1.2e3",
  optional: false,
  numeric: true,
  read: readNumber,
};

/** A finite number, or nothing (null). */
export const numberOrBlank: ColumnType<number | null> = {
  expected: "a number such as 12.345 or 1.2e3, or nothing",
  optional: false,
  numeric: true,
  read: (cell, decimal) => (cell === "" ? null : readNumber(cell, decimal)),
};

/** Any text, also none. */
export const text: ColumnType<string> = {
  expected: "text",
  optional: false,
  numeric: false,
  read: (cell) => cell,
};

/** Text that may not be empty. */
export const label: ColumnType<string> = {
  expected: "a name",
  optional: false,
  numeric: false,
  read: (cell) => (cell === "" ? undefined : cell),
};

/** The same column, but a file may do without it. */
export function optional<T>(type: ColumnType<T>): ColumnType<T> {
  return { ...type, optional: true };
}

/**
 * Reads a whole table. `file` is the name used in messages.
 * `notes` holds what was passed over (columns that the program doesn't know).
 */
export function readTable<C extends Columns>(source: string, file: string, columns: C): Table<C> {
  const body = source.charCodeAt(0) === 0xfeff ? source.slice(1) : source;
  const separator = findSeparator(body);
  const split = splitRecords(body, separator);
  if ("fault" in split) return { ok: false, message: `${file}, ${split.fault}` };
  const [header, ...records] = split.records;
  const names = Object.keys(columns);
  if (header === undefined) {
    return {
      ok: false,
      message: `${file} is empty. Expected line 1 to name the columns ${names.join(", ")}.`,
    };
  }
  const head = readHeader(header, file, columns);
  if ("fault" in head) return { ok: false, message: head.fault };
  const decimal = decimalSign(records, head.places, columns, separator);
  const reader = { file, columns, names, places: head.places, width: header.cells.length, decimal };
  const faults: string[] = [];
  const rows = records.map((record) => readRow(record, reader, faults)) as Row<C>[];
  if (faults.length > 0) return { ok: false, message: shorten(faults) };
  return { ok: true, rows, lines: records.map((record) => record.line), notes: head.notes };
}

interface CsvRecord {
  readonly line: number;
  readonly cells: string[];
}

interface Reader {
  readonly file: string;
  readonly columns: Columns;
  readonly names: readonly string[];
  /** Index of each named column among the cells, -1 where the file does without it. */
  readonly places: readonly number[];
  readonly width: number;
  readonly decimal: DecimalSign;
}

function readRow(record: CsvRecord, reader: Reader, faults: string[]): unknown {
  const row: Record<string, unknown> = { line: record.line };
  const { file, columns, names, places, width, decimal } = reader;
  if (record.cells.length > width && record.cells.slice(width).some((cell) => cell !== "")) {
    faults.push(
      `${file}, line ${record.line}: found ${record.cells.length} cells, expected ${width} as in line 1. ` +
        "Is a comma used as the decimal sign, or is a text with a comma not in quotes?",
    );
    return row;
  }
  names.forEach((name, i) => {
    const type = columns[name] as ColumnType<unknown>;
    const cell = record.cells[places[i] ?? -1] ?? "";
    const value = type.read(cell, decimal);
    if (value === undefined) {
      faults.push(
        `${file}, line ${record.line}, column ${name}: found ${shown(cell)}, expected ${type.expected}.`,
      );
    }
    row[name] = value;
  });
  return row;
}

type Head =
  | { readonly places: readonly number[]; readonly notes: readonly string[] }
  | { readonly fault: string };

function readHeader(header: CsvRecord, file: string, columns: Columns): Head {
  const names = Object.keys(columns);
  const found = header.cells.map((cell) => cell.toLowerCase().replace(/\s*[([]m[)\]]$/, ""));
  const where = `${file}, line ${header.line}`;
  const twice = found.find((cell, i) => names.includes(cell) && found.indexOf(cell) !== i);
  if (twice !== undefined)
    return { fault: `${where}: the column ${twice} is there twice. Expected each name once.` };
  const missing = names.filter((name) => !columns[name]?.optional && !found.includes(name));
  if (missing.length > 0) {
    const noun = missing.length === 1 ? "column" : "columns";
    return {
      fault:
        `${where}: the ${noun} ${missing.join(", ")} can't be found among ${header.cells.map(shown).join(", ")}. ` +
        `Expected line ${header.line} to name the columns ${names.map((n) => (columns[n]?.optional ? `[${n}]` : n)).join(", ")}.`,
    };
  }
  const unknown = header.cells.filter((cell, i) => cell !== "" && !names.includes(found[i] ?? ""));
  const notes = unknown.map(
    (cell) => `${where}: the column ${shown(cell)} is not known here and was passed over.`,
  );
  return { places: names.map((name) => found.indexOf(name)), notes };
}

/** Line 1 holds only names, so the first of these signs in it separates. */
function findSeparator(body: string): string {
  const first = body.split(/\r|\n/).find((line) => line.trim() !== "") ?? "";
  return /[,;\t]/.exec(first)?.[0] ?? ",";
}

/** A comma is the decimal sign only where it can't separate and no number of the file has a point. */
function decimalSign(
  records: readonly CsvRecord[],
  places: readonly number[],
  columns: Columns,
  separator: string,
): DecimalSign {
  if (separator === ",") return ".";
  const types = Object.values(columns);
  let comma = false;
  for (const { cells } of records) {
    for (let i = 0; i < places.length; i++) {
      const cell = cells[places[i] ?? -1];
      if (!cell || !types[i]?.numeric) continue;
      if (cell.includes(".")) return ".";
      if (cell.includes(",")) comma = true;
    }
  }
  return comma ? "," : ".";
}

function readNumber(cell: string, decimal: DecimalSign): number | undefined {
  const plain = cell.replace(/^\u2212/, "-").replace(decimal, ".");
  const value = NUMBER.test(plain) ? Number(plain) : Number.NaN;
  return Number.isFinite(value) ? value : undefined;
}

type Split = { readonly records: readonly CsvRecord[] } | { readonly fault: string };

function splitRecords(body: string, separator: string): Split {
  return body.includes('"') ? splitQuoted(body, separator) : { records: splitPlain(body, separator) };
}

/** Without a quote in it a file splits at its signs, several times faster. */
function splitPlain(body: string, separator: string): CsvRecord[] {
  return body
    .split(/\r\n|\r|\n/)
    .map((line, i) => ({ line: i + 1, cells: line.split(separator).map((cell) => cell.trim()) }))
    .filter(({ cells }) => cells.some((cell) => cell !== ""));
}

function splitQuoted(body: string, separator: string): Split {
  const records: CsvRecord[] = [];
  let line = 1;
  let at = 0;
  while (at < body.length) {
    const record: CsvRecord = { line, cells: [] };
    let more = true;
    while (more) {
      const field =
        body[skipSpaces(body, at, separator)] === '"'
          ? quotedField(body, at, separator)
          : plainField(body, at, separator);
      if (field === null) {
        return {
          fault: `line ${line}: a quoted text doesn't end, or goes on after its closing quote. Expected "…" with quotes inside doubled.`,
        };
      }
      record.cells.push(field.value.trim());
      line += field.lineBreaks;
      more = body[field.end] === separator;
      at = field.end + 1;
      if (!more && body[field.end] === "\r" && body[at] === "\n") at++;
    }
    line++;
    if (record.cells.some((cell) => cell !== "")) records.push(record);
  }
  return { records };
}

interface Field {
  readonly value: string;
  /** Index of the separator or line end after it, or the length of the text. */
  readonly end: number;
  readonly lineBreaks: number;
}

function plainField(body: string, start: number, separator: string): Field {
  let end = start;
  while (end < body.length && body[end] !== separator && body[end] !== "\n" && body[end] !== "\r") end++;
  return { value: body.slice(start, end), end, lineBreaks: 0 };
}

function quotedField(body: string, start: number, separator: string): Field | null {
  let at = skipSpaces(body, start, separator) + 1;
  let value = "";
  for (;;) {
    const quote = body.indexOf('"', at);
    if (quote < 0) return null;
    value += body.slice(at, quote);
    at = quote + 1;
    if (body[at] !== '"') break;
    value += '"';
    at++;
  }
  const end = skipSpaces(body, at, separator);
  const after = body[end];
  if (after !== undefined && after !== separator && after !== "\n" && after !== "\r") return null;
  return { value, end, lineBreaks: (value.match(/\r\n|\r|\n/g) ?? []).length };
}

function skipSpaces(body: string, start: number, separator: string): number {
  let at = start;
  while ((body[at] === " " || body[at] === "\t") && body[at] !== separator) at++;
  return at;
}

function shown(cell: string): string {
  if (cell === "") return "nothing";
  return `"${cell.length > 40 ? `${cell.slice(0, 40)}…` : cell}"`;
}

function shorten(faults: readonly string[]): string {
  const rest = faults.length - MESSAGES_SHOWN;
  const lines = faults.slice(0, MESSAGES_SHOWN);
  if (rest > 0) lines.push(`… and ${rest} more like these.`);
  return lines.join("\n");
}
