export { floorBand, keepsRule } from "./band";
export type { AdviceFacts, DriveLimits, Spot } from "./facts";
export { floorRules } from "./rules";
