/** What was measured: stays beside the plan until Esc lets it go. */
import { useStore } from "zustand";
import { machine, toolRun } from "../stage/toolRun";

export function ReadingCard() {
  const reading = useStore(toolRun, ({ state }) => state.reading);
  if (!reading) return null;
  return (
    <section className="plan-card reading-card" aria-label="What was measured" data-testid="reading">
      <h3>{reading.title}</h3>
      <dl>
        {reading.rows.map(({ name, value }) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{value}</dd>
          </div>
        ))}
      </dl>
      {reading.act === null ? null : (
        <button
          type="button"
          onClick={(event) => {
            machine().use();
            toPlan(event.currentTarget);
          }}
        >
          {reading.act}
        </button>
      )}
    </section>
  );
}

/** Hands the keyboard back to the plan, where the tool goes on. */
export function toPlan(element: HTMLElement): void {
  element.closest(".plan-canvas")?.querySelector<HTMLElement>(".plan-stage")?.focus({ preventScroll: true });
}
