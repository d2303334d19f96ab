import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import type { Block } from "../../src/sheets/block";
import { chooseFirst, pour } from "../../src/sheets/flow";
import { Pen } from "../../src/sheets/pen";
import { tableBlock } from "../../src/sheets/table-block";
import { wrap } from "../../src/sheets/text";
import { readPdf } from "./readPdf";

const font = (name: string) => new Uint8Array(readFileSync(`assets/fonts/SourceSans3-${name}.ttf`));
const fonts = { regular: font("Regular"), semibold: font("SemiBold") };

const block = (name: string, height: number): Block => ({
  name,
  height: () => height,
  draw: () => undefined,
});
const column = (x: number, height: number) => ({ x, y: 0, width: 50, height });
const names = (placed: readonly { block: Block }[]) => placed.map((one) => one.block.name);

const table = (rows: number) =>
  tableBlock("long", {
    title: "Stations",
    columns: [
      { head: "place", align: "left" },
      { head: "height", align: "right" },
    ],
    rows: Array.from({ length: rows }, (_, i) => [`station ${i}`, `${i}.000`]),
    note: "a note",
  });

describe("pouring blocks into columns", () => {
  it("fills a column from the top, then the next", () => {
    const { placed, rest } = pour(
      [block("a", 40), block("b", 50), block("c", 30)],
      [column(0, 100), column(50, 60)],
      3,
    );
    expect(placed.map(({ block: { name }, x, y }) => [name, x, y])).toEqual([
      ["a", 0, 0],
      ["b", 0, 40],
      ["c", 50, 0],
    ]);
    expect(rest).toEqual([]);
  });

  it("leaves over what doesn't fit", () => {
    const { rest } = pour([block("a", 40), block("b", 80)], [column(0, 100)], 3);
    expect(rest.map((one) => one.name)).toEqual(["b"]);
  });

  it("breaks a table that is taller than a column between its rows, repeats its head and loses no row", async () => {
    const long = table(60);
    const columns = [0, 1, 2, 3].map((i) => ({ x: 60 * i, y: 0, width: 60, height: 120 }));
    expect(long.height(60, 3)).toBeGreaterThan(240);
    const { placed, rest } = pour([long], columns, 3);
    expect(rest).toEqual([]);
    expect(placed.length).toBeGreaterThan(2);
    const pen = new Pen(fonts, { title: "t", subject: "s", date: new Date(0), compress: false });
    pen.page(240, 120);
    for (const { block: part, x, y, width } of placed) {
      expect(part.height(width, 3)).toBeLessThanOrEqual(120);
      part.draw(pen, x, y, width, 3);
    }
    const texts = readPdf(await pen.finish())[0]?.texts.map((one) => one.text) ?? [];
    expect(texts.filter((text) => text.startsWith("station "))).toEqual(
      Array.from({ length: 60 }, (_, i) => `station ${i}`),
    );
    expect(texts.filter((text) => text === "place")).toHaveLength(placed.length);
    expect(texts.filter((text) => text === "a note")).toHaveLength(1);
  });
});

describe("choosing for the first page", () => {
  it("takes by importance what fits, and keeps the reading order", () => {
    const reading = [block("heights", 30), block("setout", 60), block("key", 40)];
    const { placed, rest } = chooseFirst(reading, ["heights", "key", "setout"], [column(0, 100)], 3);
    expect(names(placed)).toEqual(["heights", "key"]);
    expect(rest.map((one) => one.name)).toEqual(["setout"]);
  });
});

describe("breaking text into lines", () => {
  const lines = (text: string, width: number) =>
    wrap([{ text }], width, 3).map((line) => line.words.map((word) => word.text).join(" "));

  it("keeps feet with their inches and a number with its unit", () => {
    for (let width = 8; width < 80; width++) {
      for (const line of lines("The mark is 15′ 0½″ west of corner D, 7.4 % up and 12.5 m off.", width)) {
        expect(line).not.toMatch(/15′$|7\\.4$|12\\.5$/);
      }
    }
  });

  it("keeps every word, in order", () => {
    const text = "No one enters a trench deeper than this without protection.";
    expect(lines(text, 25).join(" ")).toBe(text);
  });
});
