/** What is being typed while drawing, beside the pointer. */
import { useStore } from "zustand";
import { shownProject } from "../../store/store";
import { useApp } from "../../store/useApp";
import { toolRun } from "../stage/toolRun";
import { entryFault, fieldWords, isTyping, type TypedEntry } from "../typed/typedEntry";
import { useTextSize } from "../useTextSize";
import { planView } from "../view/planView";
import { toScreen } from "../view/view";

/** A chip is at most this wide, px: with its words about the bearing more than without. */
function chipWidth({ fields, active }: TypedEntry): number {
  return fields[active]?.kind === "bearing" ? 370 : 300;
}

export function TypedChip() {
  const entry = useStore(toolRun, (run) => run.entry);
  const composing = useStore(toolRun, (run) => run.composing);
  const view = useStore(planView, (state) => state.view);
  const pointer = useApp((state) => state.pointer);
  const notation = useApp((state) => shownProject(state).display.length);
  const words = useTextSize();
  if (!isTyping(entry) && composing === "") return null;
  const [x, y] = pointer ? toScreen(view, pointer) : [view.width / 2, view.height / 2];
  const fault = entryFault(entry, notation);
  return (
    <output
      className="plan-card typed-chip"
      aria-live="polite"
      style={{
        left: Math.max(8, Math.min(x + 18, view.width - chipWidth(entry) * words)),
        top: Math.max(8, Math.min(y + 20, view.height - 60)),
      }}
    >
      {entry.fields.map((field, i) => (
        <span key={field.name} className={i === entry.active ? "typed-field active" : "typed-field"}>
          <span className="soft">{fieldWords(field, entry.texts[i] ?? "", notation)}</span>{" "}
          <b className={i === entry.active && entry.refused ? "refused" : undefined}>{entry.texts[i]}</b>
          {i === entry.active && composing ? <u>{composing}</u> : null}
          {i === entry.active ? <i className="typed-caret" /> : null}
          {i === entry.active && field.kind === "bearing" ? (
            <span className="typed-key"> clockwise from north</span>
          ) : null}
        </span>
      ))}
      <span className={fault ? "typed-key soft" : "typed-key"}>
        {entry.fields.length > 1 ? "Tab " : ""}
        {fault ? "" : "Enter"}
      </span>
    </output>
  );
}
