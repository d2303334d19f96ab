/** The steps of the job in their order, each with how far it has come. It guides and never blocks. */
import { memo, useMemo } from "react";
import { setStep } from "../store/actions";
import type { StepName } from "../store/state";
import { useApp } from "../store/useApp";
import { ProblemsButton, useToLookAt } from "./Problems";
import { type StepState, steps } from "./steps";
import { lookWords } from "./toLookAt";
import { useNotation, useProject, useResults } from "./useProject";

export function StepsRail() {
  const project = useProject((present) => present);
  const results = useResults((present) => present);
  const notation = useNotation();
  const present = useApp((state) => state.step);
  const problems = useToLookAt();
  const list = useMemo(
    () => steps(project, results, notation, problems),
    [project, results, notation, problems],
  );
  return (
    <nav className="rail" aria-label="Steps of the job" data-tour="steps">
      <ol className="rail-steps">
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
      <ProblemsButton problems={problems} />
    </nav>
  );
}

interface RailStepProps {
  readonly name: StepName;
  readonly title: string;
  readonly state: StepState;
  readonly figure: string;
  readonly words: string;
  readonly toLookAt: number;
  readonly here: boolean;
}

const stateWords: Readonly<Record<StepState, string>> = {
  empty: "nothing yet",
  work: "in work",
  complete: "complete",
  attention: "needs attention",
};

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
