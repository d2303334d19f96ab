/** What hangs on the floor height: walls, trench, set-out, the band and the bill. Part of what solve returns; units and signs as in `results.ts`. */
import type { Point } from "../document/schema";

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

export interface TrenchCorner {
  readonly corner: string;
  /** Bottom of trench = top of wall - wall height - footing thickness. */
  readonly bottom: number;
  /** Existing ground - bottom: how deep to dig from the ground as it is. */
  readonly belowGround: number;
  /** Below the ground without its topsoil. */
  readonly belowStripped: number;
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

/** Heights from a lowest to a highest one, m; null: open on that side. */
export type HeightSpan = readonly [low: number | null, high: number | null];

export interface BandRule {
  readonly id: string;
  readonly kind: "notBelow" | "notAbove" | "within";
  /** "6\" of wall above finished ground": short, in words without numbers formatted. */
  readonly name: string;
  /** Floor height the rule allows up to or down to, m. Null while it has no bearing, or bounds on both sides; `place` says why. */
  readonly height: number | null;
  /** What a rule "within" allows, from the lowest up; missing: it has no bearing. */
  readonly heights?: readonly HeightSpan[];
  /** What it says of every floor alike, where the floor doesn't decide. */
  readonly atAnyFloor?: "kept" | "broken";
  /** The place on site that makes it so: "corner A", "drive, 12 m from the road". */
  readonly place: string;
  readonly at?: Point;
  /** The value behind the rule (m, or rise over run, or money), from document.rules. */
  readonly value: number;
  readonly source: string;
  readonly on: boolean;
}

/** Two rules that no floor keeps together. */
export interface BandClash {
  readonly low: BandRule;
  readonly high: BandRule;
  /** The lowest floor that the one allows and the highest that the other does. */
  readonly lowest: number;
  readonly highest: number;
  /** How far the lower limit lies above the upper one, m. */
  readonly gap: number;
}

export interface BandResult {
  /** Lowest and highest floor the rules that are on allow; null = not limited on that side. */
  readonly low: number | null;
  readonly high: number | null;
  /** All that is allowed between them, from the lowest up: one span, but where a rule "within" leaves several. */
  readonly spans: readonly HeightSpan[];
  /** The rules at the band's ends. */
  readonly lowRule: BandRule | null;
  readonly highRule: BandRule | null;
  readonly empty: boolean;
  /** The rules at the ends of an empty band; null while there is a band. */
  readonly clash: BandClash | null;
  readonly rules: readonly BandRule[];
}

/** Parts of the job, in the order of work. */
export type WorkStage =
  | "strip"
  | "undercut"
  | "earth"
  | "trench"
  | "foundation"
  | "drain"
  | "base"
  | "drive"
  | "topsoil"
  | "hours";

export interface BillItem {
  readonly id: string;
  readonly stage: WorkStage;
  readonly item: string;
  readonly quantity: number;
  readonly unit: "m3" | "m2" | "m" | "pieces" | "loads" | "hours";
  /** What the quantity may come to by what is known of it (grid, shots, test pits); null: one figure. */
  readonly range: readonly [low: number, high: number] | null;
  readonly how: string;
  /** More to order than the drawing holds, a share; 0 where none is reckoned. */
  readonly waste: number;
  /** As it comes on a truck: loose m3, kg, and whole loads; null for what doesn't come loose. */
  readonly trucked: { readonly loose: number; readonly mass: number; readonly loads: number } | null;
  /** Price typed for one unit; null: none typed, or the item isn't one that is bought. */
  readonly price: number | null;
  /** Quantity with its waste × price; null without a price. */
  readonly cost: number | null;
}

/** What the typed prices come to. */
export interface CostResult {
  readonly total: number;
  /** Items that are bought and have some quantity but no price yet, by id. */
  readonly unpriced: readonly string[];
}

/** Kinds of thing that a bill is summed by. */
export type CostGroup = "concrete" | "stone" | "earth-in" | "earth-out" | "topsoil" | "work" | "other";

/** What the priced items come to at a floor, by kind of thing. */
export interface CostPoint {
  readonly floor: number;
  readonly total: number;
  readonly parts: Readonly<Record<CostGroup, number>>;
}

export interface CostCurve {
  readonly points: readonly CostPoint[];
  /** The cheapest floor of all looked at, whether the limits allow it or not. */
  readonly least: { readonly floor: number; readonly total: number };
}

/** The curve, and the cheapest floor that the limits allow; null where they allow none. */
export interface CostAgainstFloor extends CostCurve {
  /** The bill itself, at the present floor: on the finer grid, so a hair off the curve. */
  readonly here: CostPoint;
  readonly leastAllowed: { readonly floor: number; readonly total: number } | null;
}
