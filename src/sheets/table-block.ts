/** A table in a column: widths from its contents, long names shortened, rows ruled by hairlines. */
import { ellipsize, textWidth } from "../drawing/text-width";
import { type Block, headingPitch, headingScale, paddingX, paddingY, pitch } from "./block";
import { inks } from "./inks";
import type { Pen } from "./pen";
import type { Column, Table } from "./tables";
import { unbroken, wrap } from "./text";

/** Row height and header line over the text size. */
const rowPitch = 1.62;
/** Second line of words in a row. */
const cellPitch = 1.12;
const headScale = 0.9;
const headPitch = 1.12;
const leastGap = 1.6;

export interface Widths {
  readonly columns: readonly number[];
  readonly gap: number;
}

function headLines(column: Column, width: number, size: number): readonly string[] {
  return wrap([{ text: column.head }], width, size * headScale).map((line) =>
    line.words.map((word) => word.text).join(" "),
  );
}

/** A word of a name longer than this, mm, may be cut short. */
const longestWord = 24;

/** Width that a column's figures need, and its heading broken into two lines or so. */
function naturalWidth(table: Table, index: number, column: Column, size: number): number {
  if (column.blank !== undefined) return column.blank;
  const widest = Math.max(0, ...cellsOf(table, index).map((cell) => cellWidth(cell, column, size)));
  const half = textWidth(column.head, size * headScale) / 2 + size * 0.6;
  return Math.max(widest, headWidth(column, size), column.head.includes(" ") ? half : 0);
}

function cellsOf(table: Table, index: number): readonly string[] {
  return table.rows.filter((row) => row.length > 1).map((row) => row[index] ?? "");
}

function cellWidth(text: string, column: Column, size: number): number {
  return textWidth(text, size, column.strong ? 600 : 400);
}

/** The longest word of a heading. */
function headWidth({ head }: Column, size: number): number {
  return Math.max(...head.split(" ").map((word) => textWidth(word, size * headScale)));
}

/** Narrowest a column may be: figures whole (with `broken`: their longest word), words by their longest. */
function leastWidth(table: Table, index: number, column: Column, size: number, broken: boolean): number {
  if (column.blank !== undefined) return column.blank;
  const head = headWidth(column, size);
  const whole = column.align === "right" && !broken;
  const cells = cellsOf(table, index).flatMap((cell) =>
    whole
      ? [cellWidth(cell, column, size)]
      : unbroken(cell).map((word) =>
          column.align === "right"
            ? cellWidth(word, column, size)
            : Math.min(longestWord, cellWidth(word, column, size)),
        ),
  );
  return Math.max(head, ...cells);
}

const sum = (list: readonly number[]) => list.reduce((all, one) => all + one, 0);

/** Columns' widths, or null where the table doesn't fit at this size. */
function columnWidths(table: Table, width: number, size: number, broken: boolean): Widths | null {
  const natural = table.columns.map((column, i) => naturalWidth(table, i, column, size));
  const gaps = table.columns.length - 1;
  const spare = width - sum(natural);
  if (spare >= gaps * leastGap) return { columns: natural, gap: gaps > 0 ? spare / gaps : 0 };
  // Too wide: what can be broken gives way, in the share of what it can give.
  const least = table.columns.map((column, i) => leastWidth(table, i, column, size, broken));
  const give = natural.map((one, i) => Math.max(0, one - (least[i] ?? 0)));
  const missing = gaps * leastGap - spare;
  if (missing > sum(give) + 1e-9) return null;
  return { columns: natural.map((one, i) => one - (missing * (give[i] ?? 0)) / sum(give)), gap: leastGap };
}

/** Type may be made smaller down to this share of its size before figures are broken. */
const smallerType = [1, 0.95, 0.9, 0.85, 0.8] as const;
const floorOfType = 0.8;

/** A table as it is set: in smaller type, with its figures broken, or in two parts, where it must be. */
export interface Fitted {
  readonly parts: readonly { readonly table: Table; readonly widths: Widths }[];
  readonly size: number;
}

/**
 * Fits a table to a width: as it is, in smaller type down to a floor, with figures broken into lines, and at last
 * in parts under each other, the first column repeated. No column is dropped and no cell is wider than its column.
 *
 * Units  mm.
 */
export function fitTable(table: Table, width: number, size: number): Fitted {
  for (const broken of [false, true]) {
    for (const share of broken ? [floorOfType] : smallerType) {
      const widths = columnWidths(table, width, size * share, broken);
      if (widths) return { parts: [{ table, widths }], size: size * share };
    }
  }
  const least = size * floorOfType;
  if (table.columns.length <= 2) {
    const only = table.columns.map((column, i) => leastWidth(table, i, column, least, true));
    return { parts: [{ table, widths: { columns: only, gap: leastGap } }], size: least };
  }
  const half = 1 + Math.ceil((table.columns.length - 1) / 2);
  const { note, ...bare } = table;
  const parts = [
    columnsOf(bare, 0, half),
    { ...columnsOf(bare, half, table.columns.length), ...(note === undefined ? {} : { note }) },
  ];
  return { parts: parts.flatMap((part) => withSize(part, width, least)), size: least };
}

/** Parts of a table too wide for its column even at the floor of type, all at that one size. */
function withSize(table: Table, width: number, size: number): Fitted["parts"] {
  const widths = columnWidths(table, width, size, true);
  return widths ? [{ table, widths }] : fitTable(table, width, size / floorOfType).parts;
}

/** The first column and those of a range. */
function columnsOf(table: Table, from: number, to: number): Table {
  const picked = <T>(list: readonly T[]): T[] => list.filter((_, i) => i === 0 || (i >= from && i < to));
  return {
    ...table,
    columns: picked(table.columns),
    rows: table.rows.map((row) => (row.length === 1 ? row : picked(row))),
  };
}

function headRows(table: Table, widths: Widths, size: number): number {
  return Math.max(
    ...table.columns.map((column, i) => headLines(column, (widths.columns[i] ?? 0) + 0.5, size).length),
  );
}

function noteLines(table: Table, width: number, size: number) {
  return table.note ? wrap([{ text: table.note }], width, size * headScale) : [];
}

function topHeight(table: Table, widths: Widths, size: number): number {
  return headingPitch * size + headRows(table, widths, size) * headPitch * size * headScale + 0.45 * size;
}

function drawHead(pen: Pen, table: Table, widths: Widths, x: number, y: number, size: number): void {
  const rows = headRows(table, widths, size);
  let left = x;
  for (const [i, column] of table.columns.entries()) {
    const width = widths.columns[i] ?? 0;
    const lines = headLines(column, width + 0.5, size);
    for (const [k, line] of lines.entries()) {
      const baseline = y + (rows - lines.length + k + 0.8) * headPitch * size * headScale;
      const at = column.align === "right" ? left + width : left;
      const anchor = column.align === "right" ? "end" : "start";
      pen.text(line, at, baseline, { size: size * headScale, colour: inks.soft, anchor });
    }
    left += width + widths.gap;
  }
}

const mostLines = 3;

/** A cell's lines: figures stay on one, words may take three before they are cut short. */
export function cellLines(text: string, column: Column, width: number, size: number): readonly string[] {
  const weight = column.strong ? 600 : 400;
  const shown = (line: string) => ellipsize(line, width + 0.05, size, weight);
  const lines = wrap([{ text, strong: column.strong ?? false }], width + 0.05, size).map((line) =>
    line.words.map((word) => word.text).join(" "),
  );
  const rest = lines.slice(mostLines - 1).join(" ");
  return [...lines.slice(0, mostLines - 1), ...(rest === "" ? [] : [rest])].map(shown);
}

/** A heading across the table, as words in a cell. */
function acrossLines(text: string, width: number, size: number): readonly string[] {
  return cellLines(text, { head: "", align: "left", strong: true }, width, size);
}

function tableWidth({ columns, gap }: Widths): number {
  return sum(columns) + gap * Math.max(0, columns.length - 1);
}

function rowHeight(table: Table, row: readonly string[], widths: Widths, size: number): number {
  if (row.length === 1) {
    return (rowPitch + (acrossLines(row[0] ?? "", tableWidth(widths), size).length - 1) * cellPitch) * size;
  }
  const lines = table.columns.map((column, i) =>
    cellLines(row[i] ?? "", column, widths.columns[i] ?? 0, size),
  );
  return (rowPitch + (Math.max(...lines.map((list) => list.length)) - 1) * cellPitch) * size;
}

interface RowPlace {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly size: number;
}

function drawRow(pen: Pen, table: Table, row: readonly string[], widths: Widths, place: RowPlace): number {
  const { x, y, width, size } = place;
  const height = rowHeight(table, row, widths, size);
  pen.line([x, y + height, x + width, y + height], { colour: inks.rule, width: 0.12 });
  if (row.length === 1) {
    for (const [k, line] of acrossLines(row[0] ?? "", width, size).entries()) {
      const look = { size, weight: 600, colour: inks.ink } as const;
      pen.text(line, x, y + (rowPitch * 0.7 + k * cellPitch) * size, look);
    }
    return height;
  }
  let left = x;
  for (const [i, column] of table.columns.entries()) {
    const own = widths.columns[i] ?? 0;
    drawCell(pen, row[i] ?? "", column, { x: left, y, width: own, size }, height);
    left += own + widths.gap;
  }
  return height;
}

function drawCell(
  pen: Pen,
  text: string,
  column: Column,
  { x, y, width, size }: RowPlace,
  height: number,
): void {
  if (column.blank !== undefined) {
    pen.rectangle(x, y + 0.6, width, height - 1.2, null, { colour: inks.soft, width: 0.12 });
    return;
  }
  const anchor = column.align === "right" ? "end" : "start";
  const look = { size, weight: column.strong ? 600 : 400, colour: inks.ink, anchor } as const;
  for (const [k, line] of cellLines(text, column, width, size).entries()) {
    pen.text(line, anchor === "end" ? x + width : x, y + (rowPitch * 0.7 + k * cellPitch) * size, look);
  }
}

function drawPart(
  pen: Pen,
  { table, widths }: Fitted["parts"][number],
  { x, y: top, width, size }: RowPlace,
): number {
  let y = top;
  const title = ellipsize(table.title, width, size * headingScale, 600);
  pen.text(title, x, y + size * headingScale * 0.8, {
    size: size * headingScale,
    weight: 600,
    colour: inks.ink,
  });
  drawHead(pen, table, widths, x, y + headingPitch * size, size);
  y += topHeight(table, widths, size);
  pen.line([x, y, x + width, y], { colour: inks.ink, width: 0.18 });
  for (const row of table.rows) {
    y += drawRow(pen, table, row, widths, { x, y, width, size });
  }
  for (const line of noteLines(table, width, size)) {
    y += pitch * size * headScale;
    const text = line.words.map((word) => word.text).join(" ");
    pen.text(text, x, y, { size: size * headScale, colour: inks.soft });
  }
  return y;
}

function drawTable(pen: Pen, table: Table, x: number, y0: number, outer: number, size: number): void {
  const width = outer - 2 * paddingX;
  const fitted = fitTable(table, width, size);
  let y = y0 + paddingY;
  for (const part of fitted.parts) {
    y = drawPart(pen, part, { x: x + paddingX, y, width, size: fitted.size }) + partGap * size;
  }
}

/** Free paper between the parts of a table, over the text size. */
const partGap = 0.8;

function tableHeight(table: Table, outer: number, size: number): number {
  const width = outer - 2 * paddingX;
  const fitted = fitTable(table, width, size);
  const heights = fitted.parts.map(
    ({ table: part, widths }) =>
      topHeight(part, widths, fitted.size) +
      sum(part.rows.map((row) => rowHeight(part, row, widths, fitted.size))) +
      noteLines(part, width, fitted.size).length * pitch * fitted.size * headScale,
  );
  return 2 * paddingY + sum(heights) + (heights.length - 1) * partGap * size;
}

/** How many rows of the table go into `room`, its note left to the rest. */
function rowsWithin(table: Table, width: number, size: number, room: number): number {
  const { note: _note, ...bare } = table;
  let [fits, tooMany] = [0, table.rows.length];
  while (tooMany - fits > 1) {
    const count = Math.floor((fits + tooMany) / 2);
    if (tableHeight({ ...bare, rows: table.rows.slice(0, count) }, width, size) <= room) fits = count;
    else tooMany = count;
  }
  return fits;
}

/** Turns a table into a block of a column. It may be broken between rows, its head repeated. */
export function tableBlock(name: string, table: Table): Block {
  // Measured again and again while blocks are tried on pages.
  const heights = new Map<string, number>();
  return {
    name,
    height(width, size) {
      const key = `${width} ${size}`;
      const height = heights.get(key) ?? tableHeight(table, width, size);
      heights.set(key, height);
      return height;
    },
    draw: (pen, x, y, width, size) => drawTable(pen, table, x, y, width, size),
    split(width, size, room) {
      const count = rowsWithin(table, width, size, room);
      // A part of fewer than three rows helps nobody.
      if (count < 3) return null;
      const { note: _note, ...unnoted } = table;
      const first = { ...unnoted, rows: table.rows.slice(0, count) };
      const rest = { ...table, title: continued(table.title), rows: table.rows.slice(count) };
      return [tableBlock(name, first), tableBlock(name, rest)];
    },
  };
}

function continued(title: string): string {
  return title.endsWith(", continued") ? title : `${title}, continued`;
}
