/**
 * Scaling a picture by a distance that is known on the ground: two clicks on the picture, then the distance is typed.
 * A second distance checks the first; both together settle the scale.
 */
import { drawingEdits, type Edit, type Point, type Underlay } from "../../../document";
import { distance } from "../../../geometry";
import {
  byKnownDistances,
  type KnownDistance,
  pictureToPlan,
  planToPicture,
  showsPlace,
} from "../../../underlay";
import { laid, pictureById } from "../../select/pictures";
import { floating, lengthWords } from "../liveMarks";
import type { ToolContext, ToolStart, ToolState } from "../tool";
import { chosenPicture } from "./chosen";

/** Two distances that agree within this share are as good as a tape and a scan can be. */
const agreeWithin = 0.005;

export const pictureDistanceTool: ToolStart = (context) => first(context, []);

/** `known` grows with each distance that was typed. */
function first(context: ToolContext, known: KnownDistance[]): ToolState {
  return {
    name: "first",
    // Asked for each time: what is known grows with the answer, beside the plan.
    get hint() {
      return known.length === 0
        ? "Click one end of a distance on the picture that you know on the ground"
        : "Click another known distance to check the first one, or press Esc: the picture is to scale";
    },
    cursor: "crosshair",
    move: () => first(context, known),
    press({ at }) {
      const picture = chosenPicture(context);
      if (!picture || !on(context, picture, at)) return this;
      return second(context, known, { id: picture.id, from: planToPicture(picture, at) }, at);
    },
    cancel: () => "leave",
    lost: () => first(context, known),
  };
}

interface Begun {
  readonly id: string;
  /** The first end, on the picture. */
  readonly from: Point;
}

function second(context: ToolContext, known: KnownDistance[], begun: Begun, at: Point): ToolState {
  const picture = pictureById(context.project(), begun.id);
  if (!picture) return first(context, known);
  const from = pictureToPlan(picture, begun.from);
  return {
    name: "second",
    hint: "Click its other end; then type how long it is on the ground",
    cursor: "crosshair",
    marks: [
      { kind: "line", points: [...from, ...at], style: "preview-line" },
      { kind: "symbol", at: from, symbol: "ring", size: 3, style: "snap-ring" },
      floating(at, `${lengthWords(distance(from, at), context.project())} as it lies now`),
    ],
    move: (pointer) => second(context, known, begun, pointer.at),
    press(pointer) {
      if (!on(context, picture, pointer.at)) return this;
      if (distance(from, pointer.at) * context.view().scale < 4) {
        context.say("The two ends are the same place. Click the other end of the distance.");
        return this;
      }
      return pressed(second(context, known, begun, pointer.at), () => {
        ask(context, known, picture, begun.from, pointer.at);
        return first(context, known);
      });
    },
    back: () => first(context, known),
    cancel: () => first(context, known),
    lost: () => first(context, known),
  };
}

/** The field that asks takes the keyboard, so it waits until the button is let go. */
function pressed(state: ToolState, release: () => ToolState): ToolState {
  return { ...state, name: "pressed", move: (): ToolState => pressed(state, release), release };
}

function on(context: ToolContext, picture: Underlay, at: Point): boolean {
  const shown = showsPlace(picture, at);
  if (!shown) context.say("That is beside the picture. Click a place that the picture shows.");
  return shown;
}

function ask(context: ToolContext, known: KnownDistance[], picture: Underlay, from: Point, end: Point): void {
  const to = planToPicture(picture, end);
  context.ask({
    at: end,
    label: "how long it is on the ground",
    m: distance(pictureToPlan(picture, from), end),
    answer: (m) => settle(context, known, picture.id, { from, to, m }),
  });
}

function settle(context: ToolContext, known: KnownDistance[], id: string, added: KnownDistance): Edit {
  const picture = pictureById(context.project(), id);
  const fitted = picture && byKnownDistances(picture, [...known, added]);
  if (!fitted) return { ok: false, why: "The distance must be more than nothing, like 40' or 12.35 m." };
  const what = known.length === 0 ? "scale picture by a known distance" : "scale picture by known distances";
  const edit = context.run(drawingEdits.changeUnderlay, { id, patch: laid(fitted.placement), what });
  if (!edit.ok) return edit;
  known.push(added);
  if (Math.abs(fitted.misfit) > agreeWithin) context.say(disagreement(known, fitted.misfit));
  return edit;
}

function disagreement(known: readonly KnownDistance[], misfit: number): string {
  const percent = (Math.abs(misfit) * 100).toFixed(1);
  const which = known.length === 2 ? "The two distances don't agree" : "The distances don't agree";
  return `${which}: one is ${percent} % off on the picture. The scale lies between them. Check what was typed; a scan or a photograph can also be stretched.`;
}
