/** The foundation: heights, cover, trench, steps, fill, doors and what it takes. Part of what solve returns; units and signs as in `results.ts`. */
import type { BackfillSoil, FoundationKind, Point, TrenchSoil } from "../document/schema";

export interface FoundationHeights {
  readonly floor: number;
  readonly topOfWall: number;
  /** Of the level footing, or of its highest step; null where there is no strip footing. */
  readonly topOfFooting: number | null;
  /** Bottom of trench, edge or holes at its highest and lowest. */
  readonly highestBottom: number;
  readonly lowestBottom: number;
  readonly undersideOfSlab: number;
  /** What the earth inside is brought to: under the base course, or the crawl space's ground. */
  readonly earthInside: number;
}

/** A place on a wall. */
export interface WallPlace {
  readonly wall: number;
  /** From the wall's first corner, m. */
  readonly offset: number;
  readonly at: Point;
  /** "corner A", "wall A–B, 12 ft from A". */
  readonly place: string;
}

/** One side unrolled, its first corner at 0, seen from outside or inside alike; one value a station. */
export interface WallElevation {
  readonly wall: number;
  readonly name: string;
  readonly length: number;
  readonly distance: Float64Array;
  readonly existing: Float64Array;
  /** Existing less the topsoil strip. */
  readonly stripped: Float64Array;
  readonly finished: Float64Array;
  /** 1 where the existing ground is guessed. */
  readonly guessed: Uint8Array;
  /** Bottom of trench or edge; of holes for posts. */
  readonly bottom: Float64Array;
  /** Top of rock, water and firm ground by the test pits; null without such pits. */
  readonly firm: Float64Array | null;
  readonly rock: Float64Array | null;
  readonly water: Float64Array | null;
  /** Level pieces of the footing along it, from its first corner; one where it doesn't step. */
  readonly pieces: readonly FootingPiece[];
  /** Doors and windows in it, from its first corner. */
  readonly openings: readonly ElevationOpening[];
  /** Of the wall above the finished ground, out of doors and of the earth of drives to them; endless where nothing is left. */
  readonly leastShowing: number;
  /** Null: see above. */
  readonly leastShowingAt: WallPlace | null;
  readonly mostShowing: number;
  /** The siding's lower edge, which laps over the top of wall, above the same ground. */
  readonly sidingClearance: number;
  /** Top of wall above the earth of a drive beside its door, where it is least; null: no such earth. */
  readonly besideDrive: { readonly showing: number; readonly at: WallPlace } | null;
  /** Existing ground falls along it by this, rise over run between its ends; positive: down from its first corner. */
  readonly fall: number;
}

export interface FootingPiece {
  readonly from: number;
  readonly to: number;
  /** Steps down from the level footing. */
  readonly level: number;
  readonly bottom: number;
  readonly top: number;
  readonly wallHeight: number;
}

export interface ElevationOpening {
  readonly id: string;
  readonly name: string;
  readonly kind: "door" | "window";
  readonly from: number;
  readonly to: number;
  readonly sill: number;
  /** Null: its height isn't in the project. */
  readonly head: number | null;
}

/** How a demand on depth is kept, and where it is worst. */
export interface CoverCheck {
  /** What is asked for; null: not typed yet. */
  readonly needed: number | null;
  readonly least: number;
  readonly at: WallPlace;
  /** Least − needed; null while nothing is asked. */
  readonly margin: number | null;
  /** Corners where it fails, by name. */
  readonly failing: readonly string[];
  /** Share of the walls' length where it fails. */
  readonly share: number;
}

export interface FoundationCover {
  /** Bottom below the finished ground. */
  readonly finished: CoverCheck;
  /** Bottom below the ground as it is, or as it is cut: fill not counted. */
  readonly undisturbed: CoverCheck;
  /** Which of the two the user counts for frost. */
  readonly counts: "undisturbed" | "finished";
  /** Depth into undisturbed ground (below the strip, and old fill by the pits) against its own rule; fill never adds to it. */
  readonly bearing: CoverCheck;
  /** Stretches where the bottom lies above the stripped ground. */
  readonly inFill: readonly { readonly wall: number; readonly from: number; readonly to: number }[];
}

/** What a level footing can take: (wall + footing − exposure) − the depth asked for, against the fall there is. */
export interface LevelFooting {
  /** Wall above the ground as it is at its highest along the walls. */
  readonly exposure: number;
  readonly takes: number;
  readonly fall: number;
  readonly enough: boolean;
  /** The demand that governs. */
  readonly governs: "frost" | "bearing";
  readonly highest: WallPlace;
  readonly lowest: WallPlace;
}

export interface FootingStep {
  readonly wall: number;
  readonly offset: number;
  readonly at: Point;
  /** From this height of trench bottom to that one, going along the wall. */
  readonly from: number;
  readonly to: number;
}

export interface SteppedFooting {
  readonly on: boolean;
  /** Why the rule asks for steps; empty where it doesn't. */
  readonly asked: readonly string[];
  /** Steepest fall of the ground along a wall, rise over run, and where. */
  readonly steepest: { readonly slope: number; readonly wall: string };
  readonly steps: readonly FootingStep[];
  readonly rise: number;
  readonly overlap: number;
  /** Most steps down from the level footing. */
  readonly levels: number;
  /** Concrete (wall and footing) that the steps save against a level trench as deep as the lowest step, m3. */
  readonly saved: number;
}

export interface TrenchDig {
  readonly soil: TrenchSoil;
  /** Run of its sides for one of rise; 0: upright. */
  readonly sideSlope: number;
  readonly sides: "upright" | "sloped" | "benched" | "shored";
  readonly bottomWidth: number;
  /** Below the ground as it is, or as the mass cut leaves it where that is lower. */
  readonly deepest: { readonly depth: number; readonly at: WallPlace };
  readonly widestTop: number;
  /** Below the stripped ground, or what the mass cut leaves, m3 in the bank. */
  readonly volume: number;
  /** Goes back beside and over the footing; the rest is left over, m3 in the bank. */
  readonly backfill: number;
  readonly leftOver: number;
  /** Where the heap beside each wall lies: distances out from its face, and its height. */
  readonly spoil: readonly {
    readonly wall: number;
    readonly name: string;
    readonly edge: number;
    readonly from: number;
    readonly to: number;
    readonly height: number;
    /** Loose, m3. */
    readonly loose: number;
  }[];
}

export interface UnbalancedFill {
  readonly wall: number;
  readonly name: string;
  /** Fill inside above the ground outside at its greatest, and the other way; 0 where there is none. */
  readonly inside: number;
  readonly outside: number;
  readonly worst: number;
  readonly holds: "inside" | "outside" | "none";
  readonly at: WallPlace;
  /** Null: the published tables have no such wall. */
  readonly limit: number | null;
  readonly passes: boolean;
  readonly source: string;
}

export interface FillUnderSlab {
  readonly corners: readonly {
    readonly corner: string;
    /** Stripped ground up to the base course; negative: dug out. */
    readonly depth: number;
    readonly lifts: number;
  }[];
  readonly greatest: number;
  readonly least: number;
  readonly at: Point;
  readonly lift: number;
  readonly lifts: number;
  readonly limit: number;
  readonly passes: boolean;
  /** Part of the floor stands on cut, part on fill: it may crack between. */
  readonly cutAndFill: boolean;
  readonly source: string;
}

export interface DoorLevels {
  readonly id: string;
  readonly name: string;
  readonly wall: number;
  readonly wallName: string;
  readonly at: Point;
  readonly sill: number;
  readonly sillBelowFloor: number;
  readonly existing: number;
  readonly finished: number;
  /** Sill above the finished ground outside. */
  readonly drop: number;
  /** Fall of the ground outside, rise over run, away from the wall. */
  readonly apronFall: number;
  readonly drive: {
    readonly id: string;
    readonly name: string;
    readonly end: number;
    /** Sill above the drive's end. */
    readonly lip: number;
    readonly landing: number;
    readonly landingFall: number;
    readonly steepest: number;
    /** Change of grade at the road, reckoned as level, and at the landing's edge. */
    readonly breakAtRoad: number;
    readonly breakAtLanding: number;
  } | null;
  /** Outside steps that a walk door needs; null: none. */
  readonly steps: {
    readonly risers: number;
    readonly rise: number;
    readonly tread: number;
    /** How far they reach out from the landing. */
    readonly run: number;
    readonly landing: number;
  } | null;
}

export interface FoundationPost {
  readonly wall: number;
  readonly offset: number;
  readonly at: Point;
  /** Bottom of its hole. */
  readonly bottom: number;
  /** Bottom of the hole up to the floor. */
  readonly length: number;
  /** Fill around it. */
  readonly inFill: number;
}

/** What it takes. Volumes of concrete as drawn; `withWaste` adds the typed share. */
export interface FoundationTakeOff {
  readonly footing: number;
  readonly wall: number;
  readonly slab: number;
  readonly edge: number;
  readonly pads: number;
  readonly total: number;
  readonly withWaste: number;
  readonly blocks: { readonly perCourse: number; readonly courses: number; readonly count: number } | null;
  /** Lengths of bar with laps, m. */
  readonly steel: {
    readonly footing: number;
    readonly wall: number;
    readonly uprights: { readonly count: number; readonly length: number };
    readonly slab: number;
    readonly total: number;
  };
  /** Boards or panels against concrete, m2. */
  readonly forms: { readonly footing: number; readonly wall: number; readonly edge: number };
  /** Stone under the slab, m3 compacted. */
  readonly base: number;
  readonly insulation: { readonly area: number; readonly volume: number };
  /** Sheet under the slab with laps and turned up at the edge, or over a crawl space's ground, m2; else 0. */
  readonly vapourSheet: number;
  readonly drain: { readonly pipe: number; readonly stone: number } | null;
  readonly posts: number;
}

/** A typed dimension against a published least or most. */
export interface FootingSize {
  readonly what: string;
  readonly value: number;
  readonly least: number | null;
  readonly most: number | null;
  readonly passes: boolean;
  readonly source: string;
}

export interface FoundationResult {
  readonly kind: FoundationKind;
  readonly wallKind: "poured" | "block";
  readonly backfillSoil: BackfillSoil;
  readonly heights: FoundationHeights;
  readonly walls: readonly WallElevation[];
  readonly cover: FoundationCover;
  readonly sizes: readonly FootingSize[];
  /** Null for posts, whose holes follow the ground. */
  readonly levelFooting: LevelFooting | null;
  readonly stepped: SteppedFooting | null;
  readonly dig: TrenchDig | null;
  readonly unbalanced: readonly UnbalancedFill[];
  readonly slabFill: FillUnderSlab | null;
  readonly doors: readonly DoorLevels[];
  readonly posts: readonly FoundationPost[];
  /** Of the fill inside the footprint, what the walls stand in the place of, m3 compacted. */
  readonly wallsInFill: number;
  readonly takeOff: FoundationTakeOff;
}
