/** Which of the survey's dialogs is open. */
import { createStore } from "zustand/vanilla";
import { noStakes, type Stakes } from "./stakes";

export type SurveyDialog =
  | { readonly kind: "run" }
  | { readonly kind: "pegs"; readonly setup: string | null }
  | { readonly kind: "stakes" };

export const surveyDialogs = createStore<{ readonly open: SurveyDialog | null }>(() => ({ open: null }));

/** What was typed of a grid of stakes; kept while its row is clicked on the plan. */
export const stakesDraft = createStore<{ readonly stakes: Stakes }>(() => ({ stakes: noStakes }));

export function openSurveyDialog(open: SurveyDialog | null): void {
  surveyDialogs.setState({ open });
}
