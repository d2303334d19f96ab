/** The tools of the plan, one pressed. Arrow keys go through them, as in any tool bar. */
import { type KeyboardEvent, useRef, useState } from "react";
import type { ToolName } from "../../store/state";
import { useApp } from "../../store/useApp";
import { pickAnew } from "../stage/toolRun";
import { planTools, type ToolEntry } from "../tools/toolList";
import { planSlot } from "../view/slots";
import { Icon } from "./icons";
import { useCloseOutside } from "./LayerMenu";
import { toPlan } from "./ReadingCard";
import { SnapMenu } from "./SnapMenu";

const groups = [...new Set(planTools.map(({ group }) => group))];

/** On a plan that large words leave narrow it folds to the tool at work and a button that opens the others. */
export function ToolBar() {
  const tool = useApp((state) => state.tool);
  const [open, setOpen] = useState(false);
  const bar = useRef<HTMLDivElement | null>(null);
  useCloseOutside(bar, open, () => setOpen(false));
  return (
    <div
      className={open ? "plan-card tool-bar open" : "plan-card tool-bar"}
      role="toolbar"
      aria-label="Tools of the plan"
      data-slot
      data-tour="tools"
      ref={(element) => {
        bar.current = element;
        return planSlot(element);
      }}
      onKeyDown={goThrough}
    >
      <button
        type="button"
        className="plan-button tools-fold"
        aria-expanded={open}
        aria-label="All tools"
        onClick={() => setOpen(!open)}
      >
        <Icon name="tools" />
        {open ? null : <span className="plan-tip">All tools</span>}
      </button>
      {groups.map((group) => (
        <div key={group} className="tool-group">
          {planTools
            .filter((entry) => entry.group === group)
            .map((entry) => (
              <ToolButton
                key={entry.name}
                entry={entry}
                pressed={tool === entry.name}
                picked={() => setOpen(false)}
              />
            ))}
          {group === groups[0] ? <SnapMenu /> : null}
        </div>
      ))}
    </div>
  );
}

interface ToolButtonProps {
  readonly entry: ToolEntry;
  readonly pressed: boolean;
  readonly picked: () => void;
}

function ToolButton({ entry, pressed, picked }: ToolButtonProps) {
  const { name, label, key, what } = entry;
  return (
    <button
      type="button"
      className="plan-button"
      aria-pressed={pressed}
      aria-keyshortcuts={key}
      aria-label={label}
      tabIndex={pressed ? 0 : -1}
      data-testid={`tool-${name}`}
      onClick={(event) => {
        picked();
        pick(name, event.currentTarget);
      }}
    >
      <Icon name={name} />
      <span className="plan-tip">
        <b>{label}</b> <kbd>{key}</kbd>
        <span className="soft">{what}</span>
      </span>
    </button>
  );
}

/** Picks a tool and hands the keyboard to the plan; the one at work begins anew. */
function pick(name: ToolName, button: HTMLElement): void {
  pickAnew(name);
  toPlan(button);
}

const steps: Readonly<Record<string, number>> = { ArrowDown: 1, ArrowRight: 1, ArrowUp: -1, ArrowLeft: -1 };

function goThrough(event: KeyboardEvent<HTMLDivElement>): void {
  const step = steps[event.key] ?? 0;
  const onButton = event.target instanceof Element && event.target.matches(".plan-button");
  if (step === 0 || !onButton) return;
  const buttons = [...event.currentTarget.querySelectorAll<HTMLButtonElement>(".plan-button")].filter(
    (button) => button.offsetParent !== null,
  );
  const now = buttons.indexOf(document.activeElement as HTMLButtonElement);
  buttons[(now + step + buttons.length) % buttons.length]?.focus();
  event.preventDefault();
}
