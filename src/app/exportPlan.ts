/** Draws the site plan. The drawing code and its PDF writer are loaded when first needed. */
import { type Display, present } from "../document";
import { appStore, solver } from "../store/store";
import { type Files, suggestedName } from "./files";
import { sheetFonts } from "./sheetFonts";

export interface SheetChoice {
  readonly paper: Display["paper"];
  /** Metres on the ground for a metre of paper; null: the largest standard scale that fits. */
  readonly scale: number | null;
}

export async function exportSitePlan(files: Files, { paper, scale }: SheetChoice): Promise<void> {
  const project = present(appStore.getState().history);
  const [{ sitePlan }, fonts] = await Promise.all([import("../sheets"), sheetFonts()]);
  const today = new Date();
  const bytes = await sitePlan(project, solver.solve(project), {
    fonts,
    paper,
    date: { year: today.getFullYear(), month: today.getMonth() + 1, day: today.getDate() },
    ...(scale === null ? {} : { scale }),
  });
  await files.exportBytes(suggestedName(project, "-site-plan.pdf"), bytes);
}
