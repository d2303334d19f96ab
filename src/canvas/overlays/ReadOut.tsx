/** What is under the pointer, in words. */
import type { ReactNode } from "react";
import { catchmentAt } from "../../solve/place-catchment";
import { readPlace } from "../../solve/read-place";
import { appStore, shownFloor, shownProject } from "../../store/store";
import { useApp } from "../../store/useApp";
import { followsDrop } from "../stage/interactionMarks";
import { drainsWords, placeWords } from "./placeWords";

/** Words that a narrow plan leaves out, so that the figures find room. */
function Roomy({ children }: { children: ReactNode }) {
  return <span className="roomy">{children}</span>;
}

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
  const { lead, falls, heights, certainty, near } = placeWords(reading, project, at);
  // While the way of a drop is shown, what drains there is told in the place of the heights.
  const drains = followsDrop(state) ? catchmentAt(state.results, at) : null;
  return (
    <output className="read-out" aria-live="off">
      <p>
        <b>{lead}</b>
        {falls === "" ? null : (
          <>
            <Roomy> here</Roomy> · {falls}
          </>
        )}
      </p>
      <p className={reading.guessed ? "guessed" : "soft"}>
        {certainty.word}
        <Roomy>{certainty.why}</Roomy>
        {near ? ` · ${near.off} from corner ${near.corner}` : ""}
      </p>
      {drains ? <p className="soft">{drainsWords(drains, project.display)}</p> : null}
      {heights === "" || drains ? null : <p className="soft">{heights}</p>}
    </output>
  );
}
