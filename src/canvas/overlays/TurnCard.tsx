/** Turns of the plan: a typed angle, north up, a wall level. The paper is turned alike. */
import { type FormEvent, useState } from "react";
import { useStore } from "zustand";
import { shownProject } from "../../store/store";
import { useApp } from "../../store/useApp";
import { formatAngle, parseAngle } from "../../units";
import { planView, setPlanTurn } from "../view/planView";
import { turnChoices } from "../view/turnChoices";

/** Less than a tenth of a degree is as good as there. */
const near = 0.05 * (Math.PI / 180);

export function TurnCard() {
  const project = useApp(shownProject);
  const angle = useStore(planView, ({ view }) => view.angle);
  return (
    <section className="plan-card turn-card" aria-label="Turn of the plan">
      <p className="soft">The plan lies turned, on screen and on paper:</p>
      <TurnField key={formatAngle(angle)} angle={angle} />
      <ul>
        {turnChoices(project).map(({ words, turn }) => (
          <li key={words}>
            <button
              type="button"
              aria-pressed={Math.abs(Math.sin((turn - angle) / 2)) < near}
              onClick={() => setPlanTurn(turn)}
            >
              {words}
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}

/** Degrees; positive turns it counter-clockwise. */
function TurnField({ angle }: { readonly angle: number }) {
  const [text, setText] = useState(() => formatAngle(angle));
  const [fault, setFault] = useState<string | null>(null);
  function take(event: FormEvent): void {
    event.preventDefault();
    const typed = parseAngle(text);
    if (!typed.ok) setFault(typed.message);
    else {
      setFault(null);
      setPlanTurn(typed.radians);
    }
  }
  return (
    <form onSubmit={take}>
      <label>
        <input
          value={text}
          aria-label="Turn of the plan, degrees counter-clockwise"
          aria-invalid={fault !== null}
          onChange={(event) => setText(event.target.value)}
        />
        <span className="soft">counter-clockwise</span>
      </label>
      {fault ? <p role="alert">{fault}</p> : null}
    </form>
  );
}
