/** Keys while the plan has the focus: the tool's own, typed lengths, and Space to move the view. */
import { appStore } from "../../store/store";
import { isLetter } from "../typed/typedEntry";
import { menuByKey } from "./planMenu";
import { machine } from "./toolRun";

export interface PlanKeys {
  spaceHeld(): boolean;
  stop(): void;
}

/** Words typed while drawing are answered, once it is known that the letter is no shortcut either. */
function explainIfUnused(event: KeyboardEvent): void {
  setTimeout(() => {
    if (!event.defaultPrevented && appStore.getState().tool !== "select") machine().unread();
  });
}

export function listenToKeys(element: HTMLElement): PlanKeys {
  let space = false;

  function hold(held: boolean): void {
    space = held;
    element.classList.toggle("space-held", held);
  }

  function down(event: KeyboardEvent): void {
    if (event.ctrlKey || event.metaKey || event.altKey || event.isComposing) return;
    if (event.key === "ContextMenu" || (event.key === "F10" && event.shiftKey)) {
      event.preventDefault();
      menuByKey(element);
      return;
    }
    const used = machine().key(event.key, event.shiftKey);
    if (!used && isLetter(event.key)) explainIfUnused(event);
    if (!used && event.key !== " ") return;
    if (!used) hold(true);
    event.preventDefault();
    // A letter that belongs to a typed length must not pick a tool.
    event.stopPropagation();
  }

  function up(event: KeyboardEvent): void {
    if (event.key === " ") hold(false);
  }

  const blur = () => {
    hold(false);
  };

  element.addEventListener("keydown", down);
  element.addEventListener("keyup", up);
  element.addEventListener("blur", blur);
  return {
    spaceHeld: () => space,
    stop() {
      element.removeEventListener("keydown", down);
      element.removeEventListener("keyup", up);
      element.removeEventListener("blur", blur);
    },
  };
}
