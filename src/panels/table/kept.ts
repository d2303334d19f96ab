/** What was typed into the plan's tables and isn't in the plan yet: refused cells and begun rows, kept until mended or taken back. */
import { createStore } from "zustand/vanilla";
import type { CellText, RowTexts, TableRow, Written } from "./model";

export interface Refused {
  readonly text: string;
  readonly why: string;
}

export interface Kept {
  /** By row and column, `keptKey`. */
  readonly refused: ReadonlyMap<string, Refused>;
  /** New rows that aren't complete. */
  readonly begun: readonly RowTexts[];
}

const nothing: Kept = { refused: new Map(), begun: [] };

/** By the table's title. */
export const keptStore = createStore<{ readonly tables: ReadonlyMap<string, Kept> }>(() => ({
  tables: new Map(),
}));

export function keptOf(tables: ReadonlyMap<string, Kept>, title: string): Kept {
  return tables.get(title) ?? nothing;
}

export function keptKey({ row, column }: Pick<CellText, "row" | "column">): string {
  return `${row} ${column}`;
}

/** Takes note of what was written: cells that were refused keep their text, those that were taken lose theirs. */
export function keepWritten(title: string, cells: readonly CellText[], written: Written): void {
  const { tables } = keptStore.getState();
  const refused = new Map(keptOf(tables, title).refused);
  for (const cell of cells) refused.delete(keptKey(cell));
  for (const { text, why, ...cell } of written.refused) refused.set(keptKey(cell), { text, why });
  put(title, { refused, begun: written.waiting.map(({ texts }) => texts) });
}

/** Takes back what was typed into cells and refused; the plan's own figures stand there again. */
export function dropRefused(title: string, cells: readonly Pick<CellText, "row" | "column">[]): void {
  const kept = keptOf(keptStore.getState().tables, title);
  if (!cells.some((cell) => kept.refused.has(keptKey(cell)))) return;
  const refused = new Map(kept.refused);
  for (const cell of cells) refused.delete(keptKey(cell));
  put(title, { ...kept, refused });
}

function put(title: string, kept: Kept): void {
  keptStore.setState(({ tables }) => ({ tables: new Map(tables).set(title, kept) }));
}

/** Another plan comes into the window. */
export function clearKept(): void {
  keptStore.setState({ tables: new Map() });
}

/** A row as it is seen: what was refused stands in its cell as it was typed. */
export function withRefused(
  row: TableRow,
  columns: readonly { readonly id: string }[],
  kept: Kept,
): TableRow {
  if (kept.refused.size === 0) return row;
  const typed = columns.map(({ id }) => kept.refused.get(keptKey({ row: row.id, column: id })));
  return typed.some(Boolean) ? { ...row, cells: row.cells.map((text, i) => typed[i]?.text ?? text) } : row;
}
