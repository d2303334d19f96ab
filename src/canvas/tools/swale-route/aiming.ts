/** The start is there: the shortest line to where the pointer is follows it; a click asks for the whole search. */
import { siteEdits } from "../../../document";
import { proposeSwale, type Route } from "../../../solve/swale-proposal";
import type { Snap } from "../../snap/snap";
import type { TypedValues } from "../../typed/typedEntry";
import { aim } from "../aim";
import type { ToolContext, ToolState } from "../tool";
import { proposalMarks } from "./marks";
import { placeField, ready, typedPlace } from "./ready";
import { refused } from "./refused";

export function aiming(
  context: ToolContext,
  start: Snap,
  to: Snap | null = null,
  typed: TypedValues = {},
): ToolState {
  const given = typedPlace(typed);
  const end = given ?? to;
  const [project, results] = [context.project(), context.results()];
  const shown = end ? proposeSwale(project, results, { start: start.at, outlet: end.at }, true) : null;
  const settle = (outlet: Snap): ToolState => {
    const proposal = proposeSwale(project, results, { start: start.at, outlet: outlet.at });
    if (proposal.kind === "refused") {
      context.say(proposal.why);
      return aiming(context, start, to);
    }
    if (!proposal.route.result.drains) return refused(context, start, proposal);
    return commit(context, proposal.route) ? ready(context) : aiming(context, start);
  };
  return {
    name: "aiming",
    hint: "Click where its water may come out at the surface, lower than the start",
    cursor: "crosshair",
    fields: placeField,
    locksFrom: start.at,
    marks: proposalMarks(context, start.at, shown?.kind === "laid" ? shown.route : null),
    snap: given ? null : to,
    move: (pointer) => aiming(context, start, aim(context, pointer, { from: start.at }), typed),
    press: (pointer) => settle(aim(context, pointer, { from: start.at })),
    typed: (values) => aiming(context, start, to, values),
    finish: () => (given ? settle(given) : aiming(context, start, to, typed)),
    back: () => ready(context),
    cancel: () => ready(context),
    lost: () => aiming(context, start),
  };
}

/** Draws the proposed swale into the plan; false where that is refused. */
export function commit(context: ToolContext, { line, depth, leastFall }: Route): boolean {
  const edit = context.run(siteEdits.addSwale, { line, shape: { depth, leastFall } });
  if (!edit.ok) return false;
  context.setTool("select");
  if (edit.made !== undefined) context.select([{ kind: "swale", id: edit.made }]);
  return true;
}
