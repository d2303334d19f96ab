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

/** How the finished ground falls away from a wall. */
export interface WallFall {
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
  /** It falls as much as is wanted. */
  readonly fallsEnough: boolean;
  /** Share of the wall's length towards which water runs, 0 to 1. */
  readonly runsTowards: number;
  readonly rule: string;
  readonly source: string;
}

/** Water that stands within the rule's distance of a wall. */
export interface StandingAtWall {
  /** Of its hollow, m. */
  readonly depth: number;
  /** From the wall to the water's edge, m. */
  readonly off: number;
  /** The edge nearest to the wall. */
  readonly at: Point;
  readonly guessed: boolean;
}

/** Does water reach the wall? "too few shots": nothing speaks against it, but most of the ground about it is a guess. */
export type WallVerdict = "passes" | "falls too little" | "water stands" | "too few shots";

export interface WallWater extends WallFall {
  /** Null where none stands; lags behind a drag. */
  readonly standing: StandingAtWall | null;
  /** Share of the places read about it that are a guess, 0 to 1. */
  readonly guessed: number;
  readonly verdict: WallVerdict;
  /** Nothing that is known speaks against it. */
  readonly passes: boolean;
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
  /** Longest way of water to its outlet, m, and its fall, m. */
  readonly longest: number;
  readonly fall: number;
  /** The part of it that lies in the swale's own bed, m. */
  readonly inBed: number;
  /** The ground that drains to it reaches the edge of what is known: more may come. */
  readonly touchesEdge: boolean;
  /** Time of concentration, s. */
  readonly time: number | null;
  /** Rain reckoned with, m/s: the one figure, or the table's for that time; null while none is typed. */
  readonly intensity: number | null;
  /** Where the time lies beyond the rows of the table, whose nearest row was taken. */
  readonly beyondTable: "shorter than its rows" | "longer than its rows" | null;
  /** Roof whose water comes to it, m2. */
  readonly roof: number;
  /** Ground beyond the shots that drains to it, as typed, m2: that of one swale only. */
  readonly uphill: number;
  /** C of all that drains to it, weighted by area. */
  readonly runoff: number;
  /** Peak of the storm, m3/s; null while no rain is typed. */
  readonly peak: number | null;
  /** Depth of even flow where it falls least, m, speed, m/s, and Froude's number where it is steepest; null where the bed doesn't fall. */
  readonly depth: number | null;
  readonly speed: number | null;
  readonly froude: number | null;
  /** Depth below which the peak shoots, m. */
  readonly critical: number | null;
  /** Its steepest fall, rise over run. */
  readonly steepest: number;
  /** Speed that its bed bears there, m/s; null where such a lining isn't used so steep. */
  readonly bears: number | null;
  /** Least depth of the ditch below the ground on its first two thirds, before it comes out, m, and where, m along. */
  readonly room: number | null;
  readonly roomAt: number | null;
  readonly verdict: "carries it" | "overflows" | "is scoured" | "has too little room" | null;
}

/** Where the water of each cell goes on the finished ground, hollows filled; what a run is followed by. */
export interface FlowField {
  readonly grid: Grid;
  /** The cells that a cell's water goes to; -1: none. */
  readonly first: Int32Array;
  readonly second: Int32Array;
  /** The part that goes to `first`. */
  readonly share: Float64Array;
  /** Cells in an order in which each comes before those that it drains to. */
  readonly order: Uint32Array;
  /** Heights with the hollows filled, m. */
  readonly filled: Float64Array;
}

/** The ground that drains to a place. */
export interface PlaceCatchment {
  /** m2 */
  readonly area: number;
  /** Longest way of water to the place, m, and its fall, m. */
  readonly longest: number;
  readonly fall: number;
  /** It reaches the edge of what is known: more may come from beyond. */
  readonly touchesEdge: boolean;
}

/** A way along which water gathers. */
export interface Gathered {
  /** Flat x, y, downhill. */
  readonly line: Float64Array;
  /** Area that drains to its lower end, m2. */
  readonly area: number;
}

/** Water of one slope side of the roof. */
export interface RoofSide {
  readonly wall: number;
  /** "A-B" */
  readonly name: string;
  /** In plan, overhang included, m2. */
  readonly area: number;
  /** At the storm's rain for five minutes, m3/s; null while none is typed. */
  readonly peak: number | null;
  /** Of the whole storm, m3; null while its depth isn't typed. */
  readonly volume: number | null;
  /** Where its downspouts come out; null: it drips along the eave. */
  readonly outlet: Point | null;
  /** The swale that most of it comes to, by name; null: none. */
  readonly joins: string | null;
  /** Part of it that comes to that swale. */
  readonly joining: number;
}

/** A pipe that takes a swale under a drive. */
export interface PipeResult {
  readonly swale: string;
  readonly drive: string;
  /** "swale under drive" */
  readonly name: string;
  readonly at: Point;
  /** Its ends, upstream first, and their inverts, m. */
  readonly ends: readonly [Point, Point];
  readonly inverts: readonly [number, number];
  readonly length: number;
  readonly fall: number;
  /** m3/s; null while no rain is typed. */
  readonly peak: number | null;
  /** Bore, m; null where no standard one carries it. */
  readonly bore: number | null;
  /** It was typed, not chosen. */
  readonly typed: boolean;
  /** Height of the water before its inlet, m, and what governs it; null without peak or bore. */
  readonly headwater: number | null;
  readonly by: "inlet" | "outlet" | null;
  /** Loss at the inlet, times the head of speed; Manning's n of the pipe; water that stands in the ditch below it, m. */
  readonly inletLoss: number;
  readonly roughness: number;
  readonly below: number;
  /** Lowest place of the drive over the ditch, m, where water would run over, and how far under it water must stay, m. */
  readonly lowPoint: number;
  readonly freeboard: number;
  /** Least from the pipe's top to the drive or its shoulders, m; null without a bore. */
  readonly cover: number | null;
  readonly verdict: "carries it" | "overtops" | "too little cover" | "doesn't fall" | null;
}

/** Where the drain round the footing can come out. */
export interface FootingDrainResult {
  /** Round the footing, m. */
  readonly length: number;
  /** Its highest and lowest invert, m, and the corners where they lie. */
  readonly high: number;
  readonly highCorner: string;
  readonly low: number;
  readonly lowCorner: string;
  /** How far its highest invert lies over the top of the footing, m; 0: it doesn't. */
  readonly overFooting: number;
  /** The nearest place where it comes out at the surface; null: none within reach. */
  readonly outlet: {
    readonly at: Point;
    readonly from: Point;
    readonly distance: number;
    readonly invert: number;
  } | null;
  /** How far was looked, m. */
  readonly looked: number;
  /** Water as the test pits met it against the drain; null where no placed pit met any. */
  readonly pits: DrainInWater | null;
}

/** Heights are guessed between the pits, m; positive: the water stands above the drain's invert. */
export interface DrainInWater {
  /** Pits that met water. */
  readonly count: number;
  /** Corner where it stands highest against the drain. */
  readonly corner: string;
  readonly above: number;
  /** At the outlet; null: it has none. */
  readonly aboveOutlet: number | null;
}

/** What leaves over one lot line. */
export interface LeavingWater {
  /** Index of the line: from that corner to the next. */
  readonly line: number;
  readonly middle: Point;
  /** Ground that drains out over it, m2, as it is and as planned; the roof's share counts. */
  readonly before: number;
  readonly after: number;
  /** m3/s; null while no rain is typed. */
  readonly peakBefore: number | null;
  readonly peakAfter: number | null;
  /** By what part more runs off over it in a storm, roof and ground by their C; null where nothing did before. */
  readonly growth: number | null;
  /** More runs off than before, by more than the grid can be wrong. */
  readonly rises: boolean;
}

/** Graded earth that lies bare, steep and long while the work goes on. */
export interface BareSlope {
  readonly at: Point;
  readonly area: number;
  readonly steepness: number;
  /** Longest way down it, m. */
  readonly length: number;
  /** Outlines, flat x, y rings. */
  readonly rings: readonly Float64Array[];
}

export interface BareEarth {
  readonly slopes: readonly BareSlope[];
  /** Lines of silt barrier along the low side, flat x, y, and their length together, m. */
  readonly barrier: readonly Float64Array[];
  readonly barrierLength: number;
  /** The part of it that lies over the lot's line, m; 0 while no lot is drawn. */
  readonly barrierBeyond: number;
  /** Ground that is changed, m2. */
  readonly disturbed: number;
}

/** Beside ground and swales; all of it lags behind a drag. */
export interface LedAway {
  /** Null while its shape isn't known. */
  readonly roof: readonly RoofSide[] | null;
  /** Null while it isn't asked for, or nothing goes into the ground. */
  readonly footingDrain: FootingDrainResult | null;
  readonly leaving: readonly LeavingWater[];
  readonly bareEarth: BareEarth | null;
}

export interface WaterResult extends LedAway {
  readonly pipes: readonly PipeResult[];
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
