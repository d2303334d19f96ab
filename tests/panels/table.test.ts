import { describe, expect, it } from "vitest";
import { type Edit, gradingEdits, type Project } from "../../src/document";
import { splitBlock } from "../../src/panels/levelbook/paste";
import { notationOf } from "../../src/panels/notation";
import {
  blockCells,
  blockText,
  fillDown,
  laidOver,
  newRows,
  refusedWords,
  seenRows,
  type TableModel,
  waitingWords,
  writeCells,
} from "../../src/panels/table/model";
import { type TableName, tableNames, tableOf } from "../../src/panels/table/tables";
import { createSolver } from "../../src/solve/pipeline";
import { demoProject } from "../support/demo";

const studio = demoProject("pottery-studio");
/** The studio with a shape of the ground of each kind. */
const shaped = ((): Project => {
  const line: [number, number][] = [
    [27, 8],
    [33, 8],
  ];
  const edits: ((project: Project) => Edit)[] = [
    (project) => gradingEdits.addPad.run(project, { outline: [...line, [33, 14]] }),
    (project) => gradingEdits.addBerm.run(project, { line }),
    (project) => gradingEdits.addRetainingWall.run(project, { line }),
    (project) => gradingEdits.addGradePoint.run(project, { at: [27, 8], height: 29 }),
  ];
  return edits.reduce((project, edit) => {
    const done = edit(project);
    if (!done.ok) throw new Error(done.why);
    return done.project;
  }, studio);
})();
const planOf = (name: TableName) => (name === "shapes" ? shaped : studio);
const table = (name: TableName, project: Project = studio): TableModel =>
  tableOf(name, project, createSolver().solve(project), notationOf(project.display));

describe("the table of shapes", () => {
  const { columns, rows, write } = table("shapes", shaped);
  const cell = (row: number, column: string) =>
    rows[row]?.cells[columns.findIndex(({ id }) => id === column)];

  it("names each kind, and shows only what belongs to it", () => {
    expect([0, 1, 2, 3].map((row) => cell(row, "kind"))).toEqual([
      "parking pad",
      "berm",
      "retaining wall",
      "grade point",
    ]);
    expect([cell(0, "topWidth"), cell(1, "gravel"), cell(2, "fillSlope")]).toEqual(["", "", ""]);
    expect(cell(1, "height")).toBe("1′ 6″");
  });

  it("a pad that is typed a height keeps it; a wall's height may be left open", () => {
    const pad = write(shaped, rows[0]?.id ?? "", "height", "98'");
    const level = pad.ok ? pad.project.grading.pads[0]?.level : null;
    expect(level).toEqual({ kind: "height", height: expect.closeTo(98 * 0.3048, 9) });
    const wall = write(shaped, rows[2]?.id ?? "", "height", "3'");
    expect(wall.ok && wall.project.grading.walls[0]?.exposed).toBeCloseTo(0.9144, 9);
    const open = wall.ok ? write(wall.project, rows[2]?.id ?? "", "height", "") : wall;
    expect(open.ok && open.project.grading.walls[0]?.exposed).toBeNull();
  });

  it("what isn't there to be typed is refused in words", () => {
    expect(write(shaped, rows[1]?.id ?? "", "gravel", "4 in")).toEqual({
      ok: false,
      why: "There is no “stone” to a berm.",
    });
  });
});

describe("every table", () => {
  it.each(tableNames)("%s: each row has a text for each column", (name) => {
    const { columns, rows } = table(name, planOf(name));
    expect(rows.length).toBeGreaterThan(0);
    expect(rows.every(({ cells }) => cells.length === columns.length)).toBe(true);
    expect(rows.flatMap(({ cells }) => cells).join()).not.toMatch(/NaN|undefined|null/);
  });

  it.each(["features", "drives", "swales", "shapes", "sides", "foundation", "earth", "limits"] as const)(
    "%s: what a cell shows, typed back, is the same to what is shown",
    (name) => {
      const plan = planOf(name);
      const model = table(name, plan);
      for (const row of model.rows)
        for (const [index, column] of model.columns.entries()) {
          const text = row.cells[index] ?? "";
          if (!column.typed || text === "" || /points$/.test(text)) continue;
          const edit = model.write(plan, row.id, column.id, text);
          if (!edit.ok) throw new Error(`${column.id} "${text}": ${edit.why}`);
          const again = tableOf(
            name,
            edit.project,
            createSolver().solve(edit.project),
            notationOf(studio.display),
          );
          expect(again.rows.find(({ id }) => id === row.id)?.cells[index]).toBe(text);
        }
    },
  );

  it.each(["drives", "swales", "sides", "foundation", "earth", "limits", "quantities", "setout"] as const)(
    "%s: what is computed isn't typed",
    (name) => {
      const model = table(name);
      const column = model.columns.find(({ typed }) => !typed);
      expect(model.write(studio, model.rows[0]?.id ?? "", column?.id ?? "", "5")).toMatchObject({
        ok: false,
      });
    },
  );
});

describe("typing", () => {
  it("says what is wrong with a value and leaves the rest of a block written", () => {
    const model = table("swales");
    const row = model.rows[0]?.id ?? "";
    const { project, refused, count } = writeCells(studio, model, [
      { row, column: "depth", text: "deep" },
      { row, column: "bottomWidth", text: "3'" },
      { row, column: "sideSlope", text: "-1" },
    ]);
    expect(count).toBe(1);
    expect(refused.map(({ column }) => column)).toEqual(["depth", "sideSlope"]);
    expect(project.grading.swales[0]?.bottomWidth).toBeCloseTo(0.9144, 9);
    expect(project.grading.swales[0]?.depth).toBe(studio.grading.swales[0]?.depth);
  });

  it("knows a feature's kind by its words, and tells the kinds where it doesn't", () => {
    const model = table("features");
    const row = model.rows[0]?.id ?? "";
    const edit = model.write(studio, row, "kind", "Stump");
    expect(edit.ok && edit.project.lot.features.find(({ id }) => id === row)?.kind).toBe("stump");
    expect(model.write(studio, row, "kind", "dragon")).toMatchObject({
      ok: false,
      why: expect.stringContaining("tree"),
    });
  });
});

const small: TableModel = {
  title: "small",
  none: "",
  columns: [
    { id: "a", title: "a", typed: true },
    { id: "b", title: "b", typed: false },
  ],
  rows: [
    { id: "1", cells: ["x 10", "p"] },
    { id: "2", cells: ["x 9", "q"] },
    { id: "3", cells: ["y", "−2"] },
  ],
  write: () => ({ ok: false, why: "" }),
};

describe("blocks", () => {
  it("a copied block leaves out computed cells and what falls beyond the table", () => {
    const block = [
      ["1", "2"],
      ["3", "4"],
      ["5", "6"],
    ];
    expect(blockCells(small, small.rows, block, { row: 1, column: 0 })).toEqual([
      { row: "2", column: "a", text: "1" },
      { row: "3", column: "a", text: "3" },
    ]);
  });

  it("fills down from the top of the chosen rows, or from the row above", () => {
    const first = { row: "2", column: "a", text: "x 10" };
    const down = (rows: [number, number], columns: [number, number]) =>
      fillDown(small, small.rows, { rows, columns });
    expect(down([0, 2], [0, 0])).toEqual([first, { ...first, row: "3" }]);
    expect(down([0, 2], [0, 1])).toEqual([first, { ...first, row: "3" }]);
    expect(down([1, 1], [0, 0])).toEqual([first]);
    expect(down([0, 0], [0, 0])).toEqual([]);
    expect(down([0, 2], [1, 1])).toEqual([]);
  });

  it("sorts figures by their size and finds rows by their words", () => {
    const ids = (rows: readonly { readonly id: string }[]) => rows.map(({ id }) => id);
    expect(ids(seenRows(small, "", { column: 0, down: false }))).toEqual(["2", "1", "3"]);
    expect(ids(seenRows(small, "", { column: 0, down: true }))).toEqual(["3", "1", "2"]);
    expect(ids(seenRows(small, "X", null))).toEqual(["1", "2"]);
    expect(ids(seenRows(small, "", null))).toEqual(["1", "2", "3"]);
  });

  it("a chosen block is copied with tabs, and goes back where it came from", () => {
    const chosen = { rows: [0, 1], columns: [0, 1] } as const;
    expect(blockText(small.rows, chosen)).toBe("x 10\tp\nx 9\tq");
    expect(blockText(small.rows, { rows: [2, 2], columns: [1, 1] })).toBe("−2");
    expect(splitBlock(blockText(small.rows, chosen))).toEqual([
      ["x 10", "p"],
      ["x 9", "q"],
    ]);
  });

  it("a single text fills all chosen cells, a block begins at their first", () => {
    const chosen = { rows: [0, 1], columns: [0, 1] } as const;
    expect(laidOver([["5"]], chosen)).toEqual([
      ["5", "5"],
      ["5", "5"],
    ]);
    expect(laidOver([["5", "6"]], chosen)).toEqual([["5", "6"]]);
  });

  it("tells how many cells were refused, names the first three and counts the others", () => {
    const cell = (row: string) => ({ row, column: "a", text: "far", why: "No length." });
    expect(refusedWords(small, [])).toBe("");
    expect(refusedWords(small, [cell("2")])).toBe(
      "1 cell not understood: the plan keeps what it had. x 9, a “far”: No length.",
    );
    const four = refusedWords(small, [cell("1"), cell("2"), cell("3"), cell("1")]);
    expect(four).toMatch(/^4 cells not understood.*x 10, a .*x 9, a .*y, a .* And 1 more\.$/);
  });
});

describe("new rows of the features", () => {
  const model = table("features");
  const old = model.rows.length;
  const rows = [...model.rows, ...newRows(model, [])];
  const pasteFrom = (row: number, block: string[][]) =>
    writeCells(studio, model, blockCells(model, rows, block, { row, column: 0 }));
  const three = [
    ["oak", "tree", "10'", "5", "-7'"],
    ["spring", "", "", "20", "30"],
    ["barn", "well", "0", "1", "2"],
  ];

  it("pasted from the empty row on are all added", () => {
    const { project, added, waiting } = pasteFrom(old, three);
    expect([added, waiting]).toEqual([3, []]);
    expect(project.lot.features.slice(0, old)).toEqual(studio.lot.features);
    expect(project.lot.features.slice(old)).toMatchObject([
      { name: "oak", kind: "tree", keepClear: 3.048, points: [[1.524, -7 * 0.3048]] },
      { name: "spring", kind: "other", keepClear: 0 },
      { name: "barn", kind: "well" },
    ]);
  });

  it("pasted over the last row go on below it", () => {
    const { project, added } = pasteFrom(old - 1, three);
    expect(added).toBe(2);
    expect(project.lot.features).toHaveLength(old + 2);
    expect(project.lot.features[old - 1]?.name).toBe("oak");
  });

  it("that aren't complete wait with what was typed, and are told", () => {
    const { project, waiting } = pasteFrom(old, [
      ["oak", "tree"],
      ["hedge", "fence", "", "1", "2"],
    ]);
    expect(project).toBe(studio);
    expect(
      newRows(
        model,
        waiting.map(({ texts }) => texts),
      ).map(({ cells }) => cells[0]),
    ).toEqual(["oak", "hedge", ""]);
    expect(waitingWords(waiting, model.columns)).toBe(
      "“oak” isn't added yet. A new feature needs how far east and how far north it stands. And 1 more.",
    );
    const row = newRows(model, [])[0]?.id ?? "";
    const texts = waiting.map((each) => each.texts).slice(0, 1);
    const cells = [
      { row, column: "east", text: "3" },
      { row, column: "north", text: "4" },
    ];
    expect(writeCells(studio, model, cells, texts)).toMatchObject({ added: 1, waiting: [] });
  });

  it("are for tables that can take them", () => {
    expect(newRows(table("quantities"), [])).toEqual([]);
    expect(blockCells(model, model.rows, three, { row: old, column: 0 })).toEqual([]);
  });
});
