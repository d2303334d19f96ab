export { type Cubic, type CubicPiece, cubicAt, cubicCurve } from "./cubic-curve";
export { tinPlaneVolume } from "./plane-volume";
export { type CutFill, prismCutFill } from "./prism";
export { tinToTinVolume } from "./tin-to-tin";
export type { Volume } from "./volume";
export { fillOver, type GroundSpot, type PlaneCutFill, type VolumeCurve, volumeCurve } from "./volume-curve";
