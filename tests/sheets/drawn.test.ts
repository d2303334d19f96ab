/** What a person wrote and drew beside the works is on the sheet: as text, and as lines at the true scale. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { drawingEdits, type Project, windowEdits } from "../../src/document";
import { sitePlan } from "../../src/sheets";
import { createSolver } from "../../src/solve/pipeline";
import { checkEdit } from "../support/checkEdit";
import { demoProject } from "../support/demo";
import { type PdfPage, readPdf } from "./readPdf";

const font = (name: string) => new Uint8Array(readFileSync(`assets/fonts/SourceSans3-${name}.ttf`));
const fonts = { regular: font("Regular"), semibold: font("SemiBold") };
const date = { year: 2026, month: 11, day: 25 };

async function firstPage(project: Project, scale: number): Promise<PdfPage> {
  const bytes = await sitePlan(project, createSolver().solve(project), {
    fonts,
    date,
    paper: "a3",
    scale,
    compress: false,
  });
  return readPdf(bytes)[0] as PdfPage;
}

function drawnOn(): Project {
  let project = demoProject("pottery-studio");
  project = checkEdit(project, drawingEdits.addNote, {
    at: [8, 8],
    text: "hedge stays",
    pointsTo: [10, 12],
  });
  project = checkEdit(project, drawingEdits.addDimension, {
    from: { kind: "at", x: 6, y: 4 },
    to: { kind: "at", x: 21.5, y: 4 },
    offset: 0,
  });
  project = checkEdit(project, drawingEdits.addSection, {
    line: [
      [5, 15],
      [30, 15],
    ],
  });
  return checkEdit(project, windowEdits.addWindow, { wall: 0, offset: 1, width: 1.2 });
}

const texts = (page: PdfPage) => page.texts.map(({ text }) => text);
/** Lengths of the straight lines of the page, mm. */
const lengths = (page: PdfPage) =>
  page.paths.flatMap(({ subpaths }) =>
    subpaths.flatMap((points) => {
      const [x0, y0, x1, y1] = points as [number, number, number, number];
      return points.length === 4 ? [Math.hypot(x1 - x0, y1 - y0)] : [];
    }),
  );

describe("the site plan", () => {
  it("has notes, dimensions, section lines and windows, lines true to scale", async () => {
    const page = await firstPage(drawnOn(), 200);
    // 15.5 m is 50 ft 10¼ in.
    expect(texts(page)).toEqual(expect.arrayContaining(["hedge stays", "50′ 10¼″", "P", "section line"]));
    const near = (mm: number) => lengths(page).filter((length) => Math.abs(length - mm) < 0.002 * mm);
    // At 1:200 the dimension is 77.5 mm, the section line 125 mm, the leader √(2² + 4²) m = 22.36 mm, the window 6 mm.
    for (const mm of [77.5, 125, 22.3607, 6]) expect(near(mm).length, `${mm} mm`).toBeGreaterThan(0);
  });

  it("leaves out what is hidden", async () => {
    const hidden = checkEdit(drawnOn(), drawingEdits.hideThings, {
      things: [
        { kind: "note", id: "n1" },
        { kind: "section", id: "x1" },
      ],
      hidden: true,
    });
    const page = await firstPage(hidden, 200);
    expect(texts(page)).not.toContain("hedge stays");
    expect(texts(page)).not.toContain("section line");
    expect(texts(page)).toContain("50′ 10¼″");
  });
});
