/** What panels read from the store: the project under the hand, its notation, its results. */
import type { Project } from "../document";
import type { Results } from "../solve/results";
import { shownProject } from "../store/store";
import { useApp } from "../store/useApp";
import { type Notation, notationOf } from "./notation";

export function useProject<T>(selector: (project: Project) => T): T {
  return useApp((state) => selector(shownProject(state)));
}

export function useResults<T>(selector: (results: Results) => T): T {
  return useApp((state) => selector(state.results));
}

export function useNotation(): Notation {
  return notationOf(useProject((project) => project.display));
}
