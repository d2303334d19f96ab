export {
  allowedHeights,
  floorBand,
  hasBearing,
  keepsRule,
  limitTolerance,
  nearestWithin,
  outsideBand,
  passedRule,
  standingIn,
} from "./band";
export { type AdviceFacts, type DriveLimits, practice, type Rule, type Spot } from "./facts";
export { floorRules, switched } from "./rules";
