export { floorBand, keepsRule } from "./band";
export { type AdviceFacts, type DriveLimits, floorRules, type Spot } from "./rules";
