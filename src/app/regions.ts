/** From part to part of the plan's window by one key: the steps, the plan, what stands below it, the panel beside it. */
import type { AppCommand } from "../panels/command";
import { onPlan } from "./whyNot";

/** In the order of the keys; in each what takes the keyboard, the first that is there. */
const regions: readonly { readonly part: string; readonly takers: readonly string[] }[] = [
  { part: ".rail", takers: ["[aria-current]", "button"] },
  { part: ".plan-cell", takers: ["[data-testid=plan]"] },
  { part: ".dock", takers: ["[role=grid]", "input", "button", "[tabindex]"] },
  { part: ".side-column", takers: ["input:not(:disabled)", "button:not(:disabled)", "summary"] },
];

/** What takes the keyboard `by` parts on from where it is; parts without such a thing are passed over. */
export function inNextRegion(root: ParentNode, from: Element | null, by: 1 | -1): HTMLElement | null {
  const here = regions.findIndex(({ part }) => from?.closest(part));
  const start = here >= 0 ? here : by > 0 ? -1 : regions.length;
  for (let step = 1; step <= regions.length; step++) {
    const index = (((start + by * step) % regions.length) + regions.length) % regions.length;
    const region = regions[index];
    for (const taker of region?.takers ?? []) {
      const found = root.querySelector<HTMLElement>(`${region?.part} ${taker}`);
      if (found) return found;
    }
  }
  return null;
}

function go(by: 1 | -1): void {
  const from = document.activeElement;
  // A dialog keeps the keyboard until it is closed.
  if (document.querySelector("[role=dialog], [role=alertdialog]")) return;
  inNextRegion(document, from, by)?.focus();
}

export const regionCommands: readonly AppCommand[] = [
  {
    id: "view.nextPart",
    name: "Go to the next part of the window",
    place: "View",
    keys: ["F6"],
    also: "focus keyboard region pane steps plan level book panel",
    whyNot: onPlan,
    run: () => go(1),
  },
  {
    id: "view.partBefore",
    name: "Go to the part of the window before",
    place: "View",
    keys: ["Shift+F6"],
    also: "focus keyboard region pane back",
    whyNot: onPlan,
    run: () => go(-1),
  },
];
