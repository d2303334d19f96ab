export { foundationSheet } from "./foundation-sheet";
export type { PaperName } from "./papers";
export type { SheetFonts } from "./pen";
export { type SitePlanOptions, sitePlan } from "./site-plan";
