/**
 * What solve returns: everything computed from a project, for the canvas, panels, sheets and command line.
 *
 * Units  metres, square metres, cubic metres, radians; slopes rise over run. Heights in the project's datum.
 * Sign   depth = finished - existing: positive is fill, negative is cut.
 */
import type { FixEdit } from "../document/commands/mending";
import type { Point } from "../document/schema";
import type {
  CornerAngle,
  CornerMove,
  Crossing,
  LevelTape,
  OutOfSquare,
  SetbackLine,
  Squared,
  Traverse,
} from "../plot";
import type { Ground } from "../terrain/ground";

/** What the user should know or mend: where it is, what is wrong, how to mend it, in the user's words. */
export interface Problem {
  readonly code: string;
  readonly severity: "error" | "caution" | "note";
  readonly where: string;
  readonly what: string;
  readonly how: string;
  /** Place on the plan, if it has one. */
  readonly at?: Point;
  /** Document ids this concerns (shots, set-ups, drives, doors...). */
  readonly ids?: readonly string[];
  /** What one click can do about it, the likeliest first. */
  readonly fixes?: readonly Fix[];
}

/** One or more edits of the document, by the names of its commands, that are done together. */
export interface Fix {
  readonly words: string;
  readonly edits: readonly FixEdit[];
}

export interface SetupResult {
  readonly id: string;
  readonly name: string;
  /** Height of the beam, null while the set-up is not tied. */
  readonly beam: number | null;
  readonly tied: boolean;
  /** In words: "reading on Bolt in ledge", "assumed", "turning point TP1". */
  readonly tie: string;
  /** Largest disagreement between the readings that tie it, before they are adjusted, m; 0 with one. */
  readonly spread: number;
  /** Standard deviation of the beam's height, m; null or missing while the beam's accuracy or distances aren't known. */
  readonly sigma?: number | null;
  /** "up" where its rod reads up: then height = beam + reading, and `beam` is where the rod reads zero. */
  readonly reads?: "up";
  /** Steps of the beam that check shots found, in order: `by` is up positive; `from` null where nobody knows. */
  readonly moves?: readonly BeamMove[];
}

export interface BeamMove {
  /** The check shot that found it. */
  readonly check: string;
  readonly from: string | null;
  readonly by: number;
  /** Shots that wait until two of them are shot again. */
  readonly waiting: readonly string[];
}

/** A run of set-ups that comes back to a known height. */
export interface Closing {
  /** The set-up and the shot that close it. */
  readonly setup: string;
  readonly shot: string;
  /** Found - known, m, before anything is adjusted. */
  readonly misclosure: number;
  /** Set-ups that the run went through. */
  readonly setups: number;
  /** Sum of its sights where all are known, m. */
  readonly length: number | null;
  /** What the chosen class allows, m; null where it goes by a length that isn't known. */
  readonly permitted: number | null;
}

export interface LevelledPoint {
  readonly shot: string;
  readonly name: string;
  readonly kind: "mark" | "turning" | "ground" | "check";
  /** Null while the shot has no place. */
  readonly at: Point | null;
  /** Null while its set-up is not tied or the reading is empty. */
  readonly height: number | null;
  /** Height above the reference mark (the first mark), null without one. */
  readonly aboveMark: number | null;
  /** For a check or a repeated mark: found minus known, m. */
  readonly shift: number | null;
  /** Standard deviation of the height, m; null or missing while it can't be known. */
  readonly sigma?: number | null;
  /** The laser moved and nobody knows before or after this shot: no height until two such shots are shot again. */
  readonly waiting?: boolean;
}

export interface SurveyResult {
  readonly setups: readonly SetupResult[];
  /** In the order of the shots; shots set aside are not here. */
  readonly points: readonly LevelledPoint[];
  /** Reference mark: the first mark of the document. */
  readonly mark: {
    readonly id: string;
    readonly name: string;
    readonly height: number;
    readonly at: Point | null;
  } | null;
  /** Where runs of set-ups come back to a known height. */
  readonly closings: readonly Closing[];
}

/** The building as it was taped, and the lot as its deed and setbacks have it. */
export interface PlotResult {
  /** Corners from the taped sides and diagonals; null while they don't fix them (then `untaped` says why, once any is typed). */
  readonly squared: Squared | null;
  readonly untaped: string | null;
  readonly angles: readonly CornerAngle[];
  /** What to move for the planned outline, holding its first side. */
  readonly out: OutOfSquare | null;
  /** Those moves on the plan: where the corner is to be, and the way to go there (a unit vector). */
  readonly moves: readonly PlanMove[];
  /** Level lengths of the tapes, with what each lost that lay on the slope. */
  readonly tapes: readonly LevelTape[];
  readonly deed: Traverse | null;
  readonly setbacks: readonly SetbackLine[];
  /** What of the building stands in a setback. */
  readonly crossings: readonly Crossing[];
}

export interface PlanMove extends CornerMove {
  readonly at: Point;
  readonly way: Point;
}

export interface PitSummary {
  /** Pits that met this layer, of how many. */
  readonly count: number;
  readonly of: number;
  readonly mean: number;
  readonly least: number;
  readonly most: number;
}

/** What the test pits say; heights at the building's corners are guessed between the pits. */
export interface PitsResult {
  readonly count: number;
  readonly topsoil: PitSummary | null;
  readonly corners: readonly {
    readonly corner: string;
    /** Height where undisturbed ground begins. */
    readonly firm: number | null;
    readonly rock: number | null;
    readonly water: number | null;
  }[];
}

/** A regular grid of cells; cell (i, j) is at index j * columns + i, its centre at x0 + (i + 0.5) * cell. */
export interface Grid {
  readonly x0: number;
  readonly y0: number;
  readonly cell: number;
  readonly columns: number;
  readonly rows: number;
}

/** The sampled ground, before and after. One value a cell. */
export interface GroundGrid {
  readonly grid: Grid;
  readonly existing: Float64Array;
  readonly finished: Float64Array;
  /** finished - existing; NaN inside the walls (the floor stands there; see earthwork.inside). */
  readonly depth: Float32Array;
  /** 1 where the existing ground is guessed. */
  readonly guessed: Uint8Array;
  /** 1 for cells whose centre is inside the walls. */
  readonly inside: Uint8Array;
  /** Outside the walls; a depth keeps its sign, so the greatest cut is negative. */
  readonly greatestFill: { readonly depth: number; readonly at: Point } | null;
  readonly greatestCut: { readonly depth: number; readonly at: Point } | null;
}

/** Contours at one height: open or closed runs of flat x, y. */
export interface Contour {
  readonly height: number;
  /** Every fifth (or so) line, drawn heavier and labelled. */
  readonly major: boolean;
  readonly lines: readonly Float64Array[];
  /** Runs over ground between the shots that is a guess all the same; missing: none. */
  readonly guessed?: readonly Float64Array[];
}

export interface CornerResult {
  readonly name: string;
  readonly x: number;
  readonly y: number;
  /** Existing ground at the corner. */
  readonly ground: number;
  readonly guessed: boolean;
  /** Top of wall above the ground as it is now. */
  readonly wallAboveGround: number;
  /** Finished ground just outside the corner. */
  readonly finished: number;
  readonly wallAboveFinished: number;
  /** Floor above the ground as it is now. */
  readonly floorAboveGround: number;
}

export interface EarthworkResult {
  /** Under the floor, from existing ground to the underside of the base course: exact on the triangulated ground. */
  readonly inside: {
    readonly cut: number;
    readonly fill: number;
    readonly area: number;
    readonly greatestCut: number;
    readonly greatestFill: number;
  };
  /** Outside the walls, on the grid; `error` is the estimate from two resolutions, m3. */
  readonly outside: {
    readonly cut: number;
    readonly fill: number;
    readonly area: number;
    readonly error: number;
  };
  readonly total: { readonly cut: number; readonly fill: number };
  /** Share of (cut + fill) that rests on guessed ground, 0 to 1. */
  readonly guessedShare: number;
  /** Ground disturbed: building plus where finished differs from existing, m2. */
  readonly disturbedArea: number;
}

export interface CurvePoint {
  readonly floor: number;
  readonly cut: number;
  readonly fill: number;
}

export interface TrenchCorner {
  readonly corner: string;
  /** Bottom of trench = top of wall - wall height - footing thickness. */
  readonly bottom: number;
  /** Existing ground - bottom: how deep to dig from the ground as it is. */
  readonly belowGround: number;
  readonly belowFinished: number;
}

export interface SetoutRow {
  readonly what: string;
  readonly where: string;
  readonly height: number;
  /** Height above (+) or below (-) the reference mark. */
  readonly fromMark: number | null;
  /** Reading to look for at today's beam, null until a reading on the mark is known. */
  readonly reading: number | null;
}

export interface SetoutResult {
  readonly mark: string | null;
  readonly markHeight: number | null;
  readonly beam: number | null;
  readonly rows: readonly SetoutRow[];
}

export interface DriveStation {
  /** Distance along the centreline from the road, m. */
  readonly distance: number;
  readonly at: Point;
  readonly existing: number;
  readonly finished: number;
  /** Grade of the piece that starts here; positive climbs towards the building. Null at the last. */
  readonly grade: number | null;
}

export interface DriveResult {
  readonly id: string;
  readonly name: string;
  readonly length: number;
  /** Steepest grade, as an absolute value. */
  readonly steepest: number;
  readonly steepestAt: Point;
  readonly climbs: boolean;
  readonly stations: readonly DriveStation[];
}

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

export interface WaterResult {
  readonly ponds: readonly Pond[];
  readonly walls: readonly WallWater[];
  readonly swales: readonly SwaleResult[];
}

export interface BandRule {
  readonly id: string;
  readonly kind: "notBelow" | "notAbove";
  /** "6\" of wall above finished ground": short, in words without numbers formatted. */
  readonly name: string;
  /** Floor height the rule allows up to or down to, m. Null while it has no bearing yet; `place` says why. */
  readonly height: number | null;
  /** The place on site that makes it so: "corner A", "drive, 12 m from the road". */
  readonly place: string;
  readonly at?: Point;
  /** The value behind the rule (m, or rise over run), from document.rules. */
  readonly value: number;
  readonly source: string;
  readonly on: boolean;
}

export interface BandResult {
  /** Lowest and highest floor the rules that are on allow; null = not limited on that side. */
  readonly low: number | null;
  readonly high: number | null;
  readonly empty: boolean;
  readonly rules: readonly BandRule[];
}

export interface BillItem {
  readonly id: string;
  readonly item: string;
  readonly quantity: number;
  /** "m3", "m2", "loads". */
  readonly unit: "m3" | "m2" | "m" | "loads";
  readonly how: string;
}

export interface SectionLine {
  /** Distance along the section and height, pairs. */
  readonly existing: Float64Array;
  readonly finished: Float64Array;
  /** 1 per existing sample where guessed. */
  readonly guessed: Uint8Array;
  readonly start: Point;
  readonly end: Point;
  /** Distances at which the section enters and leaves the building, or null. */
  readonly building: readonly [number, number] | null;
}

export interface Results {
  readonly survey: SurveyResult;
  readonly plot: PlotResult;
  readonly pits: PitsResult;
  /** Null until three placed, levelled points make a surface. */
  readonly ground: Ground | null;
  readonly existingContours: readonly Contour[];
  readonly contourInterval: number;
  readonly floor: number | null;
  readonly topOfWall: number | null;
  readonly corners: readonly CornerResult[];
  readonly surface: GroundGrid | null;
  readonly finishedContours: readonly Contour[];
  /** Where fill or cut meets the ground. */
  readonly daylight: readonly Float64Array[];
  readonly earthwork: EarthworkResult | null;
  readonly curve: readonly CurvePoint[];
  readonly trench: readonly TrenchCorner[];
  readonly setout: SetoutResult;
  readonly drives: readonly DriveResult[];
  readonly arrows: readonly Arrow[];
  readonly water: WaterResult;
  readonly band: BandResult;
  readonly bill: readonly BillItem[];
  /** Long section through the building, along the steepest way across it. */
  readonly section: SectionLine | null;
  readonly problems: readonly Problem[];
  /** Parts that still show an earlier floor (during a drag): the view marks them. */
  readonly lagging: boolean;
}

export interface SolveOptions {
  /** A floor height to use instead of the document's (a drag that is not yet an edit). */
  readonly floor?: number;
  /**
   * "full" (default): everything. "drag": only what depends on the floor and is needed each frame;
   * finished contours, daylight, ponds and the outside error are carried over from the last full solve.
   */
  readonly detail?: "full" | "drag";
}

/** Remembers its last answers by the identity of the document parts each stage reads. */
export interface Solver {
  solve(project: import("../document/schema").Project, options?: SolveOptions): Results;
}
