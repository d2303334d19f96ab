/** The next click on the plan places a shot: a new one with the rows after it, one that has a place alone. */
import type { Shot } from "../../document";
import { select, setTool } from "../../store/actions";

export function pickOnPlan(shot: Pick<Shot, "id" | "place">): void {
  const chosen = [{ kind: "shot", id: shot.id }] as const;
  if (shot.place.kind === "none") setTool("shot");
  select(chosen);
  if (shot.place.kind !== "none") setTool("place");
}
