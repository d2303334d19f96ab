export type { PaperName } from "./papers";
export type { SheetFonts } from "./pen";
export { type SitePlanOptions, sitePlan } from "./site-plan";
