/** What the readings, the tapes and the pits say. Part of what solve returns; units and signs as in `results.ts`. */
import type { Point } from "../document/schema";
import type {
  CornerAngle,
  CornerMove,
  Crossing,
  LevelTape,
  LotSize,
  OutOfSquare,
  SetbackLine,
  Squared,
  Traverse,
} from "../plot";

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
  /** Readings that tie it but contradict the others: the beam isn't taken from them. Missing while there are none. */
  readonly keptOut?: readonly TieKeptOut[];
  /** Standard deviation of the beam's height, m; null or missing while the beam's accuracy or distances aren't known. */
  readonly sigma?: number | null;
  /** "up" where its rod reads up: then height = beam + reading, and `beam` is where the rod reads zero. */
  readonly reads?: "up";
  /** Steps of the beam that check shots found, in order: `by` is up positive; `from` null where nobody knows. */
  readonly moves?: readonly BeamMove[];
}

export interface TieKeptOut {
  readonly shot: string;
  /** The beam would move by so much if it were taken from this one, m, up positive. */
  readonly by: number;
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
  /** A tape that contradicts the others as only a misread one does; then `squared` and `out` are by the others, `moves` is empty. */
  readonly misread: MisreadResult | null;
  readonly angles: readonly CornerAngle[];
  /** What to move for the planned outline, holding its first side. */
  readonly out: OutOfSquare | null;
  /** Those moves on the plan: where the corner is to be, and the way to go there (a unit vector). */
  readonly moves: readonly PlanMove[];
  /** Level lengths of the tapes, with what each lost that lay on the slope. */
  readonly tapes: readonly LevelTape[];
  /** What the drawn lot lines enclose, curves as curves, and their length; null without a lot. */
  readonly lot: LotSize | null;
  readonly deed: Traverse | null;
  readonly setbacks: readonly SetbackLine[];
  /** What of the building stands in a setback. */
  readonly crossings: readonly Crossing[];
}

export interface MisreadResult {
  /** "A–C"; null where it can't be told which. */
  readonly tape: string | null;
  /** In words: what doesn't fit, and what to do. */
  readonly what: string;
  readonly how: string;
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
