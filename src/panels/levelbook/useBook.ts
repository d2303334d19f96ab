/** The table's state: cursor, what is being typed, which lines are in sight; and what keys and clicks do to it. */
import {
  type KeyboardEvent,
  type MouseEvent,
  type RefObject,
  useLayoutEffect,
  useMemo,
  useRef,
  useState,
} from "react";
import { useStore } from "zustand";
import type { Project } from "../../document";
import { appStore } from "../../store/store";
import { useApp } from "../../store/useApp";
import type { Notation } from "../notation";
import { bookActs } from "./acts";
import { type ColumnId, cellText, columns } from "./columns";
import { type Cursor, chosenRows, firstCursor, moved } from "./cursor";
import { draftKey, draftStore } from "./drafts";
import { lineOfRow, linesOf } from "./lines";
import { say } from "./said";
import { useFollowSelection } from "./useFollowSelection";

/** A line's height at the text size in force, px; as in the style sheet. */
export const lineHeightNow = () => 28 * appStore.getState().preferences.textSize;
/** Lines drawn beyond the edges, so that a fast scroll shows no gap. */
const spare = 8;

/** What is being typed: the text to start with, and whether it is selected. */
interface Editing {
  readonly start: string;
  readonly selectAll: boolean;
}

export type Book = ReturnType<typeof useBook>;

export function useBook(project: Project, notation: Notation) {
  const table = useRef<HTMLTableElement>(null);
  const [cursor, setCursor] = useState<Cursor>(firstCursor);
  const [editing, setEditing] = useState<Editing | null>(null);
  const [typing, setTyping] = useState<string | null>(null);
  const drafts = useStore(draftStore, (state) => state.drafts);
  const sight = useSight(table);
  const { shots, setups } = project.survey;
  const lines = useMemo(() => linesOf(shots, setups), [shots, setups]);
  const at: Cursor = { ...cursor, row: Math.min(cursor.row, shots.length) };
  const column = columns[at.column]?.id ?? "name";
  const shot = shots[at.row];
  const extent = { rows: shots.length + 1, columns: columns.length, page: Math.max(1, sight.fits - 2) };

  const put = (next: Cursor) => {
    setCursor(next);
    sight.show(lineOfRow(lines, next.row));
  };
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
  /** Hands the text on; the key says where the cursor goes, no key leaves it where it is. */
  const finish = (text: string, event: KeyboardEvent | null) => {
    bookActs.type(at.row, column, text);
    const rows = Math.max(extent.rows, at.row + 2);
    const next = event ? moved(at, event, { ...extent, rows }) : null;
    if (next) go(next);
    else stop(event !== null);
  };
  const paste = (text: string) => {
    stop();
    bookActs.paste(text, at.row, column);
  };
  const view = { at, column, shot, drafts, extent, shown, edit, go };
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
    edit,
    finish,
    paste,
    shown,
    onKeyDown: (event: KeyboardEvent) => {
      if (!editing) onKey(event, view);
    },
    onClick: (event: MouseEvent) => {
      if (!editing || cellOf(event)) onPress(event, view, editing !== null);
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
  readonly go: (next: Cursor) => void;
}

function onKey(event: KeyboardEvent, view: View): void {
  const next = moved(view.at, event, view.extent);
  if (next) {
    event.preventDefault();
    view.go(next);
  } else if (actOnCell(event, view)) event.preventDefault();
}

/** Keys that do something to the cursor's cell or to the chosen rows; answers whether it was one. */
function actOnCell(event: KeyboardEvent, { at, column, shot, shown, edit }: View): boolean {
  const command = event.ctrlKey || event.metaKey;
  const [first, last] = chosenRows(at);
  const { entry } = columns[at.column] ?? { entry: "none" };
  if (event.key === "Delete" || event.key === "Backspace") {
    if (command) bookActs.remove(first, last);
    else bookActs.clear(first, last, column);
  } else if (event.key === "F2") edit(shown(), false);
  else if (event.key === "Escape") bookActs.forget(shot?.id ?? "", column);
  else if (event.key.length !== 1 || command || event.altKey) return false;
  else if (entry === "toggle") {
    // Only Space, as on any checkbox: a letter typed here by mistake must not leave a shot out.
    if (event.key !== " " || event.repeat) return false;
    bookActs.turnAside(at.row);
  } else if (event.key === " ") edit(shown(), false);
  else if (entry === "choice") bookActs.pickByLetter(at.row, column, event.key);
  else edit(event.key, false);
  return true;
}

function onPress(event: MouseEvent, { at, go }: View, editing: boolean): void {
  const cell = cellOf(event);
  if (!cell || (editing && cell.row === at.row && cell.column === at.column)) return;
  go({ ...cell, anchor: event.shiftKey ? at.anchor : cell.row, tabbedFrom: null });
  const onTick = event.target instanceof Element && event.target.closest(".book-tick") !== null;
  if (onTick) bookActs.turnAside(cell.row);
}

export function cellOf(event: MouseEvent): { readonly row: number; readonly column: number } | null {
  const cell = event.target instanceof Element ? event.target.closest<HTMLElement>("[data-row]") : null;
  return cell ? { row: Number(cell.dataset.row), column: Number(cell.dataset.column) } : null;
}

export interface Sight {
  /** First and one past the last line to draw. */
  readonly first: number;
  readonly last: number;
  /** Lines that fit below the heading. */
  readonly fits: number;
  readonly show: (line: number) => void;
  readonly onScroll: (event: { readonly currentTarget: HTMLElement }) => void;
}

/** Which lines are in sight of the scrolling part round the table. */
function useSight(table: RefObject<HTMLTableElement | null>): Sight {
  const [top, setTop] = useState(0);
  const lineHeight = 28 * useApp((state) => state.preferences.textSize);
  const [height, setHeight] = useState(12 * lineHeight);
  useLayoutEffect(() => {
    const scroller = table.current?.parentElement;
    if (!scroller || typeof ResizeObserver === "undefined") return;
    const observer = new ResizeObserver(() => setHeight(scroller.clientHeight));
    observer.observe(scroller);
    return () => observer.disconnect();
  }, [table]);
  return {
    first: Math.max(0, Math.floor(top / lineHeight) - spare),
    last: Math.ceil((top + height) / lineHeight) + spare,
    fits: Math.floor(height / lineHeight) - 1,
    show: (line) => {
      const scroller = table.current?.parentElement;
      if (!scroller) return;
      scrollTo(scroller, line);
      // At once, not with the scroll event: the next key may come first and needs the cell.
      setTop(scroller.scrollTop);
    },
    onScroll: (event) => setTop(event.currentTarget.scrollTop),
  };
}

/** Brings a line into sight below the heading that stays. */
function scrollTo(scroller: HTMLElement, line: number): void {
  const lineHeight = lineHeightNow();
  const top = line * lineHeight;
  const bottom = top + 2 * lineHeight;
  if (top < scroller.scrollTop) scroller.scrollTop = top;
  else if (bottom > scroller.scrollTop + scroller.clientHeight)
    scroller.scrollTop = bottom - scroller.clientHeight;
}
