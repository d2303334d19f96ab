/** Mark: a click places the reference mark, or makes the first one. */
import { type Mark, type Point, type Project, surveyEdits } from "../../../document";
import type { Selected } from "../../../store/state";
import type { Snap } from "../../snap/snap";
import type { TypedValues } from "../../typed/typedEntry";
import { aim } from "../aim";
import type { ToolContext, ToolState } from "../tool";
import { byTypedPlace, typedPlace } from "../typedPlace";

export function placing(context: ToolContext, at: Snap | null = null, typed: TypedValues = {}): ToolState {
  const typedAt = typedPlace(typed);
  const shown = typedAt ?? at;
  const mark = nextMark(context.project(), context.selection());
  return {
    name: "placing",
    hint: mark
      ? `Click where “${mark.name}” stands: something that stays, outside the dig`
      : "Click where a new mark stands: a bolt, a spike or a corner that stays, outside the dig",
    cursor: "crosshair",
    marks: shown
      ? [{ kind: "symbol", at: shown.at, symbol: "triangle", size: 3, style: "preview-line" }]
      : [],
    snap: typedAt ? null : at,
    move: (pointer) => placing(context, aim(context, pointer), typed),
    ...byTypedPlace(context, {
      typed,
      again: (values) => placing(context, at, values),
      take: (place) => putMark(context, place),
    }),
    press: (pointer) => putMark(context, aim(context, pointer)),
    cancel: () => "leave",
    lost: () => placing(context),
  };
}

/** The selected mark where it has no place yet, else the first without one. */
function nextMark(project: Project, selection: readonly Selected[]): Mark | null {
  const unplaced = project.survey.marks.filter((mark) => mark.at === null);
  const chosen = unplaced.find((mark) =>
    selection.some((thing) => thing.kind === "mark" && thing.id === mark.id),
  );
  return chosen ?? unplaced[0] ?? null;
}

function putMark(context: ToolContext, snap: Snap): ToolState {
  const project = context.project();
  const at: Point = [snap.at[0], snap.at[1]];
  const mark = nextMark(project, context.selection());
  const edit = mark
    ? context.run(surveyEdits.changeMark, { id: mark.id, patch: { at } })
    : context.run(surveyEdits.addMark, { name: newName(project), height: newHeight(project), at });
  const id = mark?.id ?? (edit.ok ? edit.made : undefined);
  if (edit.ok && id !== undefined) {
    context.setTool("select");
    context.select([{ kind: "mark", id }]);
  }
  return placing(context);
}

function newName(project: Project): string {
  const count = project.survey.marks.length;
  return count === 0 ? "Mark" : `Mark ${count + 1}`;
}

/** Common practice: the first mark is called 100, so that nothing on site comes out negative. */
function newHeight(project: Project): string {
  return ["ft-in", "in", "ft"].includes(project.display.length) ? "100'" : "100 m";
}
