/** The next click on the plan places a shot: a new one with the rows after it, one that has a place alone. */
import type { Shot } from "../../document";
import { select } from "../../store/actions";
import { keepsDrawing, pickTool } from "../../store/pickTool";

export function pickOnPlan(shot: Pick<Shot, "id" | "place">): void {
  const chosen = [{ kind: "shot", id: shot.id }] as const;
  if (keepsDrawing()) return;
  if (shot.place.kind === "none") pickTool("shot");
  select(chosen);
  if (shot.place.kind !== "none") pickTool("place");
}
