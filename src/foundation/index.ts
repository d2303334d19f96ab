export { type Concrete, concrete } from "./concrete";
export {
  type CornerGround,
  cornerResults,
  type FoundationLevels,
  foundationLevels,
  trenchCorners,
} from "./trench";
