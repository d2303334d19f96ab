/** A table as data: what stands in its cells, and which of them take what is typed. Pure. */
import type { Edit, Project } from "../../document";
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
}

/** A cell that is to be written. */
export interface CellText {
  readonly row: string;
  readonly column: string;
  readonly text: string;
}

export interface Written {
  readonly project: Project;
  readonly count: number;
  /** Cells that were not understood, with the reason: they stay as they were. */
  readonly refused: readonly (CellText & { readonly why: string })[];
}

/** Writes the cells one after the other; one that is refused doesn't hinder the others. */
export function writeCells(project: Project, model: TableModel, cells: readonly CellText[]): Written {
  const refused: Written["refused"][number][] = [];
  let next = project;
  for (const cell of cells) {
    const edit = model.write(next, cell.row, cell.column, cell.text);
    if (edit.ok) next = edit.project;
    else refused.push({ ...cell, why: edit.why });
  }
  return { project: next, count: cells.length - refused.length, refused };
}

/** A copied block laid over the table from a cell on; what falls beyond it, or on computed cells, is left out. */
export function blockCells(
  model: TableModel,
  rows: readonly TableRow[],
  block: readonly (readonly string[])[],
  at: { readonly row: number; readonly column: number },
): CellText[] {
  return block.flatMap((texts, down) =>
    texts.flatMap((text, across) => {
      const row = rows[at.row + down];
      const column = model.columns[at.column + across];
      return row && column?.typed ? [{ row: row.id, column: column.id, text }] : [];
    }),
  );
}

/** The top cell of the chosen rows into those below it; with one row chosen, the cell above into it. */
export function fillDown(
  model: TableModel,
  rows: readonly TableRow[],
  [first, last]: readonly [number, number],
  column: number,
): CellText[] {
  const from = first === last ? first - 1 : first;
  const text = rows[from]?.cells[column];
  const into = model.columns[column];
  if (text === undefined || !into?.typed) return [];
  return rows.slice(from + 1, last + 1).map((row) => ({ row: row.id, column: into.id, text }));
}

/** Rows that hold the words, in the order of a column; both only for the eye. */
export function seenRows(model: TableModel, find: string, sort: Sort | null): readonly TableRow[] {
  const wanted = find.trim().toLowerCase();
  const found = wanted
    ? model.rows.filter(({ cells }) => cells.some((cell) => cell.toLowerCase().includes(wanted)))
    : model.rows;
  return sort ? ordered(found, ({ cells }) => sortKeyOf(cells[sort.column] ?? ""), sort.down) : found;
}
