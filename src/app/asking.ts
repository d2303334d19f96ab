/** A question that waits for its answer: the dialog shows it, the asker gets the choice. */
import { createStore } from "zustand/vanilla";

export interface Question {
  readonly title: string;
  readonly text: string;
  /** First the one that does what was meant, last the one that leaves everything as it is. */
  readonly choices: readonly {
    readonly id: string;
    readonly words: string;
    readonly look?: "accent" | "plain" | "quiet";
  }[];
}

interface Asked {
  readonly question: Question | null;
  readonly answer: (id: string) => void;
}

const nobody = () => undefined;
export const askedStore = createStore<Asked>(() => ({ question: null, answer: nobody }));

/** Resolves to the id of the choice; the last choice where the dialog is closed without one. */
export function ask(question: Question): Promise<string> {
  askedStore.getState().answer(lastChoice(askedStore.getState().question));
  return new Promise((resolve) => {
    const answer = (id: string) => {
      askedStore.setState({ question: null, answer: nobody });
      resolve(id);
    };
    askedStore.setState({ question, answer });
  });
}

export function lastChoice(question: Question | null): string {
  return question?.choices.at(-1)?.id ?? "";
}
