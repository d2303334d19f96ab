/** Where water runs and stands. Part of what solve returns; units and signs as in `results.ts`. */
import type { Point } from "../document/schema";
import type { Grid } from "./results-earth";

/** One downhill arrow on the finished ground. */
export interface Arrow {
  readonly x: number;
  readonly y: number;
  /** Downhill direction, unit vector. */
  readonly dx: number;
  readonly dy: number;
  readonly slope: number;
}

export interface Pond {
  readonly at: Point;
  readonly depth: number;
  readonly area: number;
  readonly volume: number;
  readonly waterLevel: number;
  readonly spill: Point;
  readonly guessed: boolean;
  /** Outlines of the water, flat x, y rings. */
  readonly rings: readonly Float64Array[];
}

export interface WallWater {
  /** "A-B" */
  readonly name: string;
  readonly wall: number;
  /** Least fall away within the first 10 ft (3.048 m) or the apron, m. */
  readonly fallAway: number;
  /** Fall the rule wants over the same distance, m. */
  readonly needed: number;
  /** Distance from the wall over which it is wanted, m; less than 10 ft where another wall stands nearer. */
  readonly within: number;
  /** A drive, landing or other hard surface lies there, for which a gentler fall is enough. */
  readonly paved: boolean;
  readonly passes: boolean;
  /** Share of the wall's length towards which water runs, 0 to 1. */
  readonly runsTowards: number;
  readonly rule: string;
  readonly source: string;
}

export interface SwaleStation {
  readonly distance: number;
  readonly at: Point;
  readonly existing: number;
  readonly bed: number;
  readonly fall: number | null;
}

export interface SwaleResult {
  readonly id: string;
  readonly name: string;
  readonly length: number;
  /** Least bed fall along the line, rise over run (negative: it runs backwards). */
  readonly leastFall: number;
  /** The bed falls all along at least at the least fall and its outlet reaches the surface. */
  readonly drains: boolean;
  readonly why: string;
  readonly stations: readonly SwaleStation[];
}

/** Water that comes to a swale in the storm, and how it runs in it. */
export interface SwaleFlow {
  readonly id: string;
  /** Ground that drains to it, m2: on the grid, with what was typed for beyond it. */
  readonly catchment: number;
  /** Longest way of water to it, m, and its fall, m. */
  readonly longest: number;
  readonly fall: number;
  /** The ground that drains to it reaches the edge of what is known: more may come. */
  readonly touchesEdge: boolean;
  /** Time of concentration, s. */
  readonly time: number | null;
  /** Peak of the storm, m3/s; null while no rain is typed. */
  readonly peak: number | null;
  /** Depth of even flow in it, m, its speed, m/s, and Froude's number; null where the bed doesn't fall. */
  readonly depth: number | null;
  readonly speed: number | null;
  readonly froude: number | null;
  /** Least depth of the ditch below the ground on its first two thirds, before it comes out, m, and where, m along. */
  readonly room: number | null;
  readonly roomAt: number | null;
  readonly verdict: "carries it" | "overflows" | "is scoured" | null;
}

/** Where the water of each cell goes on the finished ground, hollows filled; what a run is followed by. */
export interface FlowField {
  readonly grid: Grid;
  /** The cells that a cell's water goes to; -1: none. */
  readonly first: Int32Array;
  readonly second: Int32Array;
  /** The part that goes to `first`. */
  readonly share: Float64Array;
}

/** A way along which water gathers. */
export interface Gathered {
  /** Flat x, y, downhill. */
  readonly line: Float64Array;
  /** Area that drains to its lower end, m2. */
  readonly area: number;
}

export interface WaterResult {
  /** Of each swale; lags behind a drag. */
  readonly flows: readonly SwaleFlow[];
  readonly gathered: readonly Gathered[];
  /** Of each wall in order, the ground whose water comes to it, m2; lags behind a drag. */
  readonly toWalls: readonly number[];
  /** Null before there is any ground; lags behind a drag. */
  readonly flow: FlowField | null;
  readonly ponds: readonly Pond[];
  readonly walls: readonly WallWater[];
  readonly swales: readonly SwaleResult[];
}
