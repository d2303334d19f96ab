export { downhillArrows } from "./arrows";
export { type BareGround, bareCells, lineLength, siltBarrier, steepPieces } from "./bare-earth";
export {
  bedShear,
  type ChannelShape,
  criticalDepth,
  froude,
  manningFlow,
  normalDepth,
  wetted,
} from "./channel";
export {
  type Culvert,
  headwater,
  leastPipe,
  type PipeKind,
  pipeKinds,
  standardPipes,
} from "./culvert";
export { type FlowGround, floodOver } from "./flood";
export {
  atBorder,
  type Catchment,
  catchmentOf,
  type Flow,
  type FlowMethod,
  flowOver,
  gatheredFrom,
  runFrom,
} from "./flow";
export { type DrainRun, footingDrain } from "./footing-drain";
export { gatheredWays } from "./gathered";
export { findPonds, leastPondArea, leastPondDepth, type WaterGround } from "./ponds";
export { type RoofPart, roofParts } from "./roof";
export {
  intensityFor,
  kirpichTime,
  leastTime,
  rationalPeak,
  shallowSpeed,
  sheetTime,
  weightedC,
} from "./runoff";
export { levelBed, swaleResult, type Words } from "./swale";
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
