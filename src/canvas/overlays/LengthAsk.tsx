/** A length that is asked for beside its place on the plan: typed over, Enter takes it, Esc leaves it. */
import { type FormEvent, useEffect, useRef, useState } from "react";
import { useStore } from "zustand";
import { shownProject } from "../../store/store";
import { useApp } from "../../store/useApp";
import { formatLength, parseLength, roundingFor } from "../../units";
import { dropQuestion, toolRun } from "../stage/toolRun";
import type { LengthQuestion } from "../tools/tool";
import { useTextSize } from "../useTextSize";
import { planView } from "../view/planView";
import { toScreen, type View, type XY } from "../view/view";

export function LengthAsk() {
  const question = useStore(toolRun, (run) => run.question);
  return question ? <Asked key={`${question.label} ${question.m}`} question={question} /> : null;
}

/** From the place towards the larger part of the plan: however long the words, the field stays on it. */
const beside = (x: number, y: number, view: View) => ({
  ...(x > view.width / 2 ? { right: Math.max(8, view.width - x + 14) } : { left: Math.max(8, x + 14) }),
  ...(y > view.height / 2 ? { bottom: Math.max(8, view.height - y + 14) } : { top: Math.max(8, y + 14) }),
});

/** The field covers the figure that was clicked. */
const over = ([x, y]: XY, view: View, words: number) => ({
  ...(x > view.width / 2 ? { right: Math.max(8, view.width - x - 60) } : { left: Math.max(8, x - 60) }),
  top: Math.max(8, y - 34 * words),
});

function Asked({ question }: { question: LengthQuestion }) {
  const words = useTextSize();
  const view = useStore(planView, (state) => state.view);
  const display = useApp((state) => shownProject(state).display);
  const [text, setText] = useState(() =>
    formatLength(question.m, display.length, roundingFor(display.length, display)),
  );
  const [fault, setFault] = useState<string | null>(null);
  const input = useRef<HTMLInputElement>(null);
  useEffect(() => input.current?.select(), []);
  const [x, y] = toScreen(view, question.at);

  function take(event: FormEvent): void {
    event.preventDefault();
    const typed = parseLength(text, display.length);
    const edit = typed.ok ? question.answer(typed.m) : { ok: false as const, why: typed.message };
    if (edit.ok) dropQuestion();
    else {
      setFault(edit.why);
      // What is typed next takes its place.
      input.current?.select();
    }
  }

  return (
    <form
      className="plan-card length-ask"
      style={question.over ? over(question.over, view, words) : beside(x, y, view)}
      onSubmit={take}
      onBlur={(event) => {
        if (!event.currentTarget.contains(event.relatedTarget)) dropQuestion();
      }}
      onKeyDown={(event) => {
        if (event.key === "Escape") dropQuestion();
      }}
    >
      <label>
        <span className="soft">{question.label}</span>
        <input
          ref={input}
          value={text}
          // biome-ignore lint/a11y/noAutofocus: it appears because the person clicked to type
          autoFocus
          aria-invalid={fault !== null}
          onChange={(event) => setText(event.target.value)}
        />
      </label>
      {fault ? <p role="alert">{fault}</p> : null}
    </form>
  );
}
