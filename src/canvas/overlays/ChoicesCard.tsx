/** The kinds that a tool offers, by icon and word, with what to mind about the chosen one. */
import { useStore } from "zustand";
import { machine, toolRun } from "../stage/toolRun";
import { KindIcon } from "./kindIcons";
import { toPlan } from "./ReadingCard";

export function ChoicesCard() {
  const choices = useStore(toolRun, ({ state }) => state.choices);
  // While something is being drawn, its kind is settled.
  const open = useStore(toolRun, ({ state }) => state.choose !== undefined);
  if (!choices) return null;
  const shown = open ? choices.items : choices.items.filter(({ value }) => value === choices.chosen);
  return (
    <fieldset className="plan-card choices-card" data-testid="choices">
      <legend className="unseen">{choices.label}</legend>
      <div className="choices">
        {shown.map(({ value, words }) => (
          <button
            key={value}
            type="button"
            aria-pressed={value === choices.chosen}
            disabled={!open}
            onClick={(event) => {
              machine().choose(value);
              toPlan(event.currentTarget);
            }}
          >
            <KindIcon kind={value} />
            {words}
          </button>
        ))}
      </div>
      <p className="soft">{choices.typed}</p>
      {choices.caution === null ? null : <p className="choices-caution">{choices.caution}</p>}
    </fieldset>
  );
}
