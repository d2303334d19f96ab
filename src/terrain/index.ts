export { planArea, surfaceArea } from "./areas";
export {
  type Breakline,
  type HeightConflict,
  type LinedTriangulation,
  triangulateWithLines,
} from "./breaklines";
export { type ContourLevels, type ContourUnit, contourLevels } from "./contour-levels";
export { type Doubts, doubtfulRings, doubtfulTriangles, farInSpacings, pointSpacing } from "./doubt";
export type { Grid } from "./grid";
export { gridContours } from "./grid-contours";
export { gridRegions } from "./grid-regions";
export type { Ground, GroundAt, Tin } from "./ground";
export { type GroundContours, groundContours } from "./ground-contours";
export { groundAt, tinAt } from "./height";
export { locate } from "./locate";
export { fittedPlane, type PlaneAt, trianglePlane } from "./plane";
export { type Profile, profile } from "./profile";
export { type GridSample, sampleGrid } from "./sample-grid";
export { makeGround } from "./skirt";
export { tinContours } from "./tin-contours";
export { type DroppedPoint, type Triangulation, triangulate } from "./triangulate";
