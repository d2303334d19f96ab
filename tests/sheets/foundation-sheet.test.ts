import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { foundationKinds, type Project } from "../../src/document/schema";
import { foundationSheet, type PaperName } from "../../src/sheets";
import { createSolver } from "../../src/solve/pipeline";
import { demoProject } from "../support/demo";
import { readPdf } from "./readPdf";

const font = (name: string) => new Uint8Array(readFileSync(`assets/fonts/SourceSans3-${name}.ttf`));
const fonts = { regular: font("Regular"), semibold: font("SemiBold") };
const date = { year: 2026, month: 11, day: 25 };

async function page(project: Project, paper: PaperName) {
  const results = createSolver().solve(project);
  const pages = await readPdf(
    await foundationSheet(project, results, { fonts, date, paper, compress: false }),
  );
  expect(pages).toHaveLength(1);
  const [only] = pages;
  if (!only) throw new Error("a sheet has a page");
  return { only, words: only.texts.map(({ text }) => text).join("\n"), results };
}

const withFoundation = (project: Project, part: object): Project =>
  project.building
    ? {
        ...project,
        building: { ...project.building, foundation: { ...project.building.foundation, ...part } },
      }
    : project;

describe("the foundation's sheet", () => {
  it.each(["letter", "tabloid", "a4", "a3"] as const)(
    "on %s keeps every text on the page and tells sides, sections, corners and cautions",
    async (paper) => {
      const { only, words } = await page(demoProject("pottery-studio"), paper);
      for (const { x, y } of only.texts) {
        expect(x).toBeGreaterThan(0);
        expect(x).toBeLessThan(only.width);
        expect(y).toBeGreaterThan(0);
        expect(y).toBeLessThan(only.height);
      }
      for (const side of ["A-B", "B-C", "C-D", "D-A"]) expect(words).toContain(`side ${side}`);
      expect(words).toContain("Section at the low corner C");
      expect(words).toContain("Corners");
      expect(words).toMatch(/Nobody|1926\.651/);
    },
  );

  it("draws the footing under a side at the scale named over it, within 0.2 percent", async () => {
    const { only, words } = await page(demoProject("pottery-studio"), "tabloid");
    expect(words).toContain("⅛″ = 1′");
    // Side A-B is 32 ft: at 1/8 in to the foot 4 in of paper, 101.6 mm.
    const widths = only.paths.flatMap(({ subpaths }) =>
      subpaths.map((points) => {
        const xs = points.filter((_, i) => i % 2 === 0);
        return Math.max(...xs) - Math.min(...xs);
      }),
    );
    expect(widths.some((width) => Math.abs(width - 101.6) < 0.2)).toBe(true);
  });

  it("tells on its sections what is set out from: floor and bottom of trench from the mark, and the frost depth", async () => {
    const { words } = await page(demoProject("pottery-studio"), "tabloid");
    // Mark at 100′ 0″, floor at 99′ 5″, 4′ of wall on 8″ of footing: 94′ 9″.
    expect(words).toContain("finished floor −7″");
    expect(words).toContain("bottom −5′ 3″");
    expect(words).toMatch(/frost \d′/);
  });

  it.each(foundationKinds)("is drawn for the kind %s", async (kind) => {
    const { words } = await page(withFoundation(demoProject("joinery-shed"), { kind }), "a3");
    expect(words).toContain("Section at the low corner");
  });

  it("says plainly that there is no building yet", async () => {
    const { words } = await page({ ...demoProject("joinery-shed"), building: null }, "a4");
    expect(words).toContain("There is no building on a ground yet.");
  });

  it("gives the same bytes for the same day", async () => {
    const project = demoProject("potting-barn");
    const results = createSolver().solve(project);
    const bytes = () => foundationSheet(project, results, { fonts, date });
    expect(Buffer.compare(await bytes(), await bytes())).toBe(0);
  });
});
