/** What a person's acts in the level book do to the project, the selection and the cells that were not understood. */
import { type Edit, type Project, present, type Shot, surveyEdits } from "../../document";
import { runTogether, select, tell } from "../../store/actions";
import { appStore } from "../../store/store";
import type { Notation } from "../notation";
import { blockOf, columnsFrom, fillBlock, isWholeRows, spread, writeBlock } from "./block";
import { type ColumnId, choiceOf, columnIds, optionsOf } from "./columns";
import { type Cursor, chosenRows } from "./cursor";
import { draftKey, dropDraft, keepDraft } from "./drafts";
import { type Block, landingOf, pasteBlock, splitBlock, splitPlaces } from "./paste";
import { say } from "./said";
import { choiceByWord, chooseCell, editCell, type TypedWord, typedOn } from "./typing";

const project = (): Project => present(appStore.getState().history);

/** An edit as one undo step. */
function record(edit: Edit): void {
  if (edit.ok && edit.project !== project()) runTogether(edit.label, [() => edit]);
}

/** The shot of a row; the row at the end becomes one, which joins the edit that is made with it. */
function withRow(
  row: number,
): { readonly project: Project; readonly shot: Shot; readonly isNew: boolean } | null {
  const now = project();
  const shot = now.survey.shots[row];
  if (shot) return { project: now, shot, isNew: false };
  const added = surveyEdits.addShot.run(now, {});
  const made = added.ok ? added.project.survey.shots.at(-1) : undefined;
  return added.ok && made ? { project: added.project, shot: made, isNew: true } : null;
}

function type(row: number, column: ColumnId, text: string): void {
  if (row >= project().survey.shots.length && text.trim() === "") return;
  const target = withRow(row);
  if (!target) return;
  const key = draftKey(target.shot.id, column);
  const edit = editCell(target.project, target.shot, column, text);
  if (edit.ok) {
    dropDraft(key);
    record(target.isNew ? { ...edit, label: "add shot" } : edit);
    return;
  }
  if (target.isNew) record({ ok: true, project: target.project, label: "add shot" });
  keepDraft(key, { text, why: edit.why });
}

function choose(row: number, column: ColumnId, value: string): void {
  const shot = project().survey.shots[row];
  if (!shot) return;
  const edit = chooseCell(project(), shot, column, value);
  if (edit.ok) record(edit);
  else tell({ tone: "caution", text: edit.why });
}

/** The word that is being typed on a cell of choices. */
let typed: { readonly cell: string; readonly word: TypedWord } | null = null;

function pickByLetter(row: number, column: ColumnId, letter: string): void {
  const shot = project().survey.shots[row];
  if (!shot) return;
  const cell = `${shot.id} ${column}`;
  const before = typed?.cell === cell ? typed.word : null;
  const word = typedOn(before, letter, optionsOf(column, shot, project()), performance.now());
  typed = { cell, word };
  const slip = before !== null && word.text === before.text && letter.toLowerCase() !== word.text;
  const value = slip ? null : choiceByWord(project(), shot, column, word.text);
  if (value !== null && value !== choiceOf(column, shot)) choose(row, column, value);
}

/** Whether a choice of that cell goes on with this letter. */
function beginsChoice(row: number, column: ColumnId, letter: string): boolean {
  const shot = project().survey.shots[row];
  if (!shot) return false;
  const before = typed?.cell === `${shot.id} ${column}` ? typed.word : null;
  const options = optionsOf(column, shot, project());
  const { text } = typedOn(before, letter, options, performance.now());
  return options.some(({ words }) => words.toLowerCase().startsWith(text) && text.endsWith(letter));
}

/** Whether a space belongs to the word that is being typed there, as in "turning point". */
function spaceInWord(row: number, column: ColumnId): boolean {
  const shot = project().survey.shots[row];
  if (!shot || typed?.cell !== `${shot.id} ${column}`) return false;
  const text = `${typed.word.text} `;
  return optionsOf(column, shot, project()).some(({ words }) => words.toLowerCase().startsWith(text));
}

/** Sets the shot of a row aside, or takes it back in; and says so. */
function turnAside(row: number): void {
  const shot = project().survey.shots[row];
  if (!shot) return;
  const edit = editCell(project(), shot, "aside", "");
  record(edit);
  const name = shot.name || `row ${row + 1}`;
  if (edit.ok) say(shot.aside ? `${name} counts again.` : `${name} is set aside: it counts in nothing.`);
}

/** The shots of these rows; the row at the end has none yet. */
function shotsOf(rows: readonly number[]): Shot[] {
  const { shots } = project().survey;
  return rows.flatMap((row) => shots[row] ?? []);
}

const clearable: readonly ColumnId[] = ["name", "reading", "place", "note", "of"];

/** Empties columns of the chosen rows; what was not understood goes too. */
function clear(rows: readonly number[], of: readonly ColumnId[]): void {
  const shots = shotsOf(rows);
  for (const shot of shots) for (const column of of) dropDraft(draftKey(shot.id, column));
  const emptied = of.filter((column) => clearable.includes(column));
  if (emptied.length === 0 || shots.length === 0) return;
  let next = project();
  for (const shot of shots)
    for (const column of emptied) {
      const edit = editCell(next, shot, column, "");
      if (edit.ok) next = edit.project;
    }
  const [only] = emptied;
  const what = emptied.length > 1 ? "cells" : only === "of" ? "what was read" : only;
  record({ ok: true, project: next, label: `clear ${what}` });
}

function remove(rows: readonly number[]): void {
  const ids = shotsOf(rows).map(({ id }) => id);
  if (ids.length === 0) return;
  const edit = surveyEdits.removeShots.run(project(), { ids });
  if (edit.ok) record(edit);
  else tell({ tone: "caution", text: edit.why });
}

/** The first row's cells into the rows below it. */
function fill(rows: readonly number[], of: readonly ColumnId[]): void {
  const [from, ...into] = shotsOf(rows);
  if (!from || into.length === 0) return;
  const edit = fillBlock(
    project(),
    from,
    into.map(({ id }) => id),
    of,
  );
  if (!edit.ok) {
    tell({ tone: "caution", text: edit.why });
    return;
  }
  for (const { id } of into) for (const column of of) dropDraft(draftKey(id, column));
  record(edit);
}

function unreadWords(cells: number): string {
  return cells === 1
    ? "1 cell could not be read and keeps its text"
    : `${cells} cells could not be read and keep their text`;
}

/** What was copied here: pasted again, it falls on cells as it was copied, not as a spreadsheet's rows do. */
let lastCopied: { readonly text: string; readonly block: Block } | null = null;

/** Copied rows over those from `start` on, as they are seen; `rowAt` tells a seen row's own. */
function paste(
  text: string,
  chosen: { readonly rows: readonly [number, number]; readonly columns: readonly ColumnId[] },
  rowAt: (seen: number) => number,
): void {
  const [start, end] = chosen.rows;
  const [column] = chosen.columns;
  if (!column) return;
  const isOurs = lastCopied?.text === text;
  const block =
    isOurs && lastCopied ? lastCopied.block : column === "place" ? splitPlaces(text) : splitBlock(text);
  const single = block.length === 1 && block[0]?.length === 1;
  const cells = (end - start + 1) * chosen.columns.length;
  if (single && cells === 1) {
    type(rowAt(start), column, block[0]?.[0] ?? "");
    return;
  }
  if (isWholeRows(block)) {
    pasteCells(block, columnIds);
    return;
  }
  if (single || chosen.columns.length > 1 || isOurs) {
    const over = single ? spread(block, end - start + 1, chosen.columns.length) : block;
    pasteCells(over, columnsFrom(column, Math.max(...over.map(({ length }) => length))));
    return;
  }
  const landing = landingOf(block, column);
  if (landing.kind === "nowhere") tell({ tone: "caution", text: landing.why });
  else if (landing.kind === "cells") pasteCells(landing.block, landing.into);
  else pasteRows();

  function pasteCells(over: Block, into: readonly ColumnId[]): void {
    const { shots } = project().survey;
    const ids = over.map((_, i) => shots[rowAt(start + i)]?.id ?? null);
    const { project: next, refused } = writeBlock(project(), ids, into, over);
    for (const id of ids) for (const each of into) if (id !== null) dropDraft(draftKey(id, each));
    const what = over.length === 1 ? "row" : "rows";
    record({ ok: true, project: next, label: `paste ${over.length} ${what}` });
    keepRefused(refused, over.length);
  }

  function pasteRows(): void {
    const { edit, refused, rows } = pasteBlock(project(), block, start, column as ColumnId, rowAt);
    record(edit);
    keepRefused(refused, rows);
  }
}

function keepRefused(
  refused: readonly {
    readonly shot: string;
    readonly column: ColumnId;
    readonly text: string;
    readonly why: string;
  }[],
  rows: number,
): void {
  for (const cell of refused) keepDraft(draftKey(cell.shot, cell.column), cell);
  if (refused.length > 0)
    tell({
      tone: "caution",
      text: `${rows} ${rows === 1 ? "row" : "rows"} pasted; ${unreadWords(refused.length)}, marked in the table.`,
    });
}

/** The chosen cells as a spreadsheet takes them: tabs between cells, a line a row. */
function copied(rows: readonly number[], of: readonly ColumnId[], notation: Notation): string {
  const block = blockOf(project(), shotsOf(rows), of, notation);
  const text = block.map((cells) => cells.join("\t")).join("\n");
  lastCopied = { text, block };
  return text;
}

function selectRows(shots: readonly Shot[], cursor: Cursor): void {
  const [first, last] = chosenRows(cursor);
  select(shots.slice(first, last + 1).map(({ id }) => ({ kind: "shot", id })));
}

/** What the book has selected follows its block; what was selected elsewhere since then stays. */
function reselect(was: readonly (string | null)[], shots: readonly Shot[], cursor: Cursor): void {
  const { selection } = appStore.getState();
  const own = selection.every((thing) => thing.kind === "shot" && was.includes(thing.id));
  if (own && selection.length > 0) selectRows(shots, cursor);
}

export const bookActs = {
  type,
  turnAside,
  choose,
  beginsChoice,
  pickByLetter,
  spaceInWord,
  clear,
  remove,
  fill,
  paste,
  copied,
  forget: (shot: string, column: ColumnId) => dropDraft(draftKey(shot, column)),
  select: selectRows,
  reselect,
};
