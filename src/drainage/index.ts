export { downhillArrows } from "./arrows";
export {
  bedShear,
  type ChannelShape,
  criticalDepth,
  froude,
  manningFlow,
  normalDepth,
  wetted,
} from "./channel";
export { type Flood, flood } from "./flood";
export { type Catchment, catchmentOf, type Flow, type FlowGround, flowOver, runFrom } from "./flow";
export { gatheredWays } from "./gathered";
export { findPonds, leastPondArea, leastPondDepth, type WaterGround } from "./ponds";
export {
  intensityFor,
  kirpichTime,
  leastTime,
  rationalPeak,
  shallowSpeed,
  sheetTime,
  weightedC,
} from "./runoff";
export { swaleResult, type Words } from "./swale";
export {
  bestTaut,
  type Route,
  type Routed,
  type RouteSite,
  type RouteWays,
  type RouteWish,
  routeSwale,
} from "./swale-route";
export { type WallNormals, wallNormals, wallWater } from "./walls";
