/**
 * Rows copied from a spreadsheet: name, reading[, place, or east, north], or the book's own columns; on a place, east and
 * north; or one column, that fills down.
 */
import { type Edit, type Project, type Shot, surveyEdits } from "../../document";
import { type ColumnId, columnIds, kindWords } from "./columns";
import { readPlace } from "./typing";

/** A block of texts, rows by columns. */
export type Block = readonly (readonly string[])[];

/**
 * Splits copied text into cells: tabs, else semicolons, else commas. Quoted cells are unquoted as spreadsheets
 * quote them; an inch mark inside or at the end of a cell is left alone.
 */
export function splitBlock(text: string): Block {
  const lines = text.replace(/\r\n?/g, "\n").replace(/\n+$/, "").split("\n");
  const between = ["\t", ";", ","].find((sign) => text.includes(sign)) ?? "\t";
  return lines.map((line) => splitLine(line, between));
}

function splitLine(line: string, between: string): string[] {
  const cells: string[] = [];
  let rest = line;
  while (rest.length > 0 || cells.length === 0) {
    const quoted = /^"((?:[^"]|"")*)"(?:$|(?=[\t;,]))/.exec(rest);
    if (quoted && (rest.length === quoted[0].length || rest[quoted[0].length] === between)) {
      cells.push((quoted[1] ?? "").replaceAll('""', '"').trim());
      rest = rest.slice(quoted[0].length + 1);
      continue;
    }
    const end = rest.indexOf(between);
    cells.push((end < 0 ? rest : rest.slice(0, end)).trim());
    if (end < 0) break;
    rest = rest.slice(end + 1);
    if (rest === "") cells.push("");
  }
  return cells;
}

export interface Pasted {
  readonly edit: Edit;
  /** Cells that were not understood: they keep their text and the message. */
  readonly refused: readonly {
    readonly shot: string;
    readonly column: ColumnId;
    readonly text: string;
    readonly why: string;
  }[];
  /** How many rows were written. */
  readonly rows: number;
}

/** A place is written with a comma: without tabs and semicolons a line is one cell. */
export function splitPlaces(text: string): Block {
  if (/[\t;]/.test(text)) return splitBlock(text);
  return text
    .trim()
    .split(/\r\n?|\n/)
    .map((line) => [line.trim()]);
}

/** Where a copied block falls: as rows of a spreadsheet, on cells of the book, or nowhere, with the reason. */
export type Landing =
  | { readonly kind: "rows"; readonly block: Block }
  | { readonly kind: "cells"; readonly into: readonly ColumnId[]; readonly block: Block }
  | { readonly kind: "nowhere"; readonly why: string };

export function landingOf(block: Block, at: ColumnId): Landing {
  const width = widthOf(block);
  if (at === "height")
    return { kind: "nowhere", why: "Nothing was pasted: heights from the mark are worked out." };
  if (width === 1) return at === "name" || at === "reading" ? { kind: "rows", block } : cells(block, [at]);
  if (at === "place" && width === 2)
    return cells(
      withoutWords(block).map((row) => [row.join("; ")]),
      ["place"],
    );
  if (at === "setup") return cells(block, from("setup", width));
  if (at === "name" || at === "reading")
    return isOwn(block)
      ? cells(dropHeading(block, ["name", "reading"]), from("name", width))
      : { kind: "rows", block };
  return {
    kind: "nowhere",
    why: `Nothing was pasted: ${width} columns don't fit here. On a name go name, reading, east and north; on a place east and north.`,
  };
}

function cells(block: Block, into: readonly ColumnId[]): Landing {
  return { kind: "cells", into, block };
}

function from(column: ColumnId, count: number): readonly ColumnId[] {
  const first = columnIds.indexOf(column);
  return columnIds.slice(first, first + count);
}

function widthOf(block: Block): number {
  return Math.max(...block.map((row) => row.length));
}

/** Laid out as the book's own columns from the name on: the third tells the kind. */
function isOwn(block: Block): boolean {
  const kinds = block.flatMap((row) => (row[2] ? [row[2].toLowerCase()] : []));
  const words: readonly string[] = Object.values(kindWords);
  return kinds.some((kind) => words.includes(kind));
}

/** A first row of words over figures is a heading. */
function withoutWords(block: Block): Block {
  const isHeading = block.length > 1 && block[0]?.every((cell) => /^[a-z() ]+$/i.test(cell));
  return isHeading ? block.slice(1) : block;
}

/** Columns of rows, by how wide they are; a single column goes where the cursor stands. */
function columnsFor(block: Block, at: ColumnId): readonly (ColumnId | "x" | "y")[] {
  const width = widthOf(block);
  if (width === 1) return [at];
  return width === 3 ? ["name", "reading", "place"] : ["name", "reading", "x", "y"];
}

/**
 * Writes the block over the rows from `start` on; rows beyond the last are added. One edit, or none. Where the rows
 * are seen in another order than the document's, `rowAt` tells a seen row's own.
 */
export function pasteBlock(
  project: Project,
  block: Block,
  start: number,
  at: ColumnId,
  rowAt: (seen: number) => number = (seen) => seen,
): Pasted {
  const into = columnsFor(block, at);
  const body = dropHeading(block, into);
  const refused: Pasted["refused"][number][] = [];
  const shots = [...project.survey.shots];
  const rows = rowMaker(project);
  for (const [index, cells] of body.entries()) {
    const target = rowAt(start + index);
    const shot = shots[target] ?? rows.add();
    if (!shot) continue;
    const written = pasteRow(project, shot, cells, into);
    shots[Math.min(target, shots.length)] = written.shot;
    refused.push(...written.refused);
  }
  const label = `paste ${body.length} row${body.length === 1 ? "" : "s"}`;
  return { edit: { ok: true, project: withShots(rows.project(), shots), label }, refused, rows: body.length };
}

function withShots(project: Project, shots: readonly Shot[]): Project {
  return { ...project, survey: { ...project.survey, shots: [...shots] } };
}

/** New rows in order. Each is added beside the one before it alone: with all of them the time would grow by the square. */
function rowMaker(project: Project) {
  let present = project;
  let setup: string | null = null;
  return {
    add(): Shot | null {
      const added = surveyEdits.addShot.run(present, setup === null ? {} : { setup });
      const shot = added.ok ? added.project.survey.shots.at(-1) : undefined;
      if (!added.ok || !shot) return null;
      present = withShots(added.project, [shot]);
      setup = shot.setup;
      return shot;
    },
    /** The project with the set-up that a first row brings. */
    project: () => present,
  };
}

/** A first row of words over columns of figures is a heading. */
function dropHeading(block: Block, into: readonly string[]): Block {
  const reading = into.indexOf("reading");
  const isHeading = reading >= 0 && block.length > 1 && /^[a-z() ]+$/i.test(block[0]?.[reading] ?? "");
  return isHeading ? block.slice(1) : block;
}

/** One row written; only this shot is looked at, so that a long block takes no longer for each row. */
function pasteRow(
  project: Project,
  shot: Shot,
  cells: readonly string[],
  into: readonly string[],
): { readonly shot: Shot; readonly refused: Pasted["refused"] } {
  const { id } = shot;
  let next = withShots(project, [shot]);
  const refused: Pasted["refused"][number][] = [];
  const cell = (column: string): string | undefined => cells[into.indexOf(column)];
  const write = (column: ColumnId, text: string | undefined, edit: (text: string) => Edit) => {
    if (text === undefined) return;
    const done = edit(text);
    if (done.ok) next = done.project;
    else refused.push({ shot: id, column, text, why: done.why });
  };
  const change = (patch: { name: string } | { note: string }) =>
    surveyEdits.changeShot.run(next, { id, patch });
  write("name", cell("name"), (name) => change({ name }));
  write("note", cell("note"), (note) => change({ note }));
  write("reading", cell("reading"), (text) => surveyEdits.setReading.run(next, { id, text }));
  const [x, y] = [cell("x"), cell("y")];
  write("place", cell("place") ?? (x && y ? `${x}; ${y}` : undefined), (text) => {
    const read = readPlace(text, project);
    return read.ok
      ? surveyEdits.placeShot.run(next, { id, place: read.place })
      : { ok: false, why: read.message };
  });
  return { shot: next.survey.shots[0] ?? shot, refused };
}
