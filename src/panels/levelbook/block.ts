/** Blocks of cells of the level book: several rows and columns copied, pasted, filled down and emptied as one. Pure. */
import { type Edit, type Project, type Shot, surveyEdits } from "../../document";
import type { Notation } from "../notation";
import { laidOver } from "../table/model";
import { type ColumnId, cellText, columns } from "./columns";
import { type Cursor, chosenColumns } from "./cursor";
import { fillDown } from "./fillDown";
import type { Block } from "./paste";
import { editCell } from "./typing";

/** The columns of what is chosen, from left to right. */
export function columnsOf(cursor: Cursor): readonly ColumnId[] {
  const [first, last] = chosenColumns(cursor);
  return columns.slice(first, last + 1).map(({ id }) => id);
}

/** The columns that a block of so many falls on, from a column on. */
export function columnsFrom(column: ColumnId, count: number): readonly ColumnId[] {
  const first = columns.findIndex(({ id }) => id === column);
  return columns.slice(first, first + count).map(({ id }) => id);
}

/** The texts of the cells, a list a row. */
export function blockOf(
  project: Project,
  shots: readonly Shot[],
  of: readonly ColumnId[],
  notation: Notation,
): Block {
  return shots.map((shot) => of.map((column) => cellText(column, shot, project, notation)));
}

/** Whole rows: as many cells as the book has columns. */
export function isWholeRows(block: Block): boolean {
  return block.every(({ length }) => length === columns.length);
}

export interface WrittenBlock {
  readonly project: Project;
  readonly refused: readonly {
    readonly shot: string;
    readonly column: ColumnId;
    readonly text: string;
    readonly why: string;
  }[];
}

/** Cells that a block can't empty: a shot always has a set-up and a kind. */
const neverEmpty: readonly ColumnId[] = ["setup", "kind"];

/**
 * Writes a block over the cells of these shots; computed cells are passed over, and a new shot is made for each row of the
 * block beyond them.
 */
export function writeBlock(
  project: Project,
  ids: readonly (string | null)[],
  into: readonly ColumnId[],
  block: Block,
): WrittenBlock {
  const refused: WrittenBlock["refused"][number][] = [];
  let next = project;
  for (const [row, texts] of block.entries()) {
    let id = ids[row] ?? null;
    if (id === null) {
      const added = surveyEdits.addShot.run(next, {});
      if (!added.ok) break;
      next = added.project;
      id = next.survey.shots.at(-1)?.id ?? null;
    }
    for (const [i, column] of into.entries()) {
      const shot = next.survey.shots.find((each) => each.id === id);
      const text = texts[i];
      if (!shot || text === undefined) continue;
      const edit = writeCell(next, shot, column, text);
      if (edit.ok) next = edit.project;
      else refused.push({ shot: shot.id, column, text, why: edit.why });
    }
  }
  return { project: next, refused };
}

function writeCell(project: Project, shot: Shot, column: ColumnId, text: string): Edit {
  const empty = text.trim() === "";
  const passed = column === "height" || (empty && neverEmpty.includes(column));
  if (passed) return { ok: true, project, label: "" };
  if (column === "aside") return surveyEdits.setAside.run(project, { id: shot.id, aside: !empty });
  return editCell(project, shot, column, text);
}

/** A text for each chosen cell, where a single one was copied. */
export function spread(block: Block, rows: number, across: number): Block {
  return laidOver(block, { rows: [0, rows - 1], columns: [0, across - 1] });
}

/** The first row's cells into those below; a computed column among several is passed over. */
export function fillBlock(
  project: Project,
  from: Shot,
  into: readonly string[],
  of: readonly ColumnId[],
): Edit {
  const filled = of.length > 1 ? of.filter((column) => column !== "height") : of;
  let done: Edit = { ok: true, project, label: "fill down" };
  for (const column of filled) {
    if (!done.ok) return done;
    done = fillDown(done.project, from, into, column);
  }
  return done.ok && filled.length > 1 ? { ...done, label: "fill down" } : done;
}
