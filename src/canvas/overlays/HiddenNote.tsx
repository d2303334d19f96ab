/** How many things are hidden one by one, and the way to see them again. */
import { drawingEdits, hiddenThings, present } from "../../document";
import { run } from "../../store/actions";
import { appStore, shownProject } from "../../store/store";
import { useApp } from "../../store/useApp";

function showAll(): void {
  const things = hiddenThings(present(appStore.getState().history));
  run(drawingEdits.hideThings, { things, hidden: false });
}

export function HiddenNote() {
  const count = useApp((state) => hiddenThings(shownProject(state)).length);
  if (count === 0) return null;
  return (
    <button
      type="button"
      className="heights-note hidden-note"
      aria-label={`${count} hidden · show what is hidden on the plan`}
      data-keys-to-plan
      onClick={showAll}
    >
      {count} hidden · <span>show</span>
    </button>
  );
}
