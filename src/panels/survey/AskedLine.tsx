/** A reading that is asked about, below the book: the question, and its answers by click or Alt with a figure. */
import { Button } from "react-aria-components";
import { runTogether } from "../../store/actions";
import { Icon } from "../icons";
import type { Answer, Question } from "./asked";
import "./survey.css";

export interface AskedLineProps {
  readonly questions: readonly Question[];
  /** Row of the cursor: its own question comes first. */
  readonly row: number;
  readonly names: (row: number) => string;
  readonly onGo: (row: number) => void;
}

export function AskedLine({ questions, row, names, onGo }: AskedLineProps) {
  const asked = questionAt(questions, row);
  if (!asked) return null;
  return (
    <section className="book-asked" aria-label="A reading that is asked about" aria-live="polite">
      <Icon name="help" />
      <p className="book-asked-words">
        <b>{`${names(asked.row)}: `}</b>
        {asked.words}
        {questions.length > 1 ? (
          <span className="soft">{` ${questions.length - 1} more asked about.`}</span>
        ) : null}
      </p>
      <span className="book-asked-acts">
        {asked.answers.map((answer, index) => (
          <Button
            key={answer.words}
            className="button button-quiet book-answer"
            onPress={() => giveAnswer(answer)}
            aria-keyshortcuts={`Alt+${index + 1}`}
          >
            {answer.words}
            <kbd>{`Alt ${index + 1}`}</kbd>
          </Button>
        ))}
        {asked.row === row ? null : (
          <Button className="link" onPress={() => onGo(asked.row)}>
            Go to it
          </Button>
        )}
      </span>
    </section>
  );
}

/** The question of the cursor's row, else of the nearest row above it, else the first. */
export function questionAt(questions: readonly Question[], row: number): Question | null {
  const above = questions.filter((question) => question.row <= row);
  return above.at(-1) ?? questions[0] ?? null;
}

export function giveAnswer({ words, edit }: Answer): void {
  runTogether(words.charAt(0).toLowerCase() + words.slice(1), [edit]);
}

/** Alt with a figure gives that answer; tells whether it did. */
export function answerByKey(
  questions: readonly Question[],
  row: number,
  press: { readonly altKey: boolean; readonly code: string },
): boolean {
  const figure = /^Digit([1-9])$/.exec(press.code)?.[1];
  if (!press.altKey || figure === undefined) return false;
  const answer = questionAt(questions, row)?.answers[Number(figure) - 1];
  if (!answer) return false;
  giveAnswer(answer);
  return true;
}
