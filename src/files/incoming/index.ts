export {
  type Apart,
  farApart,
  type KnownPoint,
  knownPoints,
  pointNamed,
  type Shift,
  shiftBetween,
  shifted,
} from "./fit";
export {
  type Bounds,
  type Incoming,
  type IncomingFaces,
  type IncomingLine,
  type IncomingPoints,
  type IncomingUnits,
  inMetres,
  type ReadResult,
  suggestedOrigin,
} from "./incoming";
export type { Job } from "./job";
export { mostRasterPoints, type RasterWish } from "./raster";
export { type FileKind, fileKind, type ReadOptions, readIncoming } from "./read";
export { mappingFault, readTableFile, type TableMapping } from "./table";
export { type ColumnUse, columnUses, guessTable, type TableForm, type TableGuess } from "./tableForm";
export { largestFile, textOf, tooLarge } from "./text";
export { mostPoints, type ThinnedPoints, thinPoints } from "./thinPoints";
export { type FileUnit, feetApart, fileUnits, metresPer, unitWords } from "./units";
