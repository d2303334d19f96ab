export { type Concrete, concrete } from "./concrete";
export { soilSlopes } from "./dig";
export { leastLanding, leastTread, mostRise, stepsFor } from "./doors";
export { footingSizes, leastFootingWidth, presumedBearing } from "./footing-size";
export { type FoundationInput, foundationResult } from "./foundation";
export type { PlaceWords, WallLine } from "./lines";
export { wallStrips } from "./ring-lengths";
export { stepOverlap, stepPieces } from "./steps";
export {
  type CornerGround,
  cornerResults,
  type FoundationLevels,
  foundationLevels,
  trenchCorners,
} from "./trench";
export { fillLimit, unbalancedOutside } from "./unbalanced";
