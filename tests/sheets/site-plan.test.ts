import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { openProject, type Project } from "../../src/document";
import { boxesOverlap } from "../../src/drawing/labels";
import { textWidth } from "../../src/drawing/text-width";
import { type PaperName, sitePlan } from "../../src/sheets";
import { createSolver } from "../../src/solve/pipeline";
import type { Results } from "../../src/solve/results";
import { toLookAt } from "../../src/solve/to-look-at";
import { wordsFor } from "../../src/solve/words";
import { type PdfPage, type PdfText, readPdf } from "./readPdf";

const font = (name: string) => new Uint8Array(readFileSync(`assets/fonts/SourceSans3-${name}.ttf`));
const fonts = { regular: font("Regular"), semibold: font("SemiBold") };
const date = { year: 2026, month: 11, day: 25 };
const demos = readdirSync("demo-projects").filter((name) => name.endsWith(".drysill.json"));
const papers: readonly PaperName[] = ["letter", "tabloid", "a4", "a3"];

/** Opened and solved once each: every paper is drawn of the same results. */
const opened = new Map<string, Project>();
const solved = new WeakMap<Project, Results>();

function demo(name: string): Project {
  const before = opened.get(name);
  if (before) return before;
  const file = openProject(readFileSync(`demo-projects/${name}`, "utf8"));
  if (!file.ok) throw new Error(JSON.stringify(file.problems));
  opened.set(name, file.project);
  return file.project;
}

function resultsOf(project: Project): Results {
  const results = solved.get(project) ?? createSolver().solve(project);
  solved.set(project, results);
  return results;
}

function pdf(project: Project, paper: PaperName, compress: boolean) {
  return sitePlan(project, resultsOf(project), { fonts, date, paper, compress });
}

async function pagesOf(project: Project, paper: PaperName): Promise<readonly PdfPage[]> {
  return readPdf(await pdf(project, paper, false));
}

const words = (pages: readonly PdfPage[]) =>
  pages
    .flatMap((page) => page.texts)
    .map((text) => text.text)
    .join("\n");

/** A 10 m by 6 m building on a lot, turned by 20°, on a plane of shots. */
function tenMetreWall(length: "m" | "ft-in"): Project {
  const base = demo("joinery-shed.drysill.json");
  const [c, s] = [Math.cos(0.35), Math.sin(0.35)];
  const outline = (
    [
      [0, 0],
      [10, 0],
      [10, 6],
      [0, 6],
    ] as const
  ).map(([x, y]): [number, number] => [12 + x * c - y * s, 8 + x * s + y * c]);
  if (!base.building) throw new Error("the shed has a building");
  return {
    ...base,
    display: { ...base.display, length },
    building: { ...base.building, outline, doors: [] },
    grading: { ...base.grading, drives: [], swales: [] },
  };
}

/** The scale that the sheet names, as metres on the ground for one of paper. */
function namedRatio(pages: readonly PdfPage[]): number {
  const text = pages[0]?.texts.map((one) => one.text).find((one) => one.startsWith("Scale ")) ?? "";
  const [, metric] = /1:(\d+)/.exec(text) ?? [];
  if (metric) return Number(metric);
  const [, feet] = /1″ = (\d+)′/.exec(text) ?? [];
  if (feet) return Number(feet) * 12;
  const parts: Record<string, number> = { "¼″": 48, "³⁄₁₆″": 64, "⅛″": 96, "³⁄₃₂″": 128, "¹⁄₁₆″": 192 };
  return parts[/Scale (\S+) = 1′/.exec(text)?.[1] ?? ""] ?? Number.NaN;
}

describe("the site plan is drawn to a true scale", () => {
  it.each([
    ["a4", "m"],
    ["a3", "m"],
    ["letter", "ft-in"],
    ["tabloid", "ft-in"],
  ] as const)(
    "a 10 m wall on %s in %s measures its length over the named scale, within 0.2 percent",
    async (paper, length) => {
      const pages = await pagesOf(tenMetreWall(length), paper);
      const ratio = namedRatio(pages);
      // The outside of the walls is the only line 0.9 mm wide with four corners.
      const walls = pages[0]?.paths.filter(
        (path) => path.width !== null && Math.abs(path.width - 0.9) < 0.001,
      );
      expect(walls).toHaveLength(1);
      const [x0 = 0, y0 = 0, x1 = 0, y1 = 0, x2 = 0, y2 = 0] = walls?.[0]?.subpaths[0] ?? [];
      const expected = 10_000 / ratio;
      expect(Math.abs(Math.hypot(x1 - x0, y1 - y0) / expected - 1)).toBeLessThan(0.002);
      expect(Math.abs(Math.hypot(x2 - x1, y2 - y1) / (0.6 * expected) - 1)).toBeLessThan(0.002);
      // North is up and east to the right: the first wall runs right and, on the page, up.
      expect(Math.atan2(y0 - y1, x1 - x0)).toBeCloseTo(0.35, 3);
    },
  );

  it.each([
    ["a4", "m", 100],
    ["tabloid", "ft-in", 101.6],
  ] as const)("the check bar on %s is exactly as long as it says", async (paper, length, mm) => {
    const pages = await pagesOf(tenMetreWall(length), paper);
    expect(words(pages)).toContain(`This line is ${length === "m" ? "100 mm" : "4 in"} long`);
    const bars = pages[0]?.paths.filter(({ subpaths: [points = []] }) => {
      const [x0 = 0, y0 = 0, x1 = 0, y1 = 0] = points;
      return points.length === 4 && y0 === y1 && Math.abs(x1 - x0 - mm) < 0.01;
    });
    expect(bars).toHaveLength(1);
  });
});

/** The paper that a text takes, a little less than its letters so that neighbours may touch. */
function boxOf({ text, font: name, x, y, angle, size }: PdfText) {
  const weight = name === "F2" ? 600 : 400;
  const [along, up] = [textWidth(text, size, weight) / 2, size * 0.22];
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  return {
    x: x + along * c + up * s,
    y: y + along * s - up * c,
    width: Math.max(0, along * 2 - 0.4),
    height: size * 0.62,
    angle,
  };
}

describe.each(demos)("the site plan of %s", (name) => {
  it.each(papers)(
    "on %s: no text lies on another or off the page, none is smaller than 2.2 mm",
    async (paper) => {
      for (const page of await pagesOf(demo(name), paper)) {
        const boxes = page.texts.map((text) => ({ text, box: boxOf(text) }));
        for (const [i, { text, box }] of boxes.entries()) {
          expect(text.size, text.text).toBeGreaterThanOrEqual(2.2);
          expect(text.text).not.toContain("\ufffd");
          const reach =
            (box.width * Math.abs(Math.cos(box.angle)) + box.height * Math.abs(Math.sin(box.angle))) / 2;
          expect(box.x - reach, text.text).toBeGreaterThan(8.5);
          expect(box.x + reach, text.text).toBeLessThan(page.width - 8.5);
          for (const other of boxes.slice(i + 1)) {
            const met = boxesOverlap(box, other.box) ? `"${text.text}" on "${other.text.text}"` : "";
            expect(met).toBe("");
          }
        }
      }
    },
  );
});

describe("what the site plan tells", () => {
  it("are the solve's figures: corners, trench and set-out in the project's notation", async () => {
    const project = demo("pottery-studio.drysill.json");
    const results = resultsOf(project);
    const told = words(await pagesOf(project, "tabloid"));
    for (const corner of results.corners) expect(told).toContain(corner.name);
    expect(results.setout.rows.length).toBeGreaterThan(5);
    for (const row of results.setout.rows) expect(told).toContain(row.what.split(" ")[0]);
    for (const part of [
      "Corners and trench",
      "Set out from capped bolt",
      "Reading on the mark today:",
      "Along the drive and the swale",
      "Key",
      "Before work and at work",
      "OSHA 29 CFR",
      "Not a survey",
      "2026-11-25",
      "Pottery studio",
      "of cut",
      "of fill",
    ]) {
      expect(told).toContain(part);
    }
  });

  it("number the stations alike in the set-out, along the swale and the drive, and on the plan", async () => {
    const texts = (await pagesOf(demo("pottery-studio.drysill.json"), "tabloid")).map((page) =>
      page.texts.map((one) => one.text),
    );
    const [plan = [], tables = []] = texts;
    const results = createSolver().solve(demo("pottery-studio.drysill.json"));
    const where = results.setout.rows.map((row) => row.where);
    const pegs = where.flatMap((text) => /^[SD]\d+(?=,)/.exec(text) ?? []);
    expect(pegs.length).toBeGreaterThan(8);
    expect(new Set(pegs).size).toBe(pegs.length);
    expect(pegs.filter((peg) => !tables.includes(peg))).toEqual([]);
    expect(pegs.filter((peg) => !plan.includes(peg))).toEqual([]);
  });

  it("tell what to add to the mark's reading, the tapes, the footing, the stone and whose road it is", async () => {
    const project = demo("pottery-studio.drysill.json");
    const told = words(await pagesOf(project, "tabloid")).replaceAll("\n", " ");
    expect(told).toContain("add to the mark's");
    // 7 in below the mark reads 7 in more; the trench's bottom, 5 ft 3 in below it, 63 in more.
    expect(told).toContain("+7″");
    expect(told).toContain("+63″");
    expect(told).toContain("Wall 8″ thick, 4′ 0″ high, on a footing 1′ 4″ wide, 8″ thick");
    expect(told).toContain("8″ of stone, side slopes 3:1");
    expect(told).toContain("earth under");
    expect(told).toContain("Tape to the corners");
    expect(told).toContain("The drive crosses the lot line: ask whoever owns the road before work.");
    expect(told).toContain("keep off 12′");
    expect(told).toContain("contours every 3″");
    expect(told).toContain("big door, wall C-D");
    const barn = demo("potting-barn.drysill.json");
    expect(words(await pagesOf(barn, "letter"))).toContain("contours every 3″");
    const decimal = { ...barn, display: { ...barn.display, length: "ft" as const, rounding: 1 } };
    expect(words(await pagesOf(decimal, "letter"))).toContain("contours every 0.10′");
    const bare = words(
      await pagesOf({ ...project, grading: { ...project.grading, swales: [] } }, "tabloid"),
    ).replaceAll("\n", " ");
    expect(bare).toContain("Along the drive");
    expect(bare).not.toContain("and the swale");
  });

  it("put a notice at the head of the first sheet where the open points flow to the second", async () => {
    const project = demo("open-hillside.drysill.json");
    for (const paper of papers) {
      const [first, second] = (await pagesOf(project, paper)).map((page) =>
        page.texts.map((one) => one.text).join(" "),
      );
      const here = first?.includes("Still open when this was drawn") ?? false;
      expect(first?.includes("STILL OPEN:"), paper).toBe(!here);
      if (!here) expect(second, paper).toContain("Still open when this was drawn");
    }
  });

  it("names what is still open: a floor far too low breaks limits", async () => {
    const project = demo("pottery-studio.drysill.json");
    if (!project.building) throw new Error("the studio has a building");
    const sunk = { ...project, building: { ...project.building, floor: project.building.floor - 2 } };
    expect(words(await pagesOf(sunk, "a3"))).toMatch(/the floor: It stands .* too low for “/);
  });

  it("of an empty project says that nothing is there", async () => {
    const base = demo("pottery-studio.drysill.json");
    const empty: Project = {
      ...base,
      lot: { ...base.lot, outline: [], features: [] },
      survey: { ...base.survey, marks: [], setups: [], shots: [] },
      building: null,
      grading: { ...base.grading, drives: [], swales: [] },
    };
    expect(words(await pagesOf(empty, "letter"))).toContain("Nothing has been drawn or shot yet.");
  });

  it("cuts long names short instead of letting them run over", async () => {
    const base = demo("pottery-studio.drysill.json");
    const long = "The long narrow storage building behind the old orchard of the upper farm by the mill";
    const project: Project = {
      ...base,
      name: long,
      title: {
        owner: long,
        place: long,
        drawnBy: long,
        revision: "12: floor up one inch and the drive moved",
      },
    };
    const pages = await pagesOf(project, "letter");
    for (const page of pages) {
      for (const text of page.texts) {
        const box = boxOf(text);
        if (text.angle === 0) expect(box.x + box.width / 2, text.text).toBeLessThan(page.width - 8.5);
      }
    }
    expect(words(pages)).toMatch(/^The long narrow storage.*…$/m);
  });
});

describe("the file", () => {
  it("is the same, byte for byte, when made twice", async () => {
    const project = demo("joinery-shed.drysill.json");
    const [one, two] = [await pdf(project, "a4", true), await pdf(project, "a4", true)];
    expect(Buffer.compare(one, two)).toBe(0);
  });

  it("embeds every font it uses and says who made it", async () => {
    const bytes = await pdf(demo("joinery-shed.drysill.json"), "a4", false);
    const file = new TextDecoder("latin1").decode(bytes);
    const used = file.match(/\/Type \/Font\n/g) ?? [];
    const embedded = file.match(/\/FontFile2 /g) ?? [];
    expect(embedded).toHaveLength(2);
    // A font and its descendant each; none of the reader's own fonts.
    expect(used).toHaveLength(4);
    expect(/Helvetica|Times|Courier/.test(file)).toBe(false);
    const [, author] = /\/Author (\d+) 0 R/.exec(file) ?? [];
    expect(file.includes(`\n${author} 0 obj\n(Drysill)\n`)).toBe(true);
  });
});

describe("texts on the plan", () => {
  it("clear the paper by their letters' own shape, not by a box that hides walls and rings", async () => {
    const bytes = await pdf(demo("pottery-studio.drysill.json"), "letter", false);
    const file = new TextDecoder("latin1").decode(bytes);
    expect(file.match(/\n1 Tr\n/g)?.length).toBeGreaterThan(20);
  });
});

describe("open points", () => {
  it.each(["pottery-studio", "joinery-shed", "potting-barn", "open-hillside"])(
    "of %s are those of the window's list, word for word, and as many",
    async (name) => {
      const project = demo(`${name}.drysill.json`);
      const results = resultsOf(project);
      const listed = toLookAt(project, results.problems, results, results.floor, wordsFor(project.display));
      const [first, ...others] = await pagesOf(project, "letter");
      const told = words([first as PdfPage, ...others]).replace(/\n/g, " ");
      for (const { what } of listed) expect(told).toContain(what);
      const notice = /STILL OPEN: (\d+) points?/.exec(words([first as PdfPage]));
      if (notice) expect(Number(notice[1])).toBe(listed.length);
      expect(told.includes("Still open when this was drawn")).toBe(listed.length > 0);
    },
  );

  it("are all told, the mark's missing place first, the same place's together", async () => {
    const base = demo("pottery-studio.drysill.json");
    if (!base.building) throw new Error("the studio has a building");
    const project: Project = {
      ...base,
      survey: { ...base.survey, marks: base.survey.marks.map((mark) => ({ ...mark, at: null })) },
      building: { ...base.building, foundation: { ...base.building.foundation, frostDepth: null } },
    };
    for (const paper of papers) {
      const pages = await pagesOf(project, paper);
      expect(words(pages.slice(0, 1)), paper).toContain("Still open when this was drawn");
      const told = words(pages).replace(/\n/g, " ");
      const mark = told.indexOf("It has no place on the plan");
      expect(mark, paper).toBeGreaterThan(0);
      const frost = told.indexOf("The frost depth of the place isn't typed");
      expect(frost, paper).toBeGreaterThan(mark);
      expect(told, paper).not.toContain("see the project");
      expect(told, paper).toContain("nothing is taped from it");
    }
  });

  it("are told to the last where they fill more than a page", async () => {
    const barn = demo("potting-barn.drysill.json");
    const results = createSolver().solve(barn);
    const problems = Array.from({ length: 120 }, (_, i) => ({
      code: "trouble",
      severity: i % 2 === 0 ? ("note" as const) : ("error" as const),
      where: `place ${i}`,
      what: `trouble ${i}.`,
      how: "mend it",
    }));
    const bytes = await sitePlan(
      barn,
      { ...results, problems },
      { fonts, date, paper: "letter", compress: false },
    );
    const told = words(readPdf(bytes)).replace(/\n/g, " ");
    for (const { what } of problems) expect(told).toContain(what);
    expect(told.indexOf("trouble 119.")).toBeLessThan(told.indexOf("trouble 0."));
  });
});

describe("standing water", () => {
  it("is told with its depth and nearest corner, however much else is open", async () => {
    const barn = demo("potting-barn.drysill.json");
    const results = createSolver().solve(barn);
    expect(results.water.ponds).toHaveLength(1);
    const trouble = Array.from({ length: 9 }, (_, i) => ({
      code: "trouble",
      severity: "caution" as const,
      where: `place ${i}`,
      what: `trouble ${i}`,
      how: "mend it",
    }));
    const bytes = await sitePlan(
      barn,
      { ...results, problems: trouble },
      { fonts, date, paper: "letter", compress: false },
    );
    const told = words(readPdf(bytes)).replace(/\n/g, " ");
    for (const { what } of trouble) expect(told).toContain(what);
    expect(told).toMatch(/Water stands up to .+ deep, .+ of corner [A-D], over/);
  });
});
