/**
 * What solve returns: everything computed from a project, for the canvas, panels, sheets and command line.
 *
 * Units  metres, square metres, cubic metres, radians; slopes rise over run. Heights in the project's datum.
 * Sign   depth = finished - existing: positive is fill, negative is cut.
 */
import type { FixEdit } from "../document/commands/mending";
import type { Point } from "../document/schema";
import type { Ground } from "../terrain/ground";
import type {
  BalanceResult,
  Contour,
  CurvePoint,
  DriveResult,
  EarthworkResult,
  GradingResult,
  GroundGrid,
  GuessedShares,
  OneStep,
  SectionLine,
} from "./results-earth";
import type {
  BandResult,
  BillItem,
  CornerResult,
  CostAgainstFloor,
  CostResult,
  SetoutResult,
  TrenchCorner,
} from "./results-floor";
import type { FoundationResult } from "./results-foundation";
import type { PitsResult, PlotResult, SurveyResult } from "./results-survey";
import type { Arrow, WaterResult } from "./results-water";

export type * from "./results-earth";
export type * from "./results-floor";
export type * from "./results-foundation";
export type * from "./results-survey";
export type * from "./results-water";

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
  /** Several that differ in one thing only are one choice: its name, "bumped before". */
  readonly choice?: string;
  readonly edits: readonly FixEdit[];
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
  /** Null without a building on measured ground. */
  readonly balance: BalanceResult | null;
  /** An inch and a centimetre higher than the floor; lags behind a drag. */
  readonly oneStep: readonly OneStep[];
  readonly trench: readonly TrenchCorner[];
  /** Null while no building stands on a ground. */
  readonly foundation: FoundationResult | null;
  readonly setout: SetoutResult;
  readonly drives: readonly DriveResult[];
  /** Null while no building stands on a ground. */
  readonly grading: GradingResult | null;
  /** Of each drive and swale, and of the trench, the part that lies on guessed ground. */
  readonly guessed: GuessedShares;
  readonly arrows: readonly Arrow[];
  readonly water: WaterResult;
  readonly band: BandResult;
  readonly bill: readonly BillItem[];
  readonly cost: CostResult;
  /** Null while nothing is priced; may lag behind a drag, but for the cheapest allowed floor. */
  readonly costs: CostAgainstFloor | null;
  /** Long section through the building, along the steepest way across it. */
  readonly section: SectionLine | null;
  readonly problems: readonly Problem[];
  /** Parts that still show an earlier floor (during a drag): the view marks them. */
  readonly lagging: boolean;
  /** The earth is reckoned on the coarse grid of a layout under the hand. */
  readonly earthLags: boolean;
}
