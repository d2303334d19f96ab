/** Which of the survey's dialogs is open. */
import { createStore } from "zustand/vanilla";

export type SurveyDialog =
  | { readonly kind: "run" }
  | { readonly kind: "pegs"; readonly setup: string | null }
  | { readonly kind: "stakes" };

export const surveyDialogs = createStore<{ readonly open: SurveyDialog | null }>(() => ({ open: null }));

export function openSurveyDialog(open: SurveyDialog | null): void {
  surveyDialogs.setState({ open });
}
