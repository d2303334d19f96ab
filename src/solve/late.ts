/**
 * The part of a full solve that takes long, as plain data: another thread works it out and the window's own solver takes it.
 *
 * That thread gets the surface of the ground as arrays and the project without its shots: a million of them are never
 * copied, and nothing is levelled or triangulated twice.
 */
import type { Project } from "../document/schema";
import { pitSpots } from "../survey";
import type { CurvePoint, GradingResult, LedAway, Problem } from "./results";
import type { MadeLayout } from "./site";
import type { Trailing, TrailingEarth } from "./trailing";
import type { StandingWater } from "./water";

export type Late = LateOnBareGround | LateEarth | LateOfBuilding;

/** Water on the ground as it is: null where there is no ground. */
export interface LateOnBareGround {
  readonly kind: "bare";
  readonly water: StandingWater | null;
}

/** What comes first where the layout is a new one: the earth on its fine grid. Water, limits and the rest come after it. */
export interface LateEarth {
  readonly kind: "earth";
  readonly earth: TrailingEarth;
  readonly curve: readonly CurvePoint[];
  readonly layout: MadeLayout;
}

export interface LateOfBuilding {
  readonly kind: "built";
  readonly trailing: Trailing;
  readonly led: LedAway;
  readonly curve: readonly CurvePoint[];
  readonly grading: GradingResult;
  /** What the work comes too near to, and where it leaves the lot. */
  readonly near: readonly Problem[];
  /** Null where the window's solver has it already. */
  readonly layout: MadeLayout | null;
}

/** The project as far as the late part reads it: no shots, no pictures, no options; pits stand at their places. */
export function projectForLate(project: Project): Project {
  const { survey, drawing, building } = project;
  const spots = pitSpots(survey, building?.outline ?? []);
  const pits = survey.pits.map((pit, i) => {
    const at = spots[i]?.at;
    return at ? { ...pit, place: { kind: "at" as const, x: at[0], y: at[1] } } : pit;
  });
  return {
    ...project,
    options: [],
    survey: { ...survey, marks: [], setups: [], shots: [], grids: [], breaklines: [], pits },
    drawing: { ...drawing, underlays: [] },
  };
}
