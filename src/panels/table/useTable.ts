/** The table's state: cursor, what is being typed, what is seen in which order; and what keys and presses do to it. */
import { type KeyboardEvent, type MouseEvent, useId, useMemo, useRef, useState } from "react";
import { present } from "../../document";
import { runTogether } from "../../store/actions";
import { appStore } from "../../store/store";
import { useApp } from "../../store/useApp";
import { type Cursor, chosenRows, moved } from "../levelbook/cursor";
import { splitBlock } from "../levelbook/paste";
import { blockCells, type CellText, fillDown, seenRows, type TableModel, writeCells } from "./model";
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
  const rows = useMemo(() => seenRows(model, find, sort), [model, find, sort]);
  const lineHeight = 30 * useApp((state) => state.preferences.textSize);
  const sight = useSight(table, lineHeight);
  const isLong = rows.length > longFrom;
  const extent = { rows: rows.length, columns: model.columns.length, page: Math.max(1, sight.fits - 1) };
  const at = { ...cursor, row: Math.max(0, Math.min(cursor.row, rows.length - 1)) };
  const chosen = chosenRows({ ...at, anchor: Math.min(at.anchor, Math.max(0, rows.length - 1)) });
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
  const write = (cells: readonly CellText[], label: string) => {
    if (cells.length === 0) return setSaid("These cells are computed, not typed.");
    const project = present(appStore.getState().history);
    const done = writeCells(project, model, cells);
    if (done.project !== project) runTogether(label, [() => ({ ok: true, project: done.project, label })]);
    const [first] = done.refused;
    setSaid(
      first ? `${done.refused.length} not understood, left as before. “${first.text}”: ${first.why}` : "",
    );
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
  const onKeyDown = (event: KeyboardEvent) => {
    if (editing) return;
    const next = moved(at, event, extent);
    const command = event.ctrlKey || event.metaKey;
    if (next) go(next);
    else if (command && event.key.toLowerCase() === "d")
      write(fillDown(model, rows, chosen, at.column), "fill down");
    else if (command && event.key.toLowerCase() === "f") findField.current?.select();
    else if (event.key === "F2") edit(cell, false);
    else if (event.key === "Delete" || event.key === "Backspace")
      write(
        blockCells(model, rows, Array(chosen[1] - chosen[0] + 1).fill([""]), { ...at, row: chosen[0] }),
        "clear",
      );
    else if (event.key.length === 1 && !command && !event.altKey)
      edit(event.key === " " ? cell : event.key, false);
    else return;
    event.preventDefault();
    event.stopPropagation();
  };
  const onClick = (event: MouseEvent) => {
    const pressed = event.target instanceof Element ? event.target.closest<HTMLElement>("[data-row]") : null;
    if (!pressed || pressed.querySelector("input")) return;
    const row = Number(pressed.dataset.row);
    go({
      row,
      column: Number(pressed.dataset.column),
      anchor: event.shiftKey ? at.anchor : row,
      tabbedFrom: null,
    });
  };
  const leave = () => {
    setEditing(null);
    focus();
  };
  const paste = (text: string) => {
    leave();
    const block = splitBlock(text);
    write(blockCells(model, rows, block, at), `paste ${block.length} row${block.length === 1 ? "" : "s"}`);
  };
  const copied = () =>
    chosen[0] === chosen[1]
      ? cell
      : rows
          .slice(chosen[0], chosen[1] + 1)
          .map(({ cells }) => cells.join("\t"))
          .join("\n");

  return {
    table,
    findField,
    sight,
    isLong,
    lineHeight,
    gridId,
    model,
    rows,
    at,
    chosen,
    cell,
    editing,
    said,
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
  };
}
