/**
 * Laying a picture by two places known on both: a click on the picture, a click where that lies on the plan, and the
 * same again. The picture follows the hand as it would be laid.
 */
import { drawingEdits, type Point, type Underlay } from "../../../document";
import type { DrawingMark } from "../../../drawing/marks";
import {
  type Placement,
  pictureToPlan,
  placedByOnePoint,
  placedByTwoPoints,
  planToPicture,
  showsPlace,
} from "../../../underlay";
import { laid } from "../../select/pictures";
import type { Snap } from "../../snap/snap";
import type { TypedValues } from "../../typed/typedEntry";
import { aim, pieceFields, withTyped } from "../aim";
import { floating, lengthWords } from "../liveMarks";
import type { PlanPointer, ToolContext, ToolStart, ToolState } from "../tool";
import { byTypedPlace, typedPlace } from "../typedPlace";
import { chosenPicture, endPlacing } from "./chosen";

interface Pair {
  readonly picture: Point;
  readonly plan: Point;
}

const what = "place picture by two points";

export const picturePointsTool: ToolStart = (context) => pickingFirst(context);

/** Gives up what is begun; the picture lies as it did. */
function anew(context: ToolContext): ToolState {
  context.cancelPreview();
  return pickingFirst(context);
}

function pickingFirst(context: ToolContext): ToolState {
  return {
    name: "pickingFirst",
    hint: "1 of 4: click a place on the picture that you know on the plan, such as a lot corner",
    cursor: "crosshair",
    press({ at }) {
      const picture = chosenPicture(context);
      if (!picture) return pickingFirst(context);
      return onPicture(context, picture, at)
        ? layingFirst(context, picture, planToPicture(picture, at))
        : this;
    },
    cancel: () => "leave",
    lost: () => pickingFirst(context),
  };
}

function onPicture(context: ToolContext, placement: Placement, at: Point): boolean {
  const on = showsPlace(placement, at);
  if (!on) context.say("That is beside the picture. Click a place that the picture shows.");
  return on;
}

function layingFirst(
  context: ToolContext,
  picture: Underlay,
  place: Point,
  aimed: Snap | null = null,
  typed: TypedValues = {},
): ToolState {
  const from = pictureToPlan(picture, place);
  const to = typedPlace(typed) ?? aimed;
  const lay = ({ at: plan }: Snap): ToolState => {
    const moved = placedByOnePoint(picture, place, plan);
    context.preview(drawingEdits.changeUnderlay, { id: picture.id, patch: laid(moved), what });
    return pickingSecond(context, moved, { picture: place, plan });
  };
  return {
    name: "layingFirst",
    hint: "2 of 4: click where that place lies on the plan, or type it from the plan's origin, like 12, 5",
    cursor: "crosshair",
    snap: to,
    marks: [spot(from), ...(to ? [line(from, to.at)] : [])],
    move: (pointer) => layingFirst(context, picture, place, aim(context, pointer), typed),
    ...byTypedPlace(context, {
      typed,
      again: (values) => layingFirst(context, picture, place, aimed, values),
      take: lay,
    }),
    press: (pointer) => lay(aim(context, pointer)),
    cancel: () => anew(context),
    lost: () => anew(context),
  };
}

function pickingSecond(context: ToolContext, picture: Underlay, first: Pair): ToolState {
  return {
    name: "pickingSecond",
    hint: "3 of 4: click a second place on the picture, far from the first",
    cursor: "crosshair",
    marks: [spot(first.plan)],
    press(pointer) {
      if (!onPicture(context, picture, pointer.at)) return this;
      const place = planToPicture(picture, pointer.at);
      return layingSecond(context, { picture, first, place }, pointer, {});
    },
    back: () => anew(context),
    cancel: () => anew(context),
    lost: () => anew(context),
  };
}

interface Laying {
  /** Laid by its first place. */
  readonly picture: Underlay;
  readonly first: Pair;
  /** The second place, on the picture. */
  readonly place: Point;
}

function layingSecond(
  context: ToolContext,
  laying: Laying,
  pointer: PlanPointer,
  typed: TypedValues,
): ToolState {
  const { picture, first, place } = laying;
  const project = context.project();
  const aimed = aim(context, pointer, { from: first.plan });
  const to = withTyped(aimed, first.plan, typed, project.lot.north);
  const placed = placedByTwoPoints(picture, first, { picture: place, plan: to.at });
  const lay = placed && { id: picture.id, patch: laid(placed), what };
  if (lay) context.preview(drawingEdits.changeUnderlay, lay);
  const put = (): ToolState => {
    if (!lay) {
      context.say("The two places are the same. Click a second one, far from the first.");
      return layingSecond(context, laying, pointer, typed);
    }
    context.drop(drawingEdits.changeUnderlay, lay);
    endPlacing(context, picture.id);
    return pickingFirst(context);
  };
  const apart = Math.hypot(to.at[0] - first.plan[0], to.at[1] - first.plan[1]);
  return {
    name: "layingSecond",
    hint: "4 of 4: click where that lies on the plan, or type it, like 12, 5, or how far and which way from the first",
    cursor: "crosshair",
    fields: pieceFields,
    snap: to,
    marks: [spot(first.plan), line(first.plan, to.at), floating(to.at, lengthWords(apart, project))],
    move: (next) => layingSecond(context, laying, next, typed),
    typed: (values) => layingSecond(context, laying, pointer, values),
    press: (next) => {
      const last = layingSecond(context, laying, next, typed);
      return last.finish?.() ?? last;
    },
    finish: put,
    back: () => pickingSecond(context, picture, first),
    cancel: () => pickingSecond(context, picture, first),
    lost: () => anew(context),
  };
}

const spot = (at: Point): DrawingMark => ({
  kind: "symbol",
  at,
  symbol: "ring",
  size: 3,
  style: "snap-ring",
});
const line = (a: Point, b: Point): DrawingMark => ({
  kind: "line",
  points: [...a, ...b],
  style: "snap-guide",
});
