/** A turned plan on paper: upright, to the same scale of figures, with everything beside the drawing as it was. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { sitePlan } from "../../src/sheets";
import { centred, onPage } from "../../src/sheets/paint";
import { createSolver } from "../../src/solve/pipeline";
import { demoProject } from "../support/demo";
import { readPdf } from "./readPdf";

const font = (name: string) => new Uint8Array(readFileSync(`assets/fonts/SourceSans3-${name}.ttf`));
const fonts = { regular: font("Regular"), semibold: font("SemiBold") };
const date = { year: 2026, month: 11, day: 25 };
const solver = createSolver();

async function textsAt(turn: number) {
  const project = demoProject("pottery-studio");
  const turned = { ...project, drawing: { ...project.drawing, turn } };
  const bytes = await sitePlan(turned, solver.solve(turned), {
    fonts,
    date,
    paper: "tabloid",
    compress: false,
  });
  return (await readPdf(bytes)).flatMap(({ texts }) => texts);
}

describe("a turned plan on paper", () => {
  it("keeps every figure of the tables: the set-out doesn't know of it", async () => {
    const straight = (await textsAt(0)).map(({ text }) => text);
    const turned = (await textsAt(Math.PI / 6)).map(({ text }) => text);
    const figures = straight.filter((text) => /″$|above the mark|below the mark/.test(text));
    expect(figures.length).toBeGreaterThan(20);
    // Sentences may be broken elsewhere.
    const running = turned.join(" ");
    const missing = [...new Set(figures)].filter((text) => !running.includes(text));
    // A shot's or contour's height and a tie to the lot may find no room where they lie now; all else is there.
    for (const text of missing) expect(text).toMatch(/^[−+]| line$/);
  });

  it("puts east where it is turned to, about the middle of the paper", () => {
    const bounds = { minX: -10, maxX: 10, minY: -5, maxY: 5 };
    const rect = { x: 0, y: 0, width: 200, height: 100 };
    const quarter = centred(bounds, rect, 100, Math.PI / 2);
    const [x0, y0] = onPage(quarter, 0, 0);
    const [x1, y1] = onPage(quarter, 1, 0);
    expect([x0, y0]).toEqual([expect.closeTo(100, 9), expect.closeTo(50, 9)]);
    // A metre east is ten millimetres up the page at 1:100, whose y runs down.
    expect([x1 - x0, y1 - y0]).toEqual([expect.closeTo(0, 9), expect.closeTo(-10, 9)]);
  });
});
