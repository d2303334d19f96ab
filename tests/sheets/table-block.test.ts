import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { textWidth } from "../../src/drawing/text-width";
import { cellLines, fitTable } from "../../src/sheets/table-block";
import type { Table } from "../../src/sheets/tables";

const heads = ["at", "ground now", "wall above it", "finished ground", "top of wall", "dig from now"];
const corners: Table = {
  title: "Corners and trench",
  columns: heads.map((head, i) => ({
    head,
    align: i === 0 ? "left" : "right",
    strong: i === 0 || i === 3,
  })),
  rows: [
    ["A", "+1′ 1⅝″", "9⅜″", "+1′ 3″", "+2′ 1″", "3′ 7⅛″"],
    ["D", "≈ −1′ 10⅞″", "≈ 2⅜″ under", "−1′ 11¼″", "−1′ 10″", "≈ 4′ 2⅜″"],
  ],
};

/** Every cell's lines beside the width of its column; the sum of columns and gaps beside the table's. */
function judge(table: Table, width: number, size: number): void {
  const { parts, size: set } = fitTable(table, width, size);
  expect(set).toBeGreaterThanOrEqual(0.8 * size - 1e-9);
  const shown = new Set<string>();
  for (const { table: part, widths } of parts) {
    const all = widths.columns.reduce((sum, one) => sum + one, 0) + widths.gap * (part.columns.length - 1);
    expect(all).toBeLessThanOrEqual(width + 1e-6);
    for (const [i, column] of part.columns.entries()) {
      shown.add(column.head);
      const own = widths.columns[i] ?? 0;
      for (const row of part.rows) {
        const text = row[i] ?? "";
        const lines = cellLines(text, column, own, set);
        for (const line of lines) {
          expect(textWidth(line, set, column.strong ? 600 : 400)).toBeLessThanOrEqual(own + 0.06);
        }
        // Nothing is cut away.
        expect(lines.join(" ").replaceAll(" ", "")).toBe(text.replaceAll(" ", ""));
      }
    }
  }
  expect([...shown].sort()).toEqual([...new Set(table.columns.map((column) => column.head))].sort());
}

describe("a table's columns", () => {
  it("keep the corners' letters and every guessed figure inside, however narrow the paper", () => {
    for (const width of [140, 90, 72, 64, 58, 52, 46, 40, 34]) judge(corners, width, 2.5);
  });

  it("are set whole at full size where there is room, and in smaller type before figures are broken", () => {
    expect(fitTable(corners, 140, 2.5).size).toBe(2.5);
    const tight = fitTable(corners, 74, 2.5);
    expect(tight.parts).toHaveLength(1);
    expect(fitTable(corners, 34, 2.5).parts.length).toBeGreaterThan(1);
  });

  it("hold any figures at any width", () => {
    const figure = fc.constantFrom(
      "",
      "A",
      "≈ −12′ 10⅞″",
      "≈ 2⅜″ under",
      "+1′ 3″",
      "12.345",
      "as it is",
      "dig 3¼″",
    );
    const table = fc.integer({ min: 2, max: 8 }).chain((count) =>
      fc.array(fc.array(figure, { minLength: count, maxLength: count }), { minLength: 1, maxLength: 6 }).map(
        (rows): Table => ({
          title: "Figures",
          columns: Array.from({ length: count }, (_, i) => ({
            head: `head ${i}`,
            align: i === 0 ? "left" : "right",
          })),
          rows: rows.map((row, i) => [String.fromCharCode(65 + i), ...row.slice(1)]),
        }),
      ),
    );
    fc.assert(
      fc.property(table, fc.integer({ min: 36, max: 120 }), (one, width) => judge(one, width, 2.5)),
      { numRuns: 150 },
    );
  });
});
