export {
  allowedHeights,
  floorBand,
  hasBearing,
  keepsRule,
  limitTolerance,
  outsideBand,
  passedRule,
  standingIn,
} from "./band";
export { type AdviceFacts, type DriveLimits, practice, type Rule, type Spot } from "./facts";
export { floorRules, switched } from "./rules";
