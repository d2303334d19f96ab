export { resultsToJson } from "./json";
export { createSolver, type SolverOptions } from "./pipeline";
export type * from "./results";
