/** The steps of the job in their order, each with how far it has come. It guides and never blocks. */
import { memo } from "react";
import { lookWords } from "../solve/to-look-at";
import { setStep } from "../store/actions";
import type { StepName } from "../store/state";
import { useApp } from "../store/useApp";
import { ProblemsButton, useToLookAt } from "./Problems";
import { StateSign, stateWords, useSteps } from "./Standing";
import type { StepState } from "./steps";

export function StepsRail() {
  const present = useApp((state) => state.step);
  const look = useToLookAt();
  const list = useSteps();
  return (
    <nav className="rail" aria-label="Steps of the job" data-tour="steps">
      <ol className="rail-steps" data-keys-to-plan>
        {list.map((step) => (
          <RailStep
            key={step.name}
            name={step.name}
            title={step.title}
            state={step.state}
            figure={step.figure}
            words={step.words}
            toLookAt={step.toLookAt}
            here={step.name === present}
          />
        ))}
      </ol>
      <RailKey />
      <ProblemsButton look={look} />
    </nav>
  );
}

const states = Object.keys(stateWords) as StepState[];

/** What the signs beside the steps mean; a screen reader has the words beside each step. */
const RailKey = memo(function RailKey() {
  return (
    <ul className="rail-key" aria-hidden="true">
      {states.map((state) => (
        <li key={state}>
          <StateSign state={state} />
          {stateWords[state]}
        </li>
      ))}
    </ul>
  );
});

interface RailStepProps {
  readonly name: StepName;
  readonly title: string;
  readonly state: StepState;
  readonly figure: string;
  readonly words: string;
  readonly toLookAt: number;
  readonly here: boolean;
}

const RailStep = memo(function RailStep(props: RailStepProps) {
  const { name, title, state, figure, words, toLookAt, here } = props;
  const said = [stateWords[state], words, ...(toLookAt > 0 ? [lookWords(toLookAt)] : [])];
  return (
    <li className={name === "setout" ? "rail-apart" : undefined}>
      <button
        type="button"
        className={`rail-step${here ? " rail-here" : ""}`}
        aria-current={here ? "step" : undefined}
        title={`${title}: ${said.join("; ")}`}
        onClick={() => setStep(name)}
      >
        <StateSign state={state} />
        <span className="rail-title">{title}</span>
        <span className="visually-hidden">{`: ${said.join(", ")}; `}</span>
        <span className="rail-figure">{figure}</span>
        {toLookAt > 0 ? (
          <span
            className={`rail-count rail-count-${state === "attention" ? "pressing" : "note"}`}
            aria-hidden
          >
            {toLookAt}
          </span>
        ) : null}
      </button>
    </li>
  );
});
