/** How far a step has come: by a shape, by a word, and what is missing. */
import { memo } from "react";
import { remember } from "../solve/memo";
import type { StepName } from "../store/state";
import { useToLookAt } from "./Problems";
import { type Step, type StepState, steps } from "./steps";
import { useNotation, useProject, useResults } from "./useProject";
import { capital } from "./words";

export const stateWords: Readonly<Record<StepState, string>> = {
  empty: "nothing yet",
  work: "in work",
  complete: "complete",
  attention: "needs attention",
};

/** The rail and the open panel ask for the same steps in one frame. */
const stepsOnce = remember(steps);

/** All steps as they stand now. */
export function useSteps(): readonly Step[] {
  const project = useProject((present) => present);
  const results = useResults((present) => present);
  const notation = useNotation();
  const look = useToLookAt();
  return stepsOnce(project, results, notation, look);
}

/** In the panel's head: the step's state, and what is missing. It guides and blocks nothing. */
export function Standing({ step: name }: { step: StepName }) {
  const step = useSteps().find((each) => each.name === name);
  if (!step) return null;
  return (
    <p className="panel-standing">
      <StateSign state={step.state} />
      <span>
        <b>{capital(stateWords[step.state])}</b>
        {`: ${step.words}`}
      </span>
    </p>
  );
}

/** A shape for each state, so that colour is not the only sign. */
export const StateSign = memo(function StateSign({ state }: { state: StepState }) {
  return (
    <svg className={`state state-${state}`} viewBox="0 0 14 14" aria-hidden="true">
      {state === "attention" ? <path d="M7 .8 13.6 12.6H.4z" /> : <circle cx="7" cy="7" r="5" />}
      {state === "work" ? <path className="state-inner" d="M7 2a5 5 0 0 1 0 10z" /> : null}
      {state === "complete" ? <path className="state-inner" d="m4.6 7.2 1.7 1.7 3.2-3.6" /> : null}
      {state === "attention" ? <path className="state-inner" d="M7 5v3.6M7 10.4v.2" /> : null}
    </svg>
  );
});
