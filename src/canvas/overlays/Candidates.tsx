/** Places to pick from, as buttons over the plan. */
import { useStore } from "zustand";
import { candidateStore } from "../../store/candidates";
import { planView } from "../view/planView";
import { toScreen } from "../view/view";
import "./candidates.css";

export function Candidates() {
  const candidates = useStore(candidateStore, (state) => state.candidates);
  const view = useStore(planView, (state) => state.view);
  return candidates.map(({ at, words, chosen, choose }) => {
    const [left, top] = toScreen(view, [at[0], at[1]]);
    return (
      <button
        key={words}
        type="button"
        className="candidate"
        style={{ left, top }}
        aria-pressed={chosen}
        onClick={choose}
      >
        <span className="candidate-ring" />
        <span className="candidate-words">{words}</span>
      </button>
    );
  });
}
