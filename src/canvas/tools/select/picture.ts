/** A picture under the plan in the hand: moved as a whole, turned about its middle, pulled larger by a corner. */
import { drawingEdits, type Point, type Underlay } from "../../../document";
import { distance } from "../../../geometry";
import { cornersOnPlan, type Placement, scaledAbout, turnedAbout } from "../../../underlay";
import { laid, pictureById } from "../../select/pictures";
import { snapTurn, turnAbout } from "../../select/shape";
import { floating, lengthWords, turnWords } from "../liveMarks";
import type { PlanPointer, ToolContext, ToolStart, ToolState } from "../tool";
import { type Drag, startDrag } from "./dragging";

interface LayArgs {
  readonly id: string;
  readonly patch: Pick<Underlay, "at" | "scale" | "turn">;
  readonly what: string;
}

interface Pull {
  readonly context: ToolContext;
  readonly id: string;
  readonly pointer: PlanPointer;
  readonly home: ToolStart;
}

/** Starts a drag of the picture; without one (it was removed meanwhile) everything stays. */
function start(
  { context, id, pointer, home }: Pull,
  drag: (picture: Underlay) => Omit<Drag<LayArgs>, "command">,
): ToolState {
  const picture = pictureById(context.project(), id);
  if (!picture) return home(context);
  return startDrag(context, { command: drawingEdits.changeUnderlay, ...drag(picture) }, pointer, home);
}

const args = (id: string, placement: Placement, what: string): LayArgs => ({
  id,
  patch: laid(placement),
  what,
});

export function movingPicture(pull: Pull, from: Point): ToolState {
  return start(pull, (picture) => ({
    name: "movingPicture",
    hint: "Moves the picture under the plan",
    cursor: "move",
    at({ at }) {
      const to: Point = [picture.at[0] + at[0] - from[0], picture.at[1] + at[1] - from[1]];
      return {
        args: args(pull.id, { ...picture, at: to }, "move picture"),
        marks: [floating(at, `moved ${lengthWords(distance(from, at), pull.context.project())}`)],
      };
    },
  }));
}

export function turningPicture(pull: Pull, from: Point): ToolState {
  return start(pull, (picture) => ({
    name: "turningPicture",
    hint: "Turns the picture about its middle; type an angle clockwise, hold Shift to turn freely",
    cursor: "grabbing",
    fields: [{ name: "angle", kind: "angle" }],
    at(now, typed) {
      const about = picture.at;
      const corners = cornersOnPlan(picture);
      const free = turnAbout(about, from, now.at);
      const snapped = now.free
        ? { angle: free, word: null }
        : snapTurn(corners, pull.context.project().lot.outline, free);
      const { angle, word } = typed.angle === undefined ? snapped : { angle: -typed.angle, word: null };
      return {
        args: args(pull.id, turnedAbout(picture, about, angle), "turn picture"),
        marks: [
          { kind: "line", points: [...about, ...now.at], style: "snap-guide" },
          floating(now.at, `turned ${turnWords(angle)}${word ? `, ${word}` : ""}`),
        ],
      };
    },
  }));
}

/** A picture is never pulled smaller than this share of what it was. */
const leastShare = 0.02;

export function pullingPicture(pull: Pull, corner: number): ToolState {
  return start(pull, (picture) => ({
    name: "pullingPicture",
    hint: "Makes the picture larger or smaller, its far corner stays; type its width on the ground",
    cursor: "move",
    fields: [{ name: "width", kind: "length" }],
    at(now, typed) {
      const corners = cornersOnPlan(picture);
      const grip = corners[corner] as Point;
      const stays = corners[(corner + 2) % 4] as Point;
      const width = picture.width * picture.scale;
      const share =
        typed.width === undefined ? along(stays, grip, now.at) : Math.max(leastShare, typed.width / width);
      return {
        args: args(pull.id, scaledAbout(picture, stays, share), "scale picture"),
        marks: [floating(now.at, `${lengthWords(width * share, pull.context.project())} wide`)],
      };
    },
  }));
}

/** How far along the diagonal the hand is, as a share of it. */
function along(stays: Point, grip: Point, at: Point): number {
  const [dx, dy] = [grip[0] - stays[0], grip[1] - stays[1]];
  const share = ((at[0] - stays[0]) * dx + (at[1] - stays[1]) * dy) / (dx * dx + dy * dy);
  return Math.max(leastShare, share);
}
