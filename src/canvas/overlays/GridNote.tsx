/** How far apart the lines of the grid lie, while it is shown. */
import { useStore } from "zustand";
import { shownProject } from "../../store/store";
import { useApp } from "../../store/useApp";
import { gridStep } from "../view/grid";
import { planView } from "../view/planView";

export function GridNote() {
  const shown = useApp((state) => !state.hidden.has("grid"));
  const notation = useApp((state) => shownProject(state).display.length);
  const text = useStore(planView, ({ view }) => gridStep(notation, view.scale).text);
  return shown ? <p className="heights-note grid-note">{`grid ${text}`}</p> : null;
}
