/** How plan and texts share the paper: what the plan doesn't need goes to texts, where that helps them. */
import { describe, expect, it } from "vitest";
import { displaySchema } from "../../src/document/schema";
import { arrange } from "../../src/sheets/arrange";
import type { Block } from "../../src/sheets/block";
import { firstFit } from "../../src/sheets/flow";
import { paperNeeded, sheetChoices } from "../../src/sheets/scales";
import { withSiteNotes } from "../../src/sheets/site-notes";

const metric = displaySchema.parse({ length: "m" });
const feet = displaySchema.parse({ length: "ft-in" });

/** A block of running text: twice as wide, half as high. */
const flowing = (name: string, area: number): Block => ({
  name,
  height: (width, size) => (area * size ** 2) / width,
  draw: () => undefined,
});
const notice = flowing("open notice", 100);
const texts = (...blocks: Block[]) => ({ blocks, openNotice: notice });
const ground = (width: number, height: number) => ({ minX: 0, minY: 0, maxX: width, maxY: height });

function arranged(width: number, height: number, ...blocks: Block[]) {
  const bounds = ground(width, height);
  const found = arrange(sheetChoices(bounds, "a4", metric), bounds, "a4", texts(...blocks));
  return { ...found, needed: paperNeeded(bounds, found.sheet.scale.ratio) };
}
const names = (placed: readonly { block: Block }[]) => placed.map(({ block }) => block.name);

describe("the first sheet", () => {
  it("leaves the plan its paper where all texts find room beside it", () => {
    const { sheet, first } = arranged(30, 30, flowing("heights", 300));
    expect(names(first.placed)).toEqual(["heights"]);
    expect(sheet.layout.columns.map(({ width }) => width)).toEqual([74]);
  });

  it("gives texts what the plan doesn't need, if more of them come onto the sheet so, and no more", () => {
    // Two blocks of 84 mm in a column 74 mm wide and 151 mm high; 9 mm wider hold both.
    const { sheet, first, needed } = arranged(34, 32, flowing("heights", 900), flowing("corners", 900));
    expect(names(first.placed)).toEqual(["heights", "corners"]);
    expect(sheet.layout.columns[0]?.width).toBeGreaterThan(74);
    expect(sheet.layout.plan.width).toBeGreaterThanOrEqual(needed.width);
  });

  it("puts the key on a shelf under the plan, where that is free", () => {
    const { sheet, first } = arranged(19, 13, flowing("heights", 1500), flowing("key", 700));
    expect(names(first.placed)).toEqual(["heights", "key"]);
    const { shelf, plan, strip } = sheet.layout;
    expect(shelf?.y).toBeCloseTo(plan.y + plan.height, 9);
    expect((shelf?.y ?? 0) + (shelf?.height ?? 0)).toBeCloseTo(strip.y, 9);
    expect(first.placed[1]).toMatchObject({ x: shelf?.x, y: shelf?.y, width: shelf?.width });
  });
});

describe("further sheets", () => {
  it("are as few as may be, in type as large as those allow", () => {
    const { further } = arranged(30, 30, flowing("heights", 300), flowing("setout", 2400));
    expect(further.pages).toHaveLength(1);
    expect(further.size).toBe(4.2);
    const crowded = arranged(
      30,
      30,
      flowing("heights", 300),
      flowing("setout", 2400),
      flowing("routes", 2400),
    );
    expect(crowded.further.pages).toHaveLength(1);
    expect(crowded.further.size).toBeLessThan(4.2);
    expect(crowded.further.size).toBeGreaterThan(2.75);
  });

  it("have a block where there is room for it, not only after the one before", () => {
    const column = (x: number) => ({ x, y: 0, width: 50, height: 100 });
    const tall = (name: string, height: number): Block => ({
      name,
      height: () => height,
      draw: () => undefined,
    });
    const { placed, rest } = firstFit(
      [tall("a", 60), tall("b", 80), tall("c", 40)],
      [column(0), column(50)],
      3,
    );
    expect(rest).toEqual([]);
    expect(placed.map(({ block, x, y }) => [block.name, x, y])).toEqual([
      ["a", 0, 0],
      ["c", 0, 60],
      ["b", 50, 0],
    ]);
  });
});

describe("lines to write on", () => {
  const column = { x: 0, y: 0, width: 80, height: 100 };
  const block = (height: number): Block => ({ name: "a", height: () => height, draw: () => undefined });
  const filled = (height: number) =>
    withSiteNotes([{ block: block(height), x: 0, y: 0, width: 80 }], [column], 3);

  it("fill a column to its end", () => {
    const [, notes] = filled(40);
    expect(notes?.y).toBe(40);
    expect(notes?.block.height(80, 3)).toBe(60);
  });

  it("are left out where they would be few", () => {
    expect(filled(75)).toHaveLength(1);
  });
});

describe("scales by paper", () => {
  it("are metric ratios on metric paper, also for a project in feet, and inches on inch paper", () => {
    const lot = ground(46.3, 36);
    expect(sheetChoices(lot, "a4", feet)[0].scale.words).toBe("1:250");
    expect(sheetChoices(lot, "letter", feet)[0].scale.words).toMatch(/^1″ = \d+′$/);
    expect(sheetChoices(lot, "letter", metric)[0].scale.words).toMatch(/^1:\d+$/);
  });
});
