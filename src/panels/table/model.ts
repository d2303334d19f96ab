/** A table as data: what stands in its cells, and which of them take what is typed. Pure. */
import type { Edit, Project } from "../../document";
import type { Results } from "../../solve/results";
import type { Notation } from "../notation";
import { ordered, type Sort, sortKeyOf } from "./order";

export interface TableColumn {
  readonly id: string;
  readonly title: string;
  /** Its cells take what is typed. */
  readonly typed: boolean;
  readonly figure?: boolean;
}

export interface TableRow {
  readonly id: string;
  /** One text a column. */
  readonly cells: readonly string[];
}

export interface TableModel {
  readonly title: string;
  readonly columns: readonly TableColumn[];
  readonly rows: readonly TableRow[];
  /** What stands where there are no rows. */
  readonly none: string;
  /** One cell typed; from project to project. */
  readonly write: (project: Project, row: string, column: string, text: string) => Edit;
  /** A new row from its texts; refused while something is missing. Left out where rows aren't added by typing. */
  readonly add?: (project: Project, texts: RowTexts) => Edit;
}

/** What is typed of a row that isn't in the plan yet, by column. */
export type RowTexts = Readonly<Record<string, string>>;

/** Makes a table of a plan as it is now. */
export type Maker = (project: Project, results: Results, notation: Notation) => TableModel;

/** A cell that is to be written. */
export interface CellText {
  readonly row: string;
  readonly column: string;
  readonly text: string;
}

export interface Written {
  readonly project: Project;
  readonly count: number;
  /** Cells that were not understood, with the reason: the plan's figures stay as they were. */
  readonly refused: readonly (CellText & { readonly why: string })[];
  readonly added: number;
  /** New rows that can't be added yet, with the reason: they keep what is typed. */
  readonly waiting: readonly { readonly texts: RowTexts; readonly why: string }[];
}

/** Writes the cells one after the other; one that is refused doesn't hinder the others. Then adds the new rows. */
export function writeCells(
  project: Project,
  model: TableModel,
  cells: readonly CellText[],
  begun: readonly RowTexts[] = [],
): Written {
  const refused: Written["refused"][number][] = [];
  const fresh = new Map(begun.map((texts, i) => [i, texts]));
  let next = project;
  for (const cell of cells) {
    const at = newRowAt(cell.row);
    if (at !== null) fresh.set(at, { ...fresh.get(at), [cell.column]: cell.text });
    else {
      const edit = model.write(next, cell.row, cell.column, cell.text);
      if (edit.ok) next = edit.project;
      else refused.push({ ...cell, why: edit.why });
    }
  }
  const rows = [...fresh].sort(([a], [b]) => a - b).map(([, texts]) => texts);
  return { count: cells.length - refused.length, refused, ...addRows(next, model, rows) };
}

/** How many rows took something of what was written: not those refused whole, nor those that wait. */
export function rowsTaken(cells: readonly CellText[], { refused, added }: Written): number {
  const isRefused = (cell: CellText) =>
    refused.some(({ row, column }) => row === cell.row && column === cell.column);
  const rows = cells.filter((cell) => !isNewRow(cell.row) && !isRefused(cell)).map(({ row }) => row);
  return new Set(rows).size + added;
}

/** Adds the rows that are complete, in their order. */
function addRows(
  project: Project,
  model: TableModel,
  rows: readonly RowTexts[],
): Pick<Written, "project" | "added" | "waiting"> {
  const waiting: Written["waiting"][number][] = [];
  let next = project;
  let added = 0;
  for (const texts of rows) {
    if (!model.add || Object.values(texts).every((text) => text.trim() === "")) continue;
    const edit = model.add(next, texts);
    if (edit.ok) {
      next = edit.project;
      added++;
    } else waiting.push({ texts, why: edit.why });
  }
  return { project: next, added, waiting };
}

const newRow = /^\+(\d+)$/;
const newRowId = (at: number) => `+${at}`;

/** A row that isn't in the plan yet. */
export const isNewRow = (id: string) => newRow.test(id);

function newRowAt(row: string): number | null {
  const at = newRow.exec(row)?.[1];
  return at === undefined ? null : Number(at);
}

/** Rows that are begun, and an empty one to type in, below those of the plan. */
export function newRows({ add, columns }: TableModel, begun: readonly RowTexts[]): readonly TableRow[] {
  if (!add) return [];
  return [...begun, {}].map((texts, at) => ({
    id: newRowId(at),
    cells: columns.map(({ id }) => (texts as RowTexts)[id] ?? ""),
  }));
}

/**
 * A copied block laid over the table from a cell on. Rows beyond the last are new where rows can be added; what falls on
 * computed cells or beyond the table is left out.
 */
export function blockCells(
  model: TableModel,
  rows: readonly TableRow[],
  block: readonly (readonly string[])[],
  at: { readonly row: number; readonly column: number },
): CellText[] {
  return block.flatMap((texts, down) =>
    texts.flatMap((text, across) => {
      const row = rows[at.row + down]?.id ?? rowBeyond(rows, at.row + down);
      const column = model.columns[at.column + across];
      return row !== null && column?.typed ? [{ row, column: column.id, text }] : [];
    }),
  );
}

/** The new row so far down, where the table ends with rows to type in. */
function rowBeyond(rows: readonly TableRow[], index: number): string | null {
  const last = newRowAt(rows.at(-1)?.id ?? "");
  return last === null ? null : newRowId(last + 1 + index - rows.length);
}

/** A block of cells: first and last row, first and last column. */
export interface Chosen {
  readonly rows: readonly [number, number];
  readonly columns: readonly [number, number];
}

/** The texts of a chosen block, as a spreadsheet takes them: tabs between cells, a line a row. */
export function blockText(rows: readonly TableRow[], chosen: Chosen): string {
  const [left, right] = chosen.columns;
  return rows
    .slice(chosen.rows[0], chosen.rows[1] + 1)
    .map(({ cells }) => cells.slice(left, right + 1).join("\t"))
    .join("\n");
}

/** What is laid over the chosen cells: a single copied text fills all of them, a block begins at their first. */
export function laidOver(
  block: readonly (readonly string[])[],
  { rows, columns }: Chosen,
): readonly (readonly string[])[] {
  const single = block.length === 1 && block[0]?.length === 1 ? (block[0][0] ?? "") : null;
  if (single === null) return block;
  const wide = columns[1] - columns[0] + 1;
  return Array.from({ length: rows[1] - rows[0] + 1 }, () => Array<string>(wide).fill(single));
}

/** The top cells of the chosen block into those below them; with one row chosen, the cells above into it. */
export function fillDown(model: TableModel, rows: readonly TableRow[], chosen: Chosen): CellText[] {
  const [first, last] = chosen.rows;
  const from = first === last ? first - 1 : first;
  const [left, right] = chosen.columns;
  return model.columns.slice(left, right + 1).flatMap((into, i) => {
    const text = rows[from]?.cells[left + i];
    if (text === undefined || !into.typed) return [];
    return rows.slice(from + 1, last + 1).map((row) => ({ row: row.id, column: into.id, text }));
  });
}

/** Refused cells that are named one by one. */
const mostNamed = 3;

/** Which cells were not understood, how many, and why: the first few by their row and column. Empty where none was. */
export function refusedWords(model: TableModel, refused: Written["refused"]): string {
  if (refused.length === 0) return "";
  const cells = refused.length === 1 ? "1 cell" : `${refused.length} cells`;
  const named = refused.slice(0, mostNamed).map(({ row, column, text, why }) => {
    const at = model.rows.findIndex(({ id }) => id === row);
    const name = model.rows[at]?.cells[0] || `row ${at + 1}`;
    const title = model.columns.find(({ id }) => id === column)?.title ?? column;
    return `${name}, ${title} “${text}”: ${why}`;
  });
  const more = refused.length > mostNamed ? ` And ${refused.length - mostNamed} more.` : "";
  return `${cells} not understood: the plan keeps what it had. ${named.join(" ")}${more}`;
}

/** Which new rows aren't in the plan yet, and why. Empty where none waits. */
export function waitingWords(waiting: Written["waiting"], columns: readonly TableColumn[]): string {
  const [first] = waiting;
  if (!first) return "";
  const name = columns.map(({ id }) => first.texts[id]?.trim()).find(Boolean) ?? "";
  const more = waiting.length > 1 ? ` And ${waiting.length - 1} more.` : "";
  return `“${name}” isn't added yet. ${first.why}${more}`;
}

/** Rows that hold the words, in the order of a column; both only for the eye. */
export function seenRows(model: TableModel, find: string, sort: Sort | null): readonly TableRow[] {
  const wanted = find.trim().toLowerCase();
  const found = wanted
    ? model.rows.filter(({ cells }) => cells.some((cell) => cell.toLowerCase().includes(wanted)))
    : model.rows;
  return sort ? ordered(found, ({ cells }) => sortKeyOf(cells[sort.column] ?? ""), sort.down) : found;
}
