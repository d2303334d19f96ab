/** The tools of the plan, one pressed. Arrow keys go through them, as in any tool bar. */
import type { KeyboardEvent } from "react";
import { setTool } from "../../store/actions";
import type { ToolName } from "../../store/state";
import { appStore } from "../../store/store";
import { useApp } from "../../store/useApp";
import { restartTool } from "../stage/toolRun";
import { planTools } from "../tools/toolList";
import { Icon } from "./icons";

export function ToolBar() {
  const tool = useApp((state) => state.tool);
  return (
    <div
      className="plan-card tool-bar"
      role="toolbar"
      aria-label="Tools of the plan"
      aria-orientation="vertical"
      onKeyDown={goThrough}
    >
      {planTools.map(({ name, label, key, what }) => (
        <button
          key={name}
          type="button"
          className="plan-button"
          aria-pressed={tool === name}
          aria-keyshortcuts={key}
          aria-label={label}
          tabIndex={tool === name ? 0 : -1}
          data-testid={`tool-${name}`}
          onClick={(event) => pick(name, event.currentTarget)}
        >
          <Icon name={name} />
          <span className="plan-tip">
            <b>{label}</b> <kbd>{key}</kbd>
            <span className="soft">{what}</span>
          </span>
        </button>
      ))}
    </div>
  );
}

/** Picks a tool and hands the keyboard to the plan; the one at work begins anew. */
function pick(name: ToolName, button: HTMLElement): void {
  if (name === appStore.getState().tool) restartTool();
  else setTool(name);
  button.closest(".plan-canvas")?.querySelector<HTMLElement>(".plan-stage")?.focus({ preventScroll: true });
}

function goThrough(event: KeyboardEvent<HTMLDivElement>): void {
  const step = event.key === "ArrowDown" ? 1 : event.key === "ArrowUp" ? -1 : 0;
  if (step === 0) return;
  const buttons = [...event.currentTarget.querySelectorAll("button")];
  const now = buttons.indexOf(document.activeElement as HTMLButtonElement);
  buttons[(now + step + buttons.length) % buttons.length]?.focus();
  event.preventDefault();
}
