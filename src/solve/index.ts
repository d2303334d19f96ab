export type { GroundSurface } from "./ground-surface";
export { resultsToJson } from "./json";
export { type Late, type LateEarth, projectForLate } from "./late";
export { createSolver, type SolverOptions } from "./pipeline";
export type * from "./results";
export type { SurfaceWork } from "./site";
export type * from "./solver";
