/** Shot: each click places the next unplaced row of the level book, or adds a row where none is left. */
import { type Place, type Point, surveyEdits } from "../../../document";
import type { Snap } from "../../snap/snap";
import type { TypedValues } from "../../typed/typedEntry";
import { aim } from "../aim";
import type { ToolContext, ToolState } from "../tool";
import { byTypedPlace, typedPlace } from "../typedPlace";
import { nextShot, shotWords } from "./nextShot";

export function placing(context: ToolContext, at: Snap | null = null, typed: TypedValues = {}): ToolState {
  const typedAt = typedPlace(typed);
  const shown = typedAt ?? at;
  const project = context.project();
  const shot = nextShot(project, context.selection());
  const put = (snap: Snap): ToolState => {
    putShot(context, snap);
    return placing(context, snap);
  };
  return {
    name: "placing",
    hint: shot
      ? `Click where “${shotWords(project, shot)}” was read; a corner of the building counts as that corner`
      : "Every row has its place: click to add a shot and type its reading in the level book",
    cursor: "crosshair",
    marks: shown ? [{ kind: "symbol", at: shown.at, symbol: "plus", size: 3, style: "preview-line" }] : [],
    snap: typedAt ? null : at,
    move: (pointer) => placing(context, aim(context, pointer), typed),
    ...byTypedPlace(context, { typed, again: (values) => placing(context, at, values), take: put }),
    press: (pointer) => put(aim(context, pointer)),
    cancel: () => "leave",
    lost: () => placing(context),
  };
}

/** A snap on a building corner ties the shot to that corner. */
export function placeOf(snap: Snap): Place {
  if (snap.tie?.kind === "building-corner") return { kind: "corner", corner: snap.tie.corner };
  return { kind: "at", x: snap.at[0], y: snap.at[1] };
}

function putShot(context: ToolContext, snap: Snap): void {
  const shot = nextShot(context.project(), context.selection());
  const place = placeOf(snap);
  if (shot) {
    if (context.run(surveyEdits.placeShot, { id: shot.id, place }).ok)
      context.select([{ kind: "shot", id: shot.id }]);
    return;
  }
  const edit = context.run(surveyEdits.addShot, { place });
  if (edit.ok && edit.made !== undefined) context.select([{ kind: "shot", id: edit.made }]);
}

/** Where a place lies, when it is one of coordinates. */
export function placePoint(place: Place): Point | null {
  return place.kind === "at" ? [place.x, place.y] : null;
}
