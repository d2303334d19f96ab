/**
 * The kinds that a tool offers, by icon and word, with what to mind about the chosen one. Once one was picked the others
 * fold away, so that the plan below can be seen.
 */
import { useEffect, useState } from "react";
import { useStore } from "zustand";
import { machine, toolRun } from "../stage/toolRun";
import type { Ways } from "../tools/tool";
import { KindIcon } from "./kindIcons";
import { toPlan } from "./ReadingCard";

export function ChoicesCard() {
  const choices = useStore(toolRun, ({ state }) => state.choices);
  // While something is being drawn, its kind is settled.
  const free = useStore(toolRun, ({ state }) => state.choose !== undefined);
  const [wanted, setWanted] = useState(true);
  const going = choices !== undefined;
  useEffect(() => {
    if (!going) setWanted(true);
  }, [going]);
  if (!choices) return null;
  const open = free && wanted;
  const shown = open ? choices.items : choices.items.filter(({ value }) => value === choices.chosen);
  return (
    <fieldset
      className={open ? "plan-card choices-card" : "plan-card choices-card folded"}
      data-testid="choices"
    >
      <legend className="unseen">{choices.label}</legend>
      <div className="choices">
        {shown.map(({ value, words }) => (
          <button
            key={value}
            type="button"
            title={open ? words : undefined}
            aria-pressed={value === choices.chosen}
            aria-expanded={open ? undefined : false}
            disabled={!free}
            onClick={(event) => {
              setWanted(!open);
              if (!open) return;
              machine().choose(value);
              toPlan(event.currentTarget);
            }}
          >
            <KindIcon kind={value} />
            <span className="choice-word">{words}</span>
          </button>
        ))}
        {free && !open ? (
          <button type="button" className="soft" onClick={() => setWanted(true)}>
            other kinds…
          </button>
        ) : null}
      </div>
      {choices.ways ? <WaysRow ways={choices.ways} free={free} /> : null}
      <p className="soft" title={choices.typed}>
        {choices.typed}
      </p>
      {choices.caution === null ? null : (
        <p className="choices-caution" title={choices.caution}>
          {choices.caution}
        </p>
      )}
    </fieldset>
  );
}

/** How the chosen kind is drawn; while it is being drawn, the way taken alone. */
function WaysRow({ ways, free }: { readonly ways: Ways; readonly free: boolean }) {
  const shown = free ? ways.items : ways.items.filter(({ value }) => value === ways.chosen);
  return (
    <fieldset className="choices ways">
      <legend className="unseen">{ways.label}</legend>
      {shown.map(({ value, words }) => (
        <button
          key={value}
          type="button"
          title={words}
          aria-pressed={value === ways.chosen}
          disabled={!free}
          onClick={(event) => {
            machine().choose(value);
            toPlan(event.currentTarget);
          }}
        >
          <KindIcon kind={value} />
          <span className="choice-word">{words}</span>
        </button>
      ))}
    </fieldset>
  );
}
