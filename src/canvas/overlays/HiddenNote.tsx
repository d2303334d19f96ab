/** How many things are hidden one by one, and the way to see them again. */
import { hiddenThings } from "../../document";
import { showHidden } from "../../store/actions";
import { shownProject } from "../../store/store";
import { useApp } from "../../store/useApp";
import { toPlan } from "./ReadingCard";

export function HiddenNote() {
  const count = useApp((state) => hiddenThings(shownProject(state)).length);
  if (count === 0) return null;
  return (
    <button
      type="button"
      className="heights-note hidden-note"
      aria-label={`${count} hidden · show what is hidden on the plan`}
      onClick={(event) => {
        // The note goes: the keyboard must not fall nowhere.
        toPlan(event.currentTarget);
        showHidden();
      }}
    >
      {count} hidden · <span>show</span>
    </button>
  );
}
