/** Swale between two places: a click for its start, one for its outlet, and the program lays the line. */
export { ready as swaleRouteTool } from "./ready";
