/** Places that a thing could have, drawn on the plan to be picked from: where two tapes cross there are two. */
import { createStore } from "zustand/vanilla";

export interface Candidate {
  readonly at: readonly [number, number];
  /** What a person picks: "to the left". */
  readonly words: string;
  readonly chosen: boolean;
  readonly choose: () => void;
}

export const candidateStore = createStore<{ readonly candidates: readonly Candidate[] }>(() => ({
  candidates: [],
}));

export function showCandidates(candidates: readonly Candidate[]): void {
  if (candidates.length === 0 && candidateStore.getState().candidates.length === 0) return;
  candidateStore.setState({ candidates });
}
