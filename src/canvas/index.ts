export { PlanCanvas } from "./PlanCanvas";
export { Rod } from "./rod/Rod";
export { SectionStrip } from "./section/SectionStrip";
export { planTools, type ToolEntry } from "./tools/toolList";
export { fitBuilding, fitPlan, showPlace, zoomByStep, zoomStep } from "./view/planView";
