export type { Grid } from "./grid";
export type { Ground, GroundAt, Tin } from "./ground";
export { groundAt, tinAt } from "./height";
export { locate } from "./locate";
export { fittedPlane, type PlaneAt, trianglePlane } from "./plane";
export { type Profile, profile } from "./profile";
export { type GridSample, sampleGrid } from "./sample-grid";
export { makeGround } from "./skirt";
export { type DroppedPoint, type Triangulation, triangulate } from "./triangulate";
