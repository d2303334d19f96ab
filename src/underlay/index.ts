export { exifOrientation, type Orientation, uprightMatrix, uprightSize, withoutOrientation } from "./exif";
export { type PictureHeader, readHeader } from "./header";
export { fittedSize, pictureLimits } from "./limits";
export {
  byKnownDistances,
  cornersOnPlan,
  type KnownDistance,
  type Placement,
  pictureToPlan,
  placedByOnePoint,
  placedByTwoPoints,
  planToPicture,
  scaledAbout,
  showsPlace,
  turnedAbout,
} from "./placement";
export { isWhole } from "./whole";
