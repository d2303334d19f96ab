/** The table's state: cursor, what is being typed, which lines are in sight; and what keys and clicks do to it. */
import { type KeyboardEvent, type MouseEvent, useMemo, useRef, useState } from "react";
import { useStore } from "zustand";
import type { Project } from "../../document";
import type { LevelledPoint } from "../../solve/results";
import { appStore } from "../../store/store";
import { useApp } from "../../store/useApp";
import { isComposed } from "../keys";
import type { Notation } from "../notation";
import { nextSort } from "../table/order";
import { useSight } from "../table/useSight";
import { bookActs } from "./acts";
import { columnsOf } from "./block";
import { type ColumnId, cellText, columns } from "./columns";
import { type Cursor, chosenRows, firstCursor, moved, wholeRows } from "./cursor";
import { draftKey, draftStore } from "./drafts";
import { lineOfRow, linesOf, plainLines } from "./lines";
import { type BookOrder, rowsIn, rowsWith, shotsBy } from "./order";
import { say } from "./said";
import { useFollowSelection } from "./useFollowSelection";
import { useHeldRows } from "./useHeldRows";

/** A line's height at the text size in force, px; as in the style sheet. */
export const lineHeightNow = () => 28 * appStore.getState().preferences.textSize;

/** What is being typed: the text to start with, and whether it is selected. */
interface Editing {
  readonly start: string;
  readonly selectAll: boolean;
}

export type Book = ReturnType<typeof useBook>;

export function useBook(project: Project, points: ReadonlyMap<string, LevelledPoint>, notation: Notation) {
  const table = useRef<HTMLTableElement>(null);
  const [cursor, setCursor] = useState<Cursor>(firstCursor);
  const [editing, setEditing] = useState<Editing | null>(null);
  const [typing, setTyping] = useState<string | null>(null);
  const drafts = useStore(draftStore, (state) => state.drafts);
  const [order, setOrder] = useState<BookOrder | null>(null);
  const [finding, setFinding] = useState(false);
  const sight = useSight(table, 28 * useApp((state) => state.preferences.textSize));
  const { shots: asRead, setups } = project.survey;
  const rows = useMemo(() => rowsIn(order, asRead), [order, asRead]);
  /** In the order that is seen; `rowAt` tells where in the document a seen row stands. */
  const shots = useMemo(() => rows.flatMap((row) => asRead[row] ?? []), [rows, asRead]);
  const rowAt = (seen: number) => rows[seen] ?? seen;
  const lines = useMemo(
    () => (order ? plainLines(shots.length) : linesOf(shots, setups)),
    [order, shots, setups],
  );
  const at: Cursor = { ...cursor, row: Math.min(cursor.row, shots.length) };
  const column = columns[at.column]?.id ?? "name";
  const shot = shots[at.row];
  const extent = { rows: shots.length + 1, columns: columns.length, page: Math.max(1, sight.fits - 2) };

  const put = (next: Cursor) => {
    setCursor(next);
    sight.show(lineOfRow(lines, next.row));
  };
  const ids = useMemo(() => shots.map(({ id }) => id), [shots]);
  useHeldRows(ids, cursor, (next, before) => {
    setCursor(next);
    const [first, last] = chosenRows(cursor);
    bookActs.reselect(before.slice(first, last + 1), shots, next);
  });
  useFollowSelection(shots, at.row, (row) => put({ ...at, row, anchor: row, tabbedFrom: null }));

  const stop = (keepFocus = true) => {
    setEditing(null);
    setTyping(null);
    if (keepFocus) table.current?.focus({ preventScroll: true });
  };
  const go = (next: Cursor) => {
    put(next);
    stop();
    say("");
    bookActs.select(shots, next);
  };
  /** Moves the cursor and leaves the keyboard where it is. */
  const point = (row: number) => {
    const next = { ...at, row, anchor: row, tabbedFrom: null };
    put(next);
    bookActs.select(shots, next);
  };
  const shown = (): string => {
    const draft = drafts.get(draftKey(shot?.id ?? "", column));
    return draft?.text ?? (shot ? cellText(column, shot, project, notation) : "");
  };
  const edit = (start: string, selectAll: boolean) => {
    const { entry } = columns[at.column] ?? { entry: "none" };
    if (entry !== "text" && !(entry === "choice" && shot)) return;
    setEditing({ start, selectAll });
    setTyping(start);
  };
  /** A figure typed on a cell of choices is meant for the reading: nothing that is typed is lost. */
  const editReading = (start: string) => {
    const reading = columns.findIndex(({ id }) => id === "reading");
    go({ row: at.row, column: reading, anchor: at.row, tabbedFrom: null });
    setEditing({ start, selectAll: false });
    setTyping(start);
  };
  /** Who types readings alone goes on in that column, though Tab brought them there from the name. */
  const nextCell = (next: Cursor | null, { key }: KeyboardEvent): Cursor | null => {
    const nameless = column === "reading" && (shot?.name ?? "") === "";
    return next && key === "Enter" && nameless ? { ...next, column: at.column } : next;
  };
  /** Hands the text on; the key says where the cursor goes, no key leaves it where it is. */
  const finish = (text: string, event: KeyboardEvent | null) => {
    bookActs.type(rowAt(at.row), column, text);
    const withNew = Math.max(extent.rows, at.row + 2);
    const next = event ? nextCell(moved(at, event, { ...extent, rows: withNew }), event) : null;
    if (next) go(next);
    else stop(event !== null);
  };
  const paste = (text: string) => {
    stop();
    const into = at.wholeTo === undefined ? columnsOf(at) : [column];
    bookActs.paste(text, { rows: chosenRows(at), columns: into }, rowAt);
  };
  /** The chosen rows as the document counts them. */
  const chosen = () => {
    const [first, last] = chosenRows(at);
    return rows.slice(first, last + 1);
  };
  const fill = () => {
    const [first, last] = chosenRows(at);
    bookActs.fill(rows.slice(first === last ? Math.max(0, first - 1) : first, last + 1), columnsOf(at));
  };
  const sortBy = (index: number) => {
    const next = nextSort(order, index);
    const id = columns[index]?.id;
    setOrder(next && id ? { ...next, ids: shotsBy(id, next.down, project, points, notation) } : null);
  };
  const find = (open: boolean) => {
    setFinding(open);
    if (!open) stop();
  };
  /** A cell that is pressed; dragging on from it chooses a block. */
  const pressed = useRef<Pressed | null>(null);
  const view = { at, column, shot, extent, shown, edit, editReading, go, rowAt, chosen, fill, find };
  return {
    table,
    sight,
    lines,
    shots,
    at,
    column,
    shot,
    drafts,
    editing,
    typing,
    setTyping,
    stop,
    go,
    point,
    edit,
    finish,
    paste,
    shown,
    rows,
    rowAt,
    chosen,
    order,
    sortBy,
    finding,
    find,
    matches: (words: string) => rowsWith(words, shots, project, notation),
    onKeyDown: (event: KeyboardEvent) => {
      if (!editing) onKey(event, view);
    },
    onMouseDown: (event: MouseEvent) => {
      const on = pressedAt(event, at.column);
      pressed.current = on && !event.shiftKey && event.button === 0 && !editing ? on : null;
    },
    onMouseMove: (event: MouseEvent) => {
      const from = pressed.current;
      const on = pressedAt(event, at.column);
      if (!from || !on || event.buttons !== 1 || (on.row === at.row && on.column === at.column)) return;
      const next = { row: on.row, anchor: from.row, tabbedFrom: null };
      if (from.isHead) go(wholeRows({ ...next, column: at.column }, extent));
      else if (!on.isHead) go({ ...next, column: on.column, across: from.column });
    },
    onClick: (event: MouseEvent) => {
      if (!editing || pressedAt(event, at.column)) onPress(event, view, editing !== null);
    },
  };
}

interface View {
  readonly at: Cursor;
  readonly column: ColumnId;
  readonly shot: { readonly id: string } | undefined;
  readonly extent: { readonly rows: number; readonly columns: number; readonly page: number };
  readonly shown: () => string;
  readonly edit: (start: string, selectAll: boolean) => void;
  readonly editReading: (start: string) => void;
  readonly go: (next: Cursor) => void;
  readonly rowAt: (seen: number) => number;
  readonly chosen: () => readonly number[];
  readonly fill: () => void;
  readonly find: (open: boolean) => void;
}

function onKey(event: KeyboardEvent, view: View): void {
  const next = moved(view.at, event, view.extent);
  if (next) {
    event.preventDefault();
    view.go(next);
  } else if (actOnCell(event, view)) event.preventDefault();
}

/** Keys that do something to the cursor's cell or to the chosen rows; answers whether it was one. */
function actOnCell(event: KeyboardEvent, view: View): boolean {
  const { at, column, shot, shown, edit } = view;
  const command = event.ctrlKey || event.metaKey;
  const { entry } = columns[at.column] ?? { entry: "none" };
  if (command && event.key.toLowerCase() === "d") view.fill();
  else if (command && event.key.toLowerCase() === "f") view.find(true);
  else if (event.key === "Delete" || event.key === "Backspace") {
    if (command) bookActs.remove(view.chosen());
    else bookActs.clear(view.chosen(), columnsOf(at));
  } else if (event.key === "F2") edit(shown(), false);
  else if (event.key === "Escape") bookActs.forget(shot?.id ?? "", column);
  else if (entry === "text" && isComposed(event)) {
    edit("", false);
    return false;
  } else if (event.key.length !== 1 || command || event.altKey) return false;
  else if (entry === "toggle") {
    // Only Space, as on any checkbox: a letter typed here by mistake must not leave a shot out.
    if (event.key !== " " || event.repeat) return false;
    bookActs.turnAside(view.rowAt(at.row));
  } else if (event.key === " " && !(entry === "choice" && bookActs.spaceInWord(view.rowAt(at.row), column)))
    edit(shown(), false);
  else if (entry === "choice") typeOnChoice(event.key, view);
  else edit(event.key, false);
  return true;
}

function typeOnChoice(key: string, { at, column, shot, rowAt, editReading }: View): void {
  if (/[\d.,]/.test(key) && !bookActs.beginsChoice(rowAt(at.row), column, key)) editReading(key);
  else if (shot) bookActs.pickByLetter(rowAt(at.row), column, key);
  else
    say(
      `Nothing was taken: this row is empty. Type its name or its reading, then its ${columns[at.column]?.title ?? "kind"}.`,
    );
}

function onPress(event: MouseEvent, view: View, editing: boolean): void {
  const { at, go, rowAt, extent } = view;
  const on = pressedAt(event, at.column);
  if (!on || (editing && !on.isHead && on.row === at.row && on.column === at.column)) return;
  const { row, column } = on;
  const anchor = event.shiftKey ? at.anchor : row;
  if (on.isHead) go(wholeRows({ row, column, anchor, tabbedFrom: null }, extent));
  else if (event.shiftKey) go({ row, column, anchor, across: at.across ?? at.column, tabbedFrom: null });
  else go({ row, column, anchor, tabbedFrom: null });
  const onTick = event.target instanceof Element && event.target.closest(".book-tick") !== null;
  if (onTick) bookActs.turnAside(rowAt(row));
}

/** A cell, or the head of its row: there the cursor keeps its column. */
interface Pressed {
  readonly row: number;
  readonly column: number;
  readonly isHead: boolean;
}

function pressedAt(event: MouseEvent, column: number): Pressed | null {
  const head = event.target instanceof Element ? event.target.closest<HTMLElement>("[data-head]") : null;
  if (head) return { row: Number(head.dataset.head), column, isHead: true };
  const cell = cellOf(event);
  return cell && { ...cell, isHead: false };
}

export function cellOf(event: MouseEvent): { readonly row: number; readonly column: number } | null {
  const cell = event.target instanceof Element ? event.target.closest<HTMLElement>("[data-row]") : null;
  return cell ? { row: Number(cell.dataset.row), column: Number(cell.dataset.column) } : null;
}
