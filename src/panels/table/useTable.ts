/** The table's state: cursor, what is being typed, what is seen in which order; and what keys and presses do to it. */
import { type KeyboardEvent, type MouseEvent, useId, useMemo, useRef, useState } from "react";
import { useStore } from "zustand";
import { present } from "../../document";
import { runTogether } from "../../store/actions";
import { appStore } from "../../store/store";
import { useApp } from "../../store/useApp";
import { isComposed } from "../keys";
import { type Cursor, chosenColumns, chosenRows, moved } from "../levelbook/cursor";
import { splitBlock } from "../levelbook/paste";
import { cellOf } from "../levelbook/useBook";
import { useHeldRows } from "../levelbook/useHeldRows";
import { dropRefused, keepWritten, keptKey, keptOf, keptStore, withRefused } from "./kept";
import {
  blockCells,
  blockText,
  type CellText,
  type Chosen,
  fillDown,
  isNewRow,
  laidOver,
  newRows,
  refusedWords,
  rowsTaken,
  seenRows,
  type TableModel,
  waitingWords,
  writeCells,
} from "./model";
import { nextSort, type Sort } from "./order";
import { useSight } from "./useSight";

export interface Editing {
  readonly start: string;
  readonly selectAll: boolean;
}

/** From here on only the rows in sight are drawn, one line each; a shorter table shows all words of its cells. */
const longFrom = 100;

export type Table = ReturnType<typeof useTable>;

export function useTable(model: TableModel) {
  const [find, setFind] = useState("");
  const [sort, setSort] = useState<Sort | null>(null);
  const [cursor, setCursor] = useState<Cursor>({ row: 0, column: 0, anchor: 0, tabbedFrom: null });
  const [editing, setEditing] = useState<Editing | null>(null);
  const [said, setSaid] = useState("");
  const table = useRef<HTMLTableElement>(null);
  const gridId = useId();
  const findField = useRef<HTMLInputElement>(null);
  const kept = useStore(keptStore, (state) => keptOf(state.tables, model.title));
  const { begun } = kept;
  const seen = useMemo(
    () => seenRows(model, find, sort).map((row) => withRefused(row, model.columns, kept)),
    [model, find, sort, kept],
  );
  // What is searched for is in the plan: there new rows would only be in the way.
  const rows = useMemo(
    () => (find.trim() ? seen : [...seen, ...newRows(model, begun)]),
    [seen, model, begun, find],
  );
  const ids = useMemo(() => rows.map(({ id }) => (isNewRow(id) ? null : id)), [rows]);
  useHeldRows(ids, cursor, setCursor);
  const lineHeight = 30 * useApp((state) => state.preferences.textSize);
  const sight = useSight(table, lineHeight);
  const isLong = rows.length > longFrom;
  const extent = { rows: rows.length, columns: model.columns.length, page: Math.max(1, sight.fits - 1) };
  const at = { ...cursor, row: Math.max(0, Math.min(cursor.row, rows.length - 1)) };
  const chosen: Chosen = {
    rows: chosenRows({ ...at, anchor: Math.min(at.anchor, Math.max(0, rows.length - 1)) }),
    columns: chosenColumns(at),
  };
  const cell = rows[at.row]?.cells[at.column] ?? "";
  const column = model.columns[at.column];

  const focus = () => table.current?.focus({ preventScroll: true });
  const go = (next: Cursor) => {
    setCursor(next);
    setEditing(null);
    setSaid("");
    focus();
    if (isLong) sight.show(next.row);
    else
      document.getElementById(`${gridId}-${next.row}-${next.column}`)?.scrollIntoView?.({ block: "nearest" });
  };
  const write = (cells: readonly CellText[], label: string | ((rows: number) => string), leftOut = "") => {
    if (cells.length === 0) return setSaid("These cells are computed, not typed.");
    const project = present(appStore.getState().history);
    const done = writeCells(project, model, cells, begun);
    const what =
      done.added > 0 && cells.length === 1
        ? "add a row"
        : typeof label === "string"
          ? label
          : label(rowsTaken(cells, done));
    if (done.project !== project)
      runTogether(what, [() => ({ ok: true, project: done.project, label: what })]);
    keepWritten(model.title, cells, done);
    const words = [refusedWords(model, done.refused), waitingWords(done.waiting, model.columns), leftOut];
    setSaid(words.filter(Boolean).join(" "));
  };
  const edit = (start: string, selectAll: boolean) => {
    if (column?.typed && rows[at.row]) setEditing({ start, selectAll });
    else setSaid("This is computed, not typed.");
  };
  const finish = (text: string, event: KeyboardEvent | null) => {
    const row = rows[at.row];
    const next = event ? moved(at, event, extent) : null;
    if (next) go(next);
    else {
      setEditing(null);
      if (event) focus();
    }
    if (row && column && text !== cell)
      write([{ row: row.id, column: column.id, text }], `type ${column.title}`);
  };
  const here = { row: rows[at.row]?.id ?? "", column: column?.id ?? "" };
  const refusedHere = kept.refused.get(keptKey(here)) ?? null;
  /** Empties the chosen cells; one whose text was refused goes back to what the plan holds. */
  const clear = () => {
    const cells = blockCells(model, rows, laidOver([[""]], chosen), startOf(chosen));
    const isRefused = (cell: CellText) => kept.refused.has(keptKey(cell));
    dropRefused(model.title, cells.filter(isRefused));
    const others = cells.filter((cell) => !isRefused(cell));
    if (others.length > 0 || cells.length === 0) write(others, "clear");
  };
  const onKeyDown = (event: KeyboardEvent) => {
    if (editing) return;
    const next = moved(at, event, extent);
    const command = event.ctrlKey || event.metaKey;
    if (next) go(next);
    else if (command && event.key.toLowerCase() === "d") write(fillDown(model, rows, chosen), "fill down");
    else if (command && event.key.toLowerCase() === "f") findField.current?.select();
    else if (event.key === "F2") edit(cell, false);
    else if (event.key === "Delete" || event.key === "Backspace") clear();
    else if (event.key === "Escape" && refusedHere) dropRefused(model.title, [here]);
    else if (isComposed(event)) return edit("", false);
    else if (event.key.length === 1 && !command && !event.altKey)
      edit(event.key === " " ? cell : event.key, false);
    else return;
    event.preventDefault();
    event.stopPropagation();
  };
  const onClick = (event: MouseEvent) => {
    const on = cellUnder(event);
    if (!on) return;
    if (event.shiftKey) go({ ...on, anchor: at.anchor, across: at.across ?? at.column, tabbedFrom: null });
    else go({ ...on, anchor: on.row, tabbedFrom: null });
  };
  const leave = () => {
    setEditing(null);
    focus();
  };
  const paste = (text: string) => {
    leave();
    const block = laidOver(splitBlock(text), chosen);
    const cells = blockCells(model, rows, block, startOf(chosen));
    const left = block.reduce((sum, { length }) => sum + length, 0) - cells.length;
    write(
      cells,
      (taken) => `paste ${taken} row${taken === 1 ? "" : "s"}`,
      left === 0
        ? ""
        : `${left} pasted ${left === 1 ? "cell" : "cells"} left out: computed, or beyond the table.`,
    );
  };
  const copied = () => blockText(rows, chosen);
  /** A cell that is pressed; dragging on from it chooses a block. */
  const pressed = useRef<{ readonly row: number; readonly column: number } | null>(null);
  const onMouseDown = (event: MouseEvent) => {
    const on = cellUnder(event);
    pressed.current = on && !event.shiftKey && event.button === 0 ? on : null;
  };
  const onMouseMove = (event: MouseEvent) => {
    const from = pressed.current;
    const on = cellUnder(event);
    if (!from || !on || event.buttons !== 1 || (on.row === at.row && on.column === at.column)) return;
    go({ ...on, anchor: from.row, across: from.column, tabbedFrom: null });
  };

  return {
    table,
    findField,
    sight,
    isLong,
    lineHeight,
    gridId,
    model,
    rows,
    seen: seen.length,
    at,
    chosen,
    cell,
    editing,
    said,
    refused: kept.refused,
    refusedHere,
    go,
    find,
    setFind,
    sort,
    sortBy: (column: number) => setSort(nextSort(sort, column)),
    edit,
    finish,
    leave,
    paste,
    copied,
    onTyping: () => setSaid(""),
    onKeyDown,
    onClick,
    onMouseDown,
    onMouseMove,
  };
}

/** Where a block begins. */
function startOf({ rows, columns }: Chosen): { readonly row: number; readonly column: number } {
  return { row: rows[0], column: columns[0] };
}

/** The cell under the pointer, unless it is being typed in. */
function cellUnder(event: MouseEvent): { readonly row: number; readonly column: number } | null {
  const cell = cellOf(event);
  const typing =
    event.target instanceof Element && event.target.closest("[data-row]")?.querySelector("input");
  return typing ? null : cell;
}
