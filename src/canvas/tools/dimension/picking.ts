/** Dimension: its two places, one after the other. A place on a corner of the building keeps to that corner. */
import type { Point } from "../../../document";
import { distance } from "../../../geometry";
import type { Snap } from "../../snap/snap";
import type { TypedValues } from "../../typed/typedEntry";
import { aim, pieceFields, withTyped } from "../aim";
import { alongPiece, lengthWords } from "../liveMarks";
import type { PlanPointer, ToolContext, ToolState } from "../tool";
import { byTypedPlace, typedPlace, typedPlaceMarks } from "../typedPlace";
import { endOf, type MeasuredPlaces, standingOff } from "./standingOff";

/** Two places nearer than this, px, are one; a drag this long sets both. */
const samePixels = 5;
const dragPixels = 15;

export function picking(context: ToolContext, at: Snap | null = null, typed: TypedValues = {}): ToolState {
  const typedAt = typedPlace(typed);
  const begin = (from: Snap, held: boolean) => second(context, { from, to: from, typed: {}, held });
  return {
    name: "picking",
    hint: "Click or type the first place to measure from; a corner of the building is followed",
    cursor: "crosshair",
    marks: typedAt ? typedPlaceMarks(typedAt) : [],
    snap: typedAt ? null : at,
    move: (pointer) => picking(context, aim(context, pointer), typed),
    press: (pointer) => begin(aim(context, pointer), true),
    ...byTypedPlace(context, {
      typed,
      again: (values) => picking(context, at, values),
      take: (from) => begin(from, false),
    }),
    cancel: () => "leave",
    lost: () => picking(context),
  };
}

interface Second {
  readonly from: Snap;
  readonly to: Snap;
  readonly typed: TypedValues;
  readonly held: boolean;
}

function second(context: ToolContext, now: Second): ToolState {
  const project = context.project();
  const laid = (snap: Snap) => withTyped(snap, now.from.at, now.typed, project.lot.north);
  const to = laid(now.to);
  const aimed = (pointer: PlanPointer) => aim(context, pointer, { from: now.from.at });
  const again = (change: Partial<Second>) => second(context, { ...now, ...change });
  const pixels = (place: Point) => distance(now.from.at, place) * context.view().scale;
  const take = (place: Snap): ToolState => {
    if (pixels(place.at) < samePixels) return again({ held: false });
    const places: MeasuredPlaces = { from: endOf(now.from), to: endOf(place) };
    return standingOff(context, places, () => second(context, { ...now, typed: {}, held: false }));
  };
  return {
    name: "second",
    hint: "Click the second place, or type a distance, Tab, a bearing (clockwise from north)",
    cursor: "crosshair",
    fields: pieceFields,
    locksFrom: now.from.at,
    marks: [
      { kind: "line", points: [...now.from.at, ...to.at], style: "preview" },
      alongPiece(now.from.at, to.at, lengthWords(distance(now.from.at, to.at), project)),
    ],
    snap: to,
    move: (pointer) => again({ to: aimed(pointer) }),
    press: (pointer) => take(laid(aimed(pointer))),
    release(pointer) {
      const place = laid(aimed(pointer));
      return now.held && pixels(place.at) > dragPixels ? take(place) : again({ held: false });
    },
    typed: (typed) => again({ typed }),
    finish: () => take(to),
    back: () => picking(context),
    cancel: () => picking(context),
    lost: () => again({ held: false }),
  };
}
