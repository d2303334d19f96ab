/** What the window and its solving thread tell each other. */
import type { Project } from "../document/schema";
import type { GroundSurface } from "./ground-surface";
import type { Late } from "./late";
import type { SurfaceWork } from "./site";
import type { WallMend } from "./wall-mends";
import type { WayOut } from "./ways-out";

/** Each has a solver with a memory of its own: the plan, the options beside it, what is looked for. */
export type Slot = "plan" | "options" | "search";

/** A surface goes over once; after that its number says which one is meant. */
export interface SentSurface {
  readonly id: number;
  /** Null: it was sent before. */
  readonly surface: GroundSurface | null;
  /** Those still asked about; the others are forgotten. */
  readonly kept: readonly number[];
}

/** What is looked for: answers come one by one. */
export type Search = { readonly kind: "ways-out" } | { readonly kind: "wall-mends"; readonly wall: number };
export type Finding = WayOut | WallMend;

export type ThreadRequest = { readonly id: number } & (
  | {
      readonly kind: "late";
      readonly slot: Slot;
      readonly project: Project;
      readonly surface: SentSurface;
      /** The number of the layout that the window has. */
      readonly layout: number | null;
      /** The earth on a new layout comes ahead of the rest. */
      readonly inParts: boolean;
    }
  /** The surface made of it stays with the thread under this number: it needn't go there again. */
  | { readonly kind: "surface"; readonly work: SurfaceWork; readonly number: number }
  | {
      readonly kind: "search";
      readonly search: Search;
      readonly project: Project;
      readonly surface: SentSurface;
    }
  /** Worked out for nobody, and not answered: code that ran before is quicker. On the surface that the thread has under this number. */
  | { readonly kind: "warm-up"; readonly project: Project; readonly surface: number }
  /** The search with this id is given up. */
  | { readonly kind: "stop" }
);

export type ThreadReply = { readonly id: number } & (
  | { readonly kind: "late"; readonly late: Late; readonly layout: number | null }
  | { readonly kind: "surface"; readonly surface: GroundSurface }
  | { readonly kind: "found"; readonly finding: Finding }
  | { readonly kind: "done" }
  | { readonly kind: "failed"; readonly why: string }
);
