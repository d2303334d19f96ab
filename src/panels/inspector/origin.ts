/** Where typed places are counted from, in the inspector and in the building's step alike. */
import { useStore } from "zustand";
import { createStore } from "zustand/vanilla";
import type { Project } from "../../document";
import { type Origin, originsOf } from "./places";

const chosen = createStore<{ readonly id: string }>(() => ({ id: "plan" }));

export const countFrom = (id: string): void => chosen.setState({ id });

/** The chosen origin while the plan has it, else the plan's own. */
export function useOrigin(project: Project): { readonly origins: readonly Origin[]; readonly from: Origin } {
  const id = useStore(chosen, (state) => state.id);
  const [plan, ...marks] = originsOf(project);
  if (!plan) throw new Error("A plan has an origin of its own.");
  return { origins: [plan, ...marks], from: marks.find((mark) => mark.id === id) ?? plan };
}
