/** Draws the site plan. The drawing code and its PDF writer are loaded when first needed. */
import { type Project, present } from "../document";
import { sheetBounds } from "../drawing";
import type { PaperName } from "../sheets/papers";
import { chooseSheet } from "../sheets/scales";
import { billCsv } from "../solve/bill-csv";
import type { Results } from "../solve/results";
import { tell } from "../store/actions";
import { appStore, solver } from "../store/store";
import { type Files, suggestedName } from "./files";
import { sheetFonts } from "./sheetFonts";

export interface SheetChoice {
  readonly paper: PaperName;
  /** Metres on the ground for a metre of paper; null: the largest standard scale that fits. */
  readonly scale: number | null;
  /** Whether pictures under the plan are printed. */
  readonly pictures: boolean;
}

/** The site plan as it would be exported, and how many sheets it has. */
export interface DrawnPlan {
  readonly name: string;
  readonly bytes: Uint8Array<ArrayBuffer>;
  readonly sheets: number;
}

export async function drawSitePlan({ paper, scale, pictures }: SheetChoice): Promise<DrawnPlan> {
  const project = present(appStore.getState().history);
  const [{ sitePlan }, fonts] = await Promise.all([import("../sheets"), sheetFonts()]);
  const bytes = await sitePlan(project, solver.solve(project), {
    fonts,
    paper,
    pictures,
    date: today(),
    ...(scale === null ? {} : { scale }),
  });
  return { name: suggestedName(project, "-site-plan.pdf"), bytes, sheets: sheetCount(bytes) };
}

/** The foundation's sheet on the project's paper, handed out as a file; what goes wrong is said. */
export async function exportFoundation(files: Pick<Files, "exportBytes">): Promise<void> {
  try {
    const project = present(appStore.getState().history);
    const [{ foundationSheet }, fonts] = await Promise.all([import("../sheets"), sheetFonts()]);
    const bytes = await foundationSheet(project, solver.solve(project), { fonts, date: today() });
    await files.exportBytes(suggestedName(project, "-foundation.pdf"), bytes);
  } catch (error) {
    tell({
      tone: "error",
      text: "The foundation's sheet could not be drawn. Your plan is unchanged.",
      more: error instanceof Error ? error.message : String(error),
    });
  }
}

/** The bill as a table for a spreadsheet. */
export async function exportBill(files: Pick<Files, "exportBytes">): Promise<void> {
  const project = present(appStore.getState().history);
  const text = billCsv(solver.solve(project), project.display);
  await files.exportBytes(suggestedName(project, "-bill.csv"), new TextEncoder().encode(text));
}

function today() {
  const now = new Date();
  return { year: now.getFullYear(), month: now.getMonth() + 1, day: now.getDate() };
}

/** Pages of a PDF whose page objects stand uncompressed in it, as ours do. */
export function sheetCount(pdf: Uint8Array): number {
  const text = new TextDecoder("latin1").decode(pdf);
  return [...text.matchAll(/\/Type\s*\/Page\b(?!s)/g)].length;
}

/** The scale that each paper gets where none is chosen, in words. */
export function scalesAhead(project: Project, results: Results): Readonly<Record<PaperName, string>> {
  const bounds = sheetBounds(project, results);
  const words = (paper: PaperName) =>
    bounds ? chooseSheet(bounds, paper, project.display).scale.words : "nothing drawn yet";
  return { letter: words("letter"), tabloid: words("tabloid"), a4: words("a4"), a3: words("a3") };
}
