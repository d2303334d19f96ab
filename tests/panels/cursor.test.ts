import { describe, expect, it } from "vitest";
import { setupSchema, shotSchema } from "../../src/document";
import {
  type Cursor,
  chosenColumns,
  chosenRows,
  firstCursor,
  type MoveKey,
  moved,
} from "../../src/panels/levelbook/cursor";
import { lineOfRow, linesOf } from "../../src/panels/levelbook/lines";

const extent = { rows: 5, columns: 9, page: 3 };
const at = (row: number, column: number): Cursor => ({ row, column, anchor: row, tabbedFrom: null });
const key = (name: string, held: Partial<MoveKey> = {}): MoveKey => ({
  key: name,
  shiftKey: false,
  ctrlKey: false,
  metaKey: false,
  ...held,
});

/** Row and column after a run of keys. */
function ended(start: Cursor, ...keys: MoveKey[]): readonly [number, number] {
  const end = keys.reduce<Cursor>((cursor, press) => moved(cursor, press, extent) ?? cursor, start);
  return [end.row, end.column];
}

describe("the cursor of the level book", () => {
  it("moves by arrows and stops at the edges", () => {
    expect(ended(at(0, 0), key("ArrowUp"), key("ArrowLeft"))).toEqual([0, 0]);
    expect(ended(at(4, 8), key("ArrowDown"), key("ArrowRight"))).toEqual([4, 8]);
    expect(ended(at(1, 1), key("PageDown"))).toEqual([4, 1]);
    expect(ended(at(3, 4), key("Home", { ctrlKey: true }))).toEqual([0, 0]);
    expect(ended(at(0, 4), key("End"), key("ArrowDown", { ctrlKey: true }))).toEqual([4, 8]);
  });

  it("Enter after Tabs goes back to the column where they began", () => {
    expect(ended(at(1, 1), key("Tab"), key("Tab"), key("Enter"))).toEqual([2, 1]);
    expect(ended(at(1, 1), key("Enter"))).toEqual([2, 1]);
    expect(ended(at(1, 1), key("Tab"), key("ArrowRight"), key("Enter"))).toEqual([2, 3]);
    expect(ended(at(2, 1), key("Enter", { shiftKey: true }))).toEqual([1, 1]);
  });

  it("Tab goes over the end of a row, and out of the table at its ends", () => {
    expect(ended(at(1, 8), key("Tab"))).toEqual([2, 0]);
    expect(ended(at(1, 0), key("Tab", { shiftKey: true }))).toEqual([0, 8]);
    expect(moved(at(4, 8), key("Tab"), extent)).toBeNull();
    expect(moved(at(0, 0), key("Tab", { shiftKey: true }), extent)).toBeNull();
  });

  it("Shift with arrows chooses rows", () => {
    const two = moved(at(3, 1), key("ArrowUp", { shiftKey: true }), extent);
    expect(two && chosenRows(two)).toEqual([2, 3]);
    expect(chosenRows(firstCursor)).toEqual([0, 0]);
  });

  it("Shift with Space chooses whole rows, which Shift with up and down takes along", () => {
    const press = (cursor: Cursor, name: string, shiftKey = true) =>
      moved(cursor, key(name, { shiftKey }), extent) ?? cursor;
    const row = press(at(1, 2), " ");
    expect([row.row, row.column, chosenColumns(row)]).toEqual([1, 2, [0, 8]]);
    const two = press(row, "ArrowDown");
    expect([chosenRows(two), chosenColumns(two)]).toEqual([
      [1, 2],
      [0, 8],
    ]);
    expect(chosenColumns(press(two, "ArrowRight"))).toEqual([2, 3]);
    expect(chosenColumns(press(two, "ArrowDown", false))).toEqual([2, 2]);
    expect(moved(at(1, 2), key(" "), extent)).toBeNull();
  });

  it("leaves other keys alone", () => {
    expect(moved(at(0, 0), key("a"), extent)).toBeNull();
  });
});

describe("lines of the table", () => {
  const setup = (id: string) => setupSchema.parse({ id, name: id });
  const shot = (id: string, own: string) => shotSchema.parse({ id, setup: own, reading: null });

  it("have a heading wherever another set-up begins, and an empty row at the end", () => {
    const lines = linesOf([shot("s1", "u1"), shot("s2", "u1"), shot("s3", "u2")], [setup("u1"), setup("u2")]);
    expect(lines.map((line) => (line.kind === "setup" ? line.setup : `${line.kind} ${line.row}`))).toEqual([
      "u1",
      "shot 0",
      "shot 1",
      "u2",
      "shot 2",
      "new 3",
    ]);
    expect([0, 1, 2, 3].map((row) => lineOfRow(lines, row))).toEqual([1, 2, 4, 5]);
  });

  it("show the first set-up before it has shots", () => {
    expect(linesOf([], [setup("u1")]).map(({ kind }) => kind)).toEqual(["setup", "new"]);
    expect(linesOf([], []).map(({ kind }) => kind)).toEqual(["new"]);
  });
});
