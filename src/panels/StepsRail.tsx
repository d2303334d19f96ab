/** The steps of the job in their order, each with how far it has come. It guides and never blocks. */
import { memo, useMemo } from "react";
import { setStep } from "../store/actions";
import type { StepName } from "../store/state";
import { useApp } from "../store/useApp";
import { ProblemsButton } from "./Problems";
import { type StepState, steps } from "./steps";
import { useNotation, useProject, useResults } from "./useProject";

export function StepsRail() {
  const project = useProject((present) => present);
  const results = useResults((present) => present);
  const notation = useNotation();
  const present = useApp((state) => state.step);
  const list = useMemo(() => steps(project, results, notation), [project, results, notation]);
  return (
    <nav className="rail" aria-label="Steps of the job">
      <ol className="rail-steps">
        {list.map((step) => (
          <RailStep
            key={step.name}
            name={step.name}
            title={step.title}
            state={step.state}
            figure={step.figure}
            words={step.words}
            here={step.name === present}
          />
        ))}
      </ol>
      <ProblemsButton />
    </nav>
  );
}

interface RailStepProps {
  readonly name: StepName;
  readonly title: string;
  readonly state: StepState;
  readonly figure: string;
  readonly words: string;
  readonly here: boolean;
}

const stateWords: Readonly<Record<StepState, string>> = {
  empty: "nothing yet",
  work: "in work",
  complete: "complete",
  attention: "needs attention",
};

const RailStep = memo(function RailStep({ name, title, state, figure, words, here }: RailStepProps) {
  return (
    <li className={name === "setout" ? "rail-apart" : undefined}>
      <button
        type="button"
        className={`rail-step${here ? " rail-here" : ""}`}
        aria-current={here ? "step" : undefined}
        title={`${title}: ${stateWords[state]}. ${words}`}
        onClick={() => setStep(name)}
      >
        <StateSign state={state} />
        <span className="rail-title">{title}</span>
        <span className="visually-hidden">{`: ${stateWords[state]}, ${words}; `}</span>
        <span className="rail-figure">{figure}</span>
      </button>
    </li>
  );
});

/** A shape for each state, so that colour is not the only sign. */
function StateSign({ state }: { state: StepState }) {
  return (
    <svg className={`state state-${state}`} viewBox="0 0 14 14" aria-hidden="true">
      {state === "attention" ? <path d="M7 .8 13.6 12.6H.4z" /> : <circle cx="7" cy="7" r="5" />}
      {state === "work" ? <path className="state-inner" d="M7 2a5 5 0 0 1 0 10z" /> : null}
      {state === "complete" ? <path className="state-inner" d="m4.6 7.2 1.7 1.7 3.2-3.6" /> : null}
      {state === "attention" ? <path className="state-inner" d="M7 5v3.6M7 10.4v.2" /> : null}
    </svg>
  );
}
