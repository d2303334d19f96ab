/** The arrow keys' step is a person's own: kept outside the plan, from one time to the next. */
import { setNudgeStep } from "../store/actions";
import { appStore } from "../store/store";

const remembered = "drysill.nudgeStep";

export function startNudgeStep(): void {
  const step = Number(read() ?? Number.NaN);
  if (step > 0) setNudgeStep(step);
  appStore.subscribe((state, before) => {
    if (state.nudgeStep !== before.nudgeStep) keep(state.nudgeStep);
  });
}

/** A page without storage (a private window) simply forgets. */
function read(): string | null {
  try {
    return localStorage.getItem(remembered);
  } catch {
    return null;
  }
}

function keep(step: number | null): void {
  try {
    if (step === null) localStorage.removeItem(remembered);
    else localStorage.setItem(remembered, String(step));
  } catch {
    // Nothing to do: the step holds for this window.
  }
}
