export { daylightLines } from "./daylight";
export {
  type DriveLine,
  doorGap,
  driveHeight,
  floorForGrade,
  layDrive,
  mainGrade,
  withoutRepeats,
} from "./drive-line";
export { type DriveProfile, driveProfile, driveResult, stations } from "./drive-result";
export {
  type FinishBuffers,
  type Finished,
  finish,
  newBuffers,
  type OutsideVolumes,
  sumOutside,
} from "./finish";
export { cornerName, type Footprint, type FootprintFault, footprint, onWall, type Wall } from "./footprint";
export { type Layout, layOut, layOutOn, leastCell, mostCells } from "./layout";
export { finishHeights, type Places, type Prepared, prepare } from "./operators";
export { placesAt } from "./places";
export { type FloorRange, type GradingPlan, onDrive, type PadRule } from "./plan";
export { farthestLook, gradingReach, gridOver, grown, union } from "./reach";
export { bedHeight, laySwale, type SwaleLine } from "./swale-line";
export { nearestSegment, nowhere, type Segments, segmentsOf } from "./wall-distance";
