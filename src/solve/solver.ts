/** What a solver is asked and answers. */
import type { Project } from "../document/schema";
import type { GroundSurface } from "./ground-surface";
import type { Late, LateEarth } from "./late";
import type { Results } from "./results";
import type { SurfaceWork } from "./site";

export interface SolveOptions {
  /** A floor height to use instead of the document's (a drag that is not yet an edit). */
  readonly floor?: number;
  /**
   * "full" (default): everything. "drag": only what depends on the floor and is needed each frame;
   * finished contours, daylight, ponds and the outside error are carried over from the last full solve, and where
   * the layout itself moves the volume curve too. "band": as in a drag, but with all limits of the floor, also those that
   * are found by trying floors.
   */
  readonly detail?: "full" | "drag" | "band";
  /** What another solver's `late` answered for the same project: nothing of it is worked out again. */
  readonly late?: Late;
}

/** Remembers its last answers by the identity of the document parts each stage reads. */
export interface Solver {
  solve(project: Project, options?: SolveOptions): Results;
  /** A full solve in steps, each yielding the share that is done: between two of them the window may draw, or stop. */
  solveInSteps(project: Project): Generator<number, Results>;
  /** Whether a full solve of it would be from memory. */
  isSettled(project: Project): boolean;
  /** Whether anything was fully solved since `forgetSettled`. */
  hasSettled(): boolean;
  /** What can be told of it first: the earth; null without a building on the ground. */
  lateEarth(project: Project): LateEarth | null;
  /** The late part of a full solve, for the solver of another thread. */
  late(project: Project): Late;
  /** The surface of the ground, from memory after a solve. */
  surface(project: Project): GroundSurface;
  /** What the surface is made of, for another thread; null where it is known. */
  surfaceWork(project: Project): SurfaceWork | null;
  /** Another plan comes: nothing of the last full solve is carried on. */
  forgetSettled(): void;
  learnSurface(work: SurfaceWork, surface: GroundSurface): void;
}
