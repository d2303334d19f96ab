/** What is under the pointer, in words. */
import type { Point } from "../../document";
import { catchmentAt } from "../../solve/place-catchment";
import { appStore, shownFloor, shownProject } from "../../store/store";
import { useApp } from "../../store/useApp";
import { followsDrop } from "../stage/interactionMarks";
import { drainsWords, placeWords, readPlace } from "./readPlace";

export function ReadOut() {
  // The pointer moves often, the results only with an edit: both are read here and nowhere above.
  const pointer = useApp((state) => state.pointer);
  useApp((state) => state.results);
  if (!pointer) return null;
  const state = appStore.getState();
  const project = shownProject(state);
  const at: [number, number] = [pointer[0], pointer[1]];
  const reading = readPlace(state.results, project, at, shownFloor(state));
  if (!reading) return null;
  const { lead, falls, heights, from } = placeWords(reading, project, at);
  return (
    <output className="read-out" aria-live="off">
      <p>
        <b>{lead}</b>
        {falls === "" ? "" : ` here · ${falls}`}
      </p>
      <p className={reading.guessed ? "guessed" : "soft"}>{from}</p>
      {heights === "" ? null : <p className="soft">{heights}</p>}
      {followsDrop(state) ? <Drains at={at} /> : null}
    </output>
  );
}

/** What drains to the place, while the way of a drop from it is shown. */
function Drains({ at }: { at: Point }) {
  const state = appStore.getState();
  const { display } = shownProject(state);
  const drains = catchmentAt(state.results, at);
  return drains ? <p className="soft">{drainsWords(drains, display)}</p> : null;
}
