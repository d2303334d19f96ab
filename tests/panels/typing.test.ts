import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { newProject, type Project, surveyEdits } from "../../src/document";
import { pasteBlock, splitBlock } from "../../src/panels/levelbook/paste";
import {
  choiceByWord,
  chooseCell,
  editCell,
  readPlace,
  type TypedWord,
  typedOn,
} from "../../src/panels/levelbook/typing";
import { typingWords, understood } from "../../src/panels/levelbook/understood";
import { notationOf } from "../../src/panels/notation";
import { demoProject } from "../support/demo";

const studio = demoProject("pottery-studio");
const FOOT = 0.3048;

function added(project: Project, ...shots: Parameters<typeof surveyEdits.addShot.run>[1][]): Project {
  return shots.reduce((now, shot) => {
    const edit = surveyEdits.addShot.run(now, shot);
    if (!edit.ok) throw new Error(edit.why);
    return edit.project;
  }, project);
}

describe("a place as it is typed", () => {
  it.each([
    ["", { kind: "none" }],
    ["A", { kind: "corner", corner: 0 }],
    ["corner d", { kind: "corner", corner: 3 }],
    ["12', 34'6\"", { kind: "at", x: 12 * FOOT, y: 34.5 * FOOT }],
    ["12, 34", { kind: "at", x: 12 * FOOT, y: 34 * FOOT }],
    ["12 34", { kind: "at", x: 12 * FOOT, y: 34 * FOOT }],
    ["3,5 m; 8,25 m", { kind: "at", x: 3.5, y: 8.25 }],
    ["-2 m\t1 m", { kind: "at", x: -2, y: 1 }],
  ] as const)("%s", (text, place) => {
    const read = readPlace(text, studio);
    expect(read.ok).toBe(true);
    if (!read.ok) return;
    const { place: found } = read;
    expect(found.kind).toBe(place.kind);
    if (place.kind === "at" && found.kind === "at") {
      expect(found.x).toBeCloseTo(place.x, 9);
      expect(found.y).toBeCloseTo(place.y, 9);
    } else expect(found).toEqual(place);
  });

  it("says which corners there are", () => {
    expect(readPlace("F", studio)).toEqual({ ok: false, message: "The building has corners A to D, no F." });
    expect(readPlace("A", newProject())).toMatchObject({ ok: false });
  });

  it("says which half of a pair it can't read", () => {
    expect(readPlace("12, x7", studio)).toMatchObject({
      ok: false,
      message: expect.stringMatching(/^North: /),
    });
    expect(readPlace("by the oak", studio)).toMatchObject({
      ok: false,
      message: expect.stringContaining("by the oak"),
    });
  });
});

describe("typing in a cell", () => {
  const [first] = studio.survey.shots;
  if (!first) throw new Error("the studio has no shots");

  it("keeps the reading as it was typed beside its value", () => {
    const reading = (text: string) => {
      const edit = editCell(studio, first, "reading", text);
      return edit.ok ? edit.project.survey.shots[0]?.reading : edit.why;
    };
    const m = 1.590675; // 62⅝ × 25.4 mm
    expect(reading("5' 2 5/8\"")).toEqual({ text: "5' 2 5/8\"", m });
    expect(reading(" 62 5/8 ")).toEqual({ text: "62 5/8", m });
    expect(reading("")).toBeNull();
  });

  it("refuses words with the message for the cell", () => {
    expect(editCell(studio, first, "reading", "abc")).toMatchObject({
      ok: false,
      why: expect.stringContaining('"abc"'),
    });
    expect(editCell(studio, first, "height", "3")).toMatchObject({ ok: false });
  });

  it("a kind brings what it is read on with it", () => {
    const mark = studio.survey.marks[0]?.id;
    const edit = chooseCell(studio, first, "kind", "check");
    expect(edit.ok && edit.project.survey.shots[0]).toMatchObject({ kind: "check", of: mark });
    const back = chooseCell(studio, first, "kind", "ground");
    expect(back.ok && back.project.survey.shots[0]).toMatchObject({ kind: "ground", of: null });
    const bare = added(newProject(), {});
    const shot = bare.survey.shots[0];
    expect(shot && chooseCell(bare, shot, "kind", "mark")).toMatchObject({ ok: false });
  });

  it("a new set-up is made where it is chosen", () => {
    const edit = chooseCell(studio, first, "setup", "new");
    expect(edit.ok && edit.project.survey.setups).toHaveLength(studio.survey.setups.length + 1);
    expect(edit.ok && edit.project.survey.shots[0]?.setup).toBe(
      edit.ok && edit.project.survey.setups.at(-1)?.id,
    );
  });

  it("a letter picks the next choice that begins with it", () => {
    const ground = studio.survey.shots.find((shot) => shot.kind === "ground");
    if (!ground) throw new Error("the studio has no ground shot");
    expect(choiceByWord(studio, ground, "kind", "m")).toBe("mark");
    expect(choiceByWord(studio, ground, "kind", "C")).toBe("check");
    expect(choiceByWord(studio, ground, "kind", "x")).toBeNull();
  });

  const kinds = ["ground", "mark", "check", "turning point", "TP1", "TP2"].map((words) => ({ words }));
  const typing = (text: string, between = 100) =>
    [...text].reduce<TypedWord | null>((word, letter, i) => typedOn(word, letter, kinds, i * between), null)
      ?.text;

  it("letters make a word: the g at the end of turning is none for ground, TP2 is not TP1", () => {
    expect(typing("turning")).toBe("turning");
    expect(typing("turning", 4000)).toBe("turning");
    expect(typing("turning point")).toBe("turning point");
    expect(typing("TP2")).toBe("tp2");
  });

  it("one letter again and again goes from option to option; another after a pause begins anew, before it is a slip", () => {
    expect(typing("ttt")).toBe("t");
    expect(typing("tg", 4000)).toBe("g");
    expect(typing("tg")).toBe("t");
  });
});

describe("a reading as it was understood", () => {
  const notation = notationOf(studio.display);

  it("is told as a reading and as a height", () => {
    expect(understood(62.625 * 0.0254, notation)).toEqual(["62⅝″", "5′ 2⅝″"]);
    expect(understood(1.591, notationOf(demoProject("joinery-shed").display))).toEqual(["1.591 m"]);
  });

  it("is told while it is typed", () => {
    expect(typingWords("62 5/8", notation)).toEqual({ ok: true, words: "understood as 62⅝″ = 5′ 2⅝″" });
    expect(typingWords("62 5/", notation)?.ok).toBe(false);
    expect(typingWords("  ", notation)).toBeNull();
  });
});

describe("rows from a spreadsheet", () => {
  it("come by tabs, semicolons or commas, with or without quotes", () => {
    expect(splitBlock('a\t62 5/8"\r\nb\t5\' 3"\r\n')).toEqual([
      ["a", '62 5/8"'],
      ["b", "5' 3\""],
    ]);
    expect(splitBlock('a\t"62 5/8"""\n"b\t2"\t60')).toEqual([
      ["a", '62 5/8"'],
      ["b\t2", "60"],
    ]);
    expect(splitBlock("a;1,591;2,5;3")).toEqual([["a", "1,591", "2,5", "3"]]);
    expect(splitBlock("a,1.591,2,3")).toEqual([["a", "1.591", "2", "3"]]);
    expect(splitBlock("a\t\t")).toEqual([["a", "", ""]]);
  });

  it("write name, reading and place, add rows at the end, and keep what they can't read", () => {
    const project = added(newProject(), { name: "old", reading: "60" });
    const { edit, refused, rows } = pasteBlock(
      project,
      splitBlock("A\t62 5/8\t1\t2\nB\toops\t3\t4\nC\t70\n"),
      0,
      "name",
    );
    expect(rows).toBe(3);
    expect(edit.ok && edit.label).toBe("paste 3 rows");
    const shots = edit.ok ? edit.project.survey.shots : [];
    expect(shots.map(({ name }) => name)).toEqual(["A", "B", "C"]);
    expect(shots.map(({ reading }) => reading?.text ?? null)).toEqual(["62 5/8", null, "70"]);
    expect(shots[0]?.place).toEqual({ kind: "at", x: FOOT, y: 2 * FOOT });
    expect(shots[2]?.place).toEqual({ kind: "none" });
    expect(refused).toEqual([
      { shot: shots[1]?.id, column: "reading", text: "oops", why: expect.stringContaining("oops") },
    ]);
  });

  it("gives every new row an id of its own, after rows that are written over", () => {
    const rows = (count: number) =>
      splitBlock(Array.from({ length: count }, (_, i) => `p${i}\t60`).join("\n"));
    const first = pasteBlock(newProject(), rows(3), 0, "name").edit;
    if (!first.ok) throw new Error(first.why);
    const second = pasteBlock(first.project, rows(5), 1, "name").edit;
    if (!second.ok) throw new Error(second.why);
    const { shots } = second.project.survey;
    expect(shots.map(({ name }) => name)).toEqual(["p0", "p0", "p1", "p2", "p3", "p4"]);
    expect(new Set(shots.map(({ id }) => id)).size).toBe(6);
    expect(shots.slice(0, 3).map(({ id }) => id)).toEqual(first.project.survey.shots.map(({ id }) => id));
    expect(second.project.survey.setups).toHaveLength(1);
  });

  it("leave a heading out and fill one column down", () => {
    const project = added(newProject(), {}, {});
    const headed = pasteBlock(project, splitBlock("name,reading\nA,60\nB,61"), 0, "name");
    expect(headed.rows).toBe(2);
    const down = pasteBlock(project, splitBlock("60\n61\n62"), 0, "reading");
    expect(down.edit.ok && down.edit.project.survey.shots.map(({ reading }) => reading?.text)).toEqual([
      "60",
      "61",
      "62",
    ]);
  });

  it("never lose a cell: each text is in the project or among the refused", () => {
    const cell = fc.stringMatching(/^[A-Za-z0-9 ./'"-]{0,8}$/).map((text) => text.trim());
    fc.assert(
      fc.property(fc.array(fc.tuple(cell, cell), { minLength: 1, maxLength: 6 }), (rows) => {
        const { edit, refused } = pasteBlock(newProject(), rows, 0, "name");
        const shots = edit.ok ? edit.project.survey.shots : [];
        const heading = shots.length < rows.length ? 1 : 0;
        rows.slice(heading).forEach(([name, reading], index) => {
          const shot = shots[index];
          expect(shot?.name).toBe(name);
          const kept = shot?.reading?.text ?? refused.find((each) => each.shot === shot?.id)?.text ?? "";
          expect(kept).toBe(reading);
        });
      }),
    );
  });
});
