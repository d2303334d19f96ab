/** Where the cursor of a table stands and how keys move it. Pure: positions in, positions out. */

export interface Cursor {
  readonly row: number;
  readonly column: number;
  /** The other end of a choice of rows; the same as `row` where only one is chosen. */
  readonly anchor: number;
  /** The other end of a choice of columns; missing: the cursor's column alone. */
  readonly across?: number;
  /** Last column of the table, where whole rows are chosen. */
  readonly wholeTo?: number;
  /** Column in which a run of Tabs began: Enter goes back to it. */
  readonly tabbedFrom: number | null;
}

export interface Extent {
  readonly rows: number;
  readonly columns: number;
  /** Rows that fit on the screen. */
  readonly page: number;
}

export const firstCursor: Cursor = { row: 0, column: 1, anchor: 0, tabbedFrom: null };

export interface MoveKey {
  readonly key: string;
  readonly shiftKey: boolean;
  readonly ctrlKey: boolean;
  readonly metaKey: boolean;
}

/** The cursor after a key, or null where the key doesn't move it. */
export function moved(cursor: Cursor, press: MoveKey, extent: Extent): Cursor | null {
  const far = press.ctrlKey || press.metaKey;
  const { row, column } = cursor;
  switch (press.key) {
    case "ArrowDown":
      return toRow(cursor, far ? extent.rows - 1 : row + 1, press.shiftKey, extent);
    case "ArrowUp":
      return toRow(cursor, far ? 0 : row - 1, press.shiftKey, extent);
    case "PageDown":
      return toRow(cursor, row + extent.page, press.shiftKey, extent);
    case "PageUp":
      return toRow(cursor, row - extent.page, press.shiftKey, extent);
    case "ArrowRight":
      return toColumn(cursor, far ? extent.columns - 1 : column + 1, press.shiftKey, extent);
    case "ArrowLeft":
      return toColumn(cursor, far ? 0 : column - 1, press.shiftKey, extent);
    case "Home":
      return far
        ? toRow({ ...cursor, column: 0 }, 0, false, extent)
        : toColumn(cursor, 0, press.shiftKey, extent);
    case "End":
      return far
        ? toRow(cursor, extent.rows - 1, false, extent)
        : toColumn(cursor, extent.columns - 1, press.shiftKey, extent);
    case "Enter":
      return entered(cursor, press.shiftKey ? -1 : 1, extent);
    case " ":
      return press.shiftKey && !far ? wholeRows(cursor, extent) : null;
    case "Tab":
      return tabbed(cursor, press.shiftKey ? -1 : 1, extent);
    default:
      return null;
  }
}

function toRow(cursor: Cursor, row: number, extend: boolean, extent: Extent): Cursor {
  const next = clamp(row, extent.rows);
  if (extend) return { ...cursor, row: next, tabbedFrom: null };
  return { row: next, column: cursor.column, anchor: next, tabbedFrom: null };
}

function toColumn(cursor: Cursor, column: number, extend: boolean, extent: Extent): Cursor {
  const next = clamp(column, extent.columns);
  if (extend) {
    const { row, anchor, across = cursor.column } = cursor;
    return { row, column: next, anchor, across, tabbedFrom: null };
  }
  return { row: cursor.row, column: next, anchor: cursor.row, tabbedFrom: null };
}

/** The rows of what is chosen, with all their columns. */
export function wholeRows(cursor: Cursor, extent: Pick<Extent, "columns">): Cursor {
  return { ...cursor, wholeTo: extent.columns - 1, tabbedFrom: null };
}

function entered(cursor: Cursor, by: number, extent: Extent): Cursor {
  const row = clamp(cursor.row + by, extent.rows);
  return { row, column: cursor.tabbedFrom ?? cursor.column, anchor: row, tabbedFrom: null };
}

/** Null at the table's two ends, so that Tab can leave it. */
function tabbed(cursor: Cursor, by: number, extent: Extent): Cursor | null {
  const cell = cursor.row * extent.columns + cursor.column + by;
  if (cell < 0 || cell >= extent.rows * extent.columns) return null;
  const row = Math.floor(cell / extent.columns);
  const tabbedFrom = row === cursor.row ? (cursor.tabbedFrom ?? cursor.column) : null;
  return { row, column: cell % extent.columns, anchor: row, tabbedFrom };
}

function clamp(index: number, count: number): number {
  return Math.max(0, Math.min(count - 1, index));
}

/** First and last chosen row. */
export function chosenRows({ row, anchor }: Cursor): readonly [number, number] {
  return [Math.min(row, anchor), Math.max(row, anchor)];
}

/** First and last chosen column. */
export function chosenColumns({ column, across = column, wholeTo }: Cursor): readonly [number, number] {
  if (wholeTo !== undefined) return [0, wholeTo];
  return [Math.min(column, across), Math.max(column, across)];
}

/**
 * The cursor after its rows have got another order, or some are gone: it stays with its row, and the block with its rows
 * while they stand side by side and the cursor at an end of them. Otherwise the block is dropped, so that what is marked
 * is never other rows than were chosen.
 */
export function followed(
  cursor: Cursor,
  before: readonly (string | null)[],
  after: readonly (string | null)[],
): Cursor {
  const id = before[cursor.row] ?? null;
  const alone = (row: number): Cursor => ({
    row,
    column: cursor.column,
    anchor: row,
    tabbedFrom: cursor.tabbedFrom,
  });
  if (id === null) return cursor.row === cursor.anchor ? cursor : alone(cursor.row);
  const row = after.indexOf(id);
  if (row < 0) return alone(Math.max(0, Math.min(cursor.row, after.length - 1)));
  if (cursor.row === cursor.anchor) return row === cursor.row ? cursor : { ...cursor, row, anchor: row };
  const [first, last] = chosenRows(cursor);
  const held = new Set(before.slice(first, last + 1));
  const far = cursor.anchor - cursor.row;
  for (const anchor of [row + far, row - far]) {
    const [from, to] = chosenRows({ ...cursor, row, anchor });
    const rows = Array.from({ length: to - from + 1 }, (_, i) => from + i);
    if (from < 0 || !rows.every((at) => held.has(after[at] ?? null))) continue;
    return row === cursor.row && anchor === cursor.anchor ? cursor : { ...cursor, row, anchor };
  }
  return alone(row);
}
