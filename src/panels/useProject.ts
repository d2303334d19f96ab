/** What panels read from the store: the project under the hand, its notation, its results. */

import { useStore } from "zustand";
import type { Project } from "../document";
import type { Results } from "../solve/results";
import { calmStore } from "../store/calmStore";
import { shownProject } from "../store/store";
import { type Notation, notationOf } from "./notation";

/** A selector may walk the project's lists: it is asked again when the project is another, not in each frame of a floor drag. */
export function useProject<T>(selector: (project: Project) => T): T {
  let last: { readonly project: Project; readonly answer: T } | null = null;
  return useStore(calmStore, (state) => {
    const project = shownProject(state);
    if (last?.project !== project) last = { project, answer: selector(project) };
    return last.answer;
  });
}

export function useResults<T>(selector: (results: Results) => T): T {
  return useStore(calmStore, (state) => selector(state.results));
}

export function useNotation(): Notation {
  return notationOf(useProject((project) => project.display));
}
