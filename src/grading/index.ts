export { apronOperator } from "./apron-operator";
export { grown, union } from "./boxes";
export { centresInside } from "./cells";
export { gradingConflicts } from "./conflicts";
export { type Crossing, crossings, reachOverPipe } from "./crossings";
export { daylightLines } from "./daylight";
export {
  type DriveLine,
  type DriveNode,
  doorGap,
  driveHeight,
  drivePieces,
  endOfRun,
  floorForGrade,
  layDrive,
  mainGrade,
  withoutRepeats,
} from "./drive-line";
export { type DriveLimits, type DriveProfile, driveProfile, driveResult, stations } from "./drive-result";
export {
  type FinishBuffers,
  type Finished,
  finish,
  newBuffers,
  type OutsideVolumes,
  sumOutside,
  type Topsoil,
} from "./finish";
export { fitByWall, fitToLine, type NamedLine } from "./fit";
export { cornerName, type Footprint, type FootprintFault, footprint, onWall, type Wall } from "./footprint";
export {
  type BermLine,
  layBerm,
  layPad,
  layWall,
  type PadPlane,
  type WallLine,
} from "./ground-shapes";
export { type Layout, type LayoutArrays, layOut, layOutOn, leastCell, mostCells } from "./layout";
export { driveOperator } from "./line-operators";
export { apronId, type Limits, noLimits, type Operator } from "./operator";
export { type Act, finishHeights, operatorsOf, type Places, type Prepared, prepare } from "./operators";
export { inOrder } from "./order";
export { placesAt } from "./places";
export { type FloorRange, type GradingPlan, onDrive, type PadRule, type SideRule } from "./plan";
export { farthestLook, gradingReach, gridOver, type Reach } from "./reach";
export { retainingResults } from "./retaining";
export { shapesAt } from "./shapes-at";
export { sideReaches } from "./side-reach";
export { bedFall, bedHeight, laySwale, type SwaleLine } from "./swale-line";
export { type LayoutUnderHand, layOutUnderHand } from "./under-hand";
export { type Tightest, tightestPlaces } from "./underside";
export { nearestSegment, nowhere, type Segments, segmentsOf } from "./wall-distance";
