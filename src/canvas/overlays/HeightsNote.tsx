/** What the heights written on the plan are told from. */
import { useApp } from "../../store/useApp";
import { heightsNote } from "./planNote";

export function HeightsNote() {
  const words = useApp((state) => heightsNote(state.results));
  return words === null ? null : <p className="heights-note">{words}</p>;
}
