/** A table in a column: widths from its contents, long names shortened, rows ruled by hairlines. */
import { ellipsize, textWidth } from "../drawing/text-width";
import { type Block, headingPitch, headingScale, paddingX, paddingY, pitch } from "./block";
import { inks } from "./inks";
import type { Pen } from "./pen";
import type { Column, Table } from "./tables";
import { wrap } from "./text";

/** Row height and header line over the text size. */
const rowPitch = 1.62;
/** Second line of words in a row. */
const cellPitch = 1.12;
const headScale = 0.9;
const headPitch = 1.12;
const leastGap = 1.6;

interface Widths {
  readonly columns: readonly number[];
  readonly gap: number;
}

function headLines(column: Column, width: number, size: number): readonly string[] {
  return wrap([{ text: column.head }], width, size * headScale).map((line) =>
    line.words.map((word) => word.text).join(" "),
  );
}

/** Width that a column's figures need, and its heading broken into two lines or so. */
function naturalWidth(table: Table, index: number, column: Column, size: number): number {
  if (column.blank !== undefined) return column.blank;
  const cells = table.rows.filter((row) => row.length > 1).map((row) => row[index] ?? "");
  const widest = Math.max(0, ...cells.map((cell) => textWidth(cell, size, column.strong ? 600 : 400)));
  const words = column.head.split(" ").map((word) => textWidth(word, size * headScale));
  const half = textWidth(column.head, size * headScale) / 2 + size * 0.6;
  const head = Math.max(...words, words.length > 1 ? half : 0);
  return Math.max(widest, head);
}

function columnWidths(table: Table, width: number, size: number): Widths {
  const natural = table.columns.map((column, i) => naturalWidth(table, i, column, size));
  const gaps = table.columns.length - 1;
  const spare = width - natural.reduce((sum, one) => sum + one, 0);
  if (spare >= gaps * leastGap) return { columns: natural, gap: gaps > 0 ? spare / gaps : 0 };
  // Too wide: the columns of words give way in the share of their width.
  const words = table.columns.map((column, i) => (column.align === "left" ? (natural[i] ?? 0) : 0));
  const total = words.reduce((sum, one) => sum + one, 0);
  const missing = gaps * leastGap - spare;
  const columns = natural.map((one, i) => one - (total > 0 ? (missing * (words[i] ?? 0)) / total : 0));
  return { columns, gap: leastGap };
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
function cellLines(text: string, column: Column, width: number, size: number): readonly string[] {
  const weight = column.strong ? 600 : 400;
  const shown = (line: string) => ellipsize(line, width + 0.05, size, weight);
  if (column.align === "right") return [shown(text)];
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
  return columns.reduce((sum, one) => sum + one, 0) + gap * Math.max(0, columns.length - 1);
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

function drawTable(pen: Pen, table: Table, x0: number, y0: number, outer: number, size: number): void {
  const x = x0 + paddingX;
  const width = outer - 2 * paddingX;
  const widths = columnWidths(table, width, size);
  let y = y0 + paddingY;
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
}

/** Turns a table into a block of a column. It may be broken between rows, its head repeated. */
export function tableBlock(name: string, table: Table): Block {
  const heights = (outer: number, size: number) => {
    const width = outer - 2 * paddingX;
    const widths = columnWidths(table, width, size);
    const notes = noteLines(table, width, size).length * pitch * size * headScale;
    return {
      around: 2 * paddingY + topHeight(table, widths, size) + notes,
      rows: table.rows.map((row) => rowHeight(table, row, widths, size)),
    };
  };
  return {
    name,
    height(width, size) {
      const { around, rows } = heights(width, size);
      return rows.reduce((sum, row) => sum + row, around);
    },
    draw: (pen, x, y, width, size) => drawTable(pen, table, x, y, width, size),
    split(width, size, room) {
      const { around, rows } = heights(width, size);
      let used = around;
      const count = rows.findIndex((row) => {
        used += row;
        return used > room;
      });
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
