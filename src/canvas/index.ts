export { PlanCanvas } from "./PlanCanvas";
export { Rod } from "./rod/Rod";
export { SectionStrip } from "./section/SectionStrip";
