/** Words that are asked for at their place on the plan: Enter keeps them, Esc leaves, a press elsewhere keeps them too. */
import { type KeyboardEvent, useEffect, useRef, useState } from "react";
import { useStore } from "zustand";
import { dropWords, toolRun } from "../stage/toolRun";
import type { WordsQuestion } from "../tools/tool";
import { planView } from "../view/planView";
import { toScreen } from "../view/view";

const longest = 500;
const boxWidth = 260;

export function WordsAsk() {
  const question = useStore(toolRun, ({ words }) => words);
  return question ? <Asked key={question.at.join(" ")} question={question} /> : null;
}

function Asked({ question }: { question: WordsQuestion }) {
  const view = useStore(planView, (state) => state.view);
  const [text, setText] = useState(question.text);
  const [fault, setFault] = useState<string | null>(null);
  const box = useRef<HTMLFormElement>(null);
  const area = useRef<HTMLTextAreaElement>(null);
  const [x, y] = toScreen(view, question.at);

  function leave(): void {
    const plan = box.current?.closest(".plan-canvas")?.querySelector<HTMLElement>(".plan-stage");
    dropWords();
    plan?.focus({ preventScroll: true });
  }

  /** True when the words were kept, or there were none to keep. */
  function keep(): boolean {
    if (text.trim() === "" || text === question.text) {
      leave();
      return true;
    }
    const edit = question.answer(text);
    if (edit.ok) leave();
    else setFault(edit.why);
    return edit.ok;
  }

  usePressElsewhere(box, keep);
  useEffect(() => area.current?.select(), []);

  function key(event: KeyboardEvent): void {
    event.stopPropagation();
    if (event.key === "Escape") leave();
    if (event.key !== "Enter" || (event.shiftKey && !question.oneLine) || event.nativeEvent.isComposing)
      return;
    event.preventDefault();
    keep();
  }

  return (
    <form
      ref={box}
      className="plan-card words-ask"
      style={{
        left: Math.max(8, Math.min(x, view.width - boxWidth - 8)),
        top: Math.max(8, Math.min(y - 16, view.height - 96)),
        width: boxWidth,
      }}
      onSubmit={(event) => event.preventDefault()}
    >
      <textarea
        ref={area}
        rows={question.oneLine ? 1 : 2}
        aria-label={question.label}
        value={text}
        maxLength={longest}
        // biome-ignore lint/a11y/noAutofocus: it appears because the person clicked to write
        autoFocus
        aria-invalid={fault !== null}
        onChange={(event) => {
          setText(question.oneLine ? event.target.value.replace(/\s+/g, " ") : event.target.value);
          setFault(null);
        }}
        onKeyDown={key}
      />
      {fault ? (
        <p role="alert">{fault}</p>
      ) : (
        <p className="soft">
          {question.oneLine ? "Enter keeps, Esc leaves" : "Enter keeps, Shift+Enter new line, Esc leaves"}
        </p>
      )}
    </form>
  );
}

/** What was written is kept before a press elsewhere does anything; where it can't be, the press does nothing. */
function usePressElsewhere(box: React.RefObject<HTMLElement | null>, keep: () => boolean): void {
  useEffect(() => {
    const press = (event: PointerEvent) => {
      if (event.target instanceof Node && box.current?.contains(event.target)) return;
      if (keep()) return;
      event.preventDefault();
      event.stopPropagation();
    };
    document.addEventListener("pointerdown", press, true);
    return () => document.removeEventListener("pointerdown", press, true);
  });
}
