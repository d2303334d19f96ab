/** What panels read from the store: the project under the hand, its notation, its results. */

import { useStore } from "zustand";
import type { Project } from "../document";
import type { Results } from "../solve/results";
import { calmStore } from "../store/calmStore";
import { shownProject } from "../store/store";
import { type Notation, notationOf } from "./notation";

export function useProject<T>(selector: (project: Project) => T): T {
  return useStore(calmStore, (state) => selector(shownProject(state)));
}

export function useResults<T>(selector: (results: Results) => T): T {
  return useStore(calmStore, (state) => selector(state.results));
}

export function useNotation(): Notation {
  return notationOf(useProject((project) => project.display));
}
