/** The ground before and after, and the earth between. Part of what solve returns; units and signs as in `results.ts`. */
import type { Point } from "../document/schema";

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

/** What one step of the floor up adds; less is negative. */
export interface OneStep {
  readonly step: number;
  /** As compacted, and in the bank, topsoil off, m3. */
  readonly fill: number;
  readonly cut: number;
  /** Loads to bring and to take away as the bill has them, not rounded up. */
  readonly loadsIn: number;
  readonly loadsOut: number;
}

/** The floor at which the cut, compacted, just makes the fill. */
export interface BalanceResult {
  /** Null where no floor of the layout's range does; then `why` says which there is more of. */
  readonly floor: number | null;
  /** Below and above the stripped ground at that floor: cut in the bank, fill as compacted, m3. */
  readonly cut: number | null;
  readonly fill: number | null;
  readonly why: "fill at every floor" | "cut at every floor" | null;
}

export interface CurvePoint {
  readonly floor: number;
  readonly cut: number;
  readonly fill: number;
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

/** A place of a drive's long section where its grade changes, or its end. */
export interface DriveNodeResult {
  readonly kind: "road" | "break" | "landing" | "door" | "end";
  readonly distance: number;
  readonly at: Point;
  /** Where the straight grades meet; a vertical curve passes over or under it. */
  readonly height: number;
  /** Index among the drive's typed breaks; -1 for others. */
  readonly index: number;
  /** The break follows the ground as it is. */
  readonly follows: boolean;
  /** Length of its vertical curve as built in; less than typed where its neighbours leave no room. */
  readonly curve: number;
  readonly shortened: boolean;
}

/** A straight piece between two nodes. */
export interface DrivePiece {
  readonly from: number;
  readonly to: number;
  readonly grade: number;
  /** Steeper than the user's limit. */
  readonly over: boolean;
}

export interface VerticalCurve {
  readonly kind: "crest" | "sag";
  /** Distances of its start, its break and its end. */
  readonly from: number;
  readonly at: number;
  readonly to: number;
  readonly gradeIn: number;
  readonly gradeOut: number;
  /** Length for each per cent that the grade changes, m. */
  readonly lengthPerPercent: number;
  /** From the break to the curve, m. */
  readonly offset: number;
  /** Highest place of a crest, lowest of a sag; null where the grade doesn't change its sign in it. */
  readonly turning: { readonly distance: number; readonly height: number } | null;
}

/** What of the vehicle comes nearest to the drive, rolled along from the road to the door. */
export interface UndersideResult {
  readonly vehicle: string;
  readonly passes: boolean;
  /** The tightest place of each part: room left, negative where it touches. */
  readonly parts: readonly {
    readonly part: "underside" | "front" | "rear";
    readonly room: number;
    readonly distance: number;
    readonly at: Point;
  }[];
}

/** Shares of the length that lie on ground which is a guess, 0 to 1. */
export interface GuessedShares {
  readonly drives: readonly { readonly id: string; readonly share: number }[];
  readonly swales: readonly { readonly id: string; readonly share: number }[];
  /** Along the walls; null without a building. */
  readonly trench: number | null;
}

export interface DriveResult {
  readonly id: string;
  readonly name: string;
  readonly length: number;
  /** Steepest grade, as an absolute value. */
  readonly steepest: number;
  readonly steepestAt: Point;
  /** At its steepest, on the way to the building. */
  readonly climbs: boolean;
  readonly stations: readonly DriveStation[];
  readonly nodes: readonly DriveNodeResult[];
  readonly pieces: readonly DrivePiece[];
  readonly curves: readonly VerticalCurve[];
  readonly underside: UndersideResult | null;
}

/** One act on the ground, in the order in which they shape it. */
export interface ActResult {
  /** Document id; "apron" for pad and apron. */
  readonly id: string;
  readonly kind: "apron" | "pad" | "drive" | "berm" | "point" | "swale" | "wall";
  readonly name: string;
}

/** How far the side slopes run out in front of one side of the building. */
export interface SideReach {
  readonly wall: number;
  readonly name: string;
  /** False: the ground in front of it is left as it is. */
  readonly graded: boolean;
  /** Farthest place, from the wall, where the fill or cut slope meets the ground; null: none needed. */
  readonly fill: { readonly distance: number; readonly at: Point } | null;
  readonly cut: { readonly distance: number; readonly at: Point } | null;
  /** False: the slope doesn't meet the ground as far out as is looked. */
  readonly meets: boolean;
  /** About how far from the wall it would meet the ground there, on the guess that the ground goes on evenly; null: never. */
  readonly farther: number | null;
  /** Height of a wall at the apron's edge that would end it there, and how far along the side; null where it meets. */
  readonly endWall: { readonly height: number; readonly at: Point; readonly along: number } | null;
}

/** A later act has changed the surface that an earlier one made. */
export interface GradingConflict {
  readonly first: string;
  readonly second: string;
  readonly firstName: string;
  readonly secondName: string;
  /** Greatest change of height, its sign kept: negative is cut into the earlier one. */
  readonly by: number;
  readonly at: Point;
  readonly area: number;
}

export interface WallEnd {
  /** Of its line as drawn. */
  readonly end: "first" | "last";
  readonly at: Point;
  /** Along the wall and out of this end, one metre. */
  readonly towards: Point;
  /** How far past the end, along the wall, and how far in front of the wall (behind it, for a cut) that earth reaches. */
  readonly past: number;
  readonly ahead: number;
  /** False: it goes on beyond what is looked at. */
  readonly meets: boolean;
}

export interface RetainingResult {
  readonly id: string;
  readonly name: string;
  readonly length: number;
  /** Greatest height that shows with the ground as finished, and where; 0 where both sides are alike. */
  readonly exposed: number;
  readonly at: Point;
  /** Greatest height from the bottom of its footing: what permits go by. */
  readonly fromFooting: number;
  /** Height that the ground behind would come to if nothing were typed; what shows, where nothing is. */
  readonly holds: number;
  /** What it is short of that at its worst place as typed; 0 where it is high enough or left open. */
  readonly short: number;
  /** What loads it from above, in words; null: nothing. */
  readonly loadedBy: string | null;
  /** Ends round which the earth of its typed height runs on to the ground that it is to keep. */
  readonly ends: readonly WallEnd[];
  /** As long as it would have to be to keep that earth back, its top going down with the slope; its own length where none runs round, null where
   * that earth goes on beyond what is looked at. */
  readonly wantedLength: number | null;
  readonly stations: readonly {
    readonly distance: number;
    readonly at: Point;
    readonly low: number;
    readonly high: number;
  }[];
}

export interface GroundPadResult {
  readonly id: string;
  readonly name: string;
  readonly use: "parking" | "turning" | "terrace";
  readonly area: number;
  readonly middle: Point;
  readonly height: number;
  readonly lowest: number;
  readonly highest: number;
}

/** A wall that isn't built yet. */
export interface OfferedWall {
  readonly line: readonly Point[];
  /** Which side of the line, as it runs, is the lower one. */
  readonly lowSide: "left" | "right";
  /** How far it stands inside the line that it is to keep, m. */
  readonly inside: number;
}

/** What would make the slopes stop at a line. */
export interface SlopeFit {
  readonly line: string;
  /** How far from the line itself it is to stop, m: what stays clear of it. */
  readonly clear: number;
  readonly what: "fill" | "cut";
  /** Where on the line, or on the edge of what stays clear, it stands highest over (in cut: deepest under) the ground. */
  readonly at: Point;
  /** Run for one of rise that just ends there; null: nothing but a wall does. */
  readonly slope: number | null;
  /** The walls whose slopes have to be changed to it for that. */
  readonly sides: readonly string[];
  /** Height that would show of a wall that holds it: along `wall` where one is offered, else at the place. */
  readonly wallHeight: number;
  /** Where the wall that is offered would stand; null: none is. */
  readonly wall: OfferedWall | null;
}

export interface GradingResult {
  readonly order: readonly ActResult[];
  readonly sides: readonly SideReach[];
  readonly conflicts: readonly GradingConflict[];
  readonly walls: readonly RetainingResult[];
  readonly pads: readonly GroundPadResult[];
  readonly fits: readonly SlopeFit[];
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
