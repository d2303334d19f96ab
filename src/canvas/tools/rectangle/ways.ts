/** The ways to draw what has an outline of its own: as a rectangle, two ways, or corner by corner. */
import type { Point } from "../../../document";
import type { Snap } from "../../snap/snap";
import type { LineKind } from "../line/lineKind";
import { next } from "../line/next";
import { lengthWords } from "../liveMarks";
import type { ToolContext, ToolStart, ToolState, Ways } from "../tool";
import { drawingSide } from "./bySide";
import { drawing } from "./drawing";
import type { RectangleKind } from "./kind";

const ringWays = ["corners", "side", "outline"] as const;
export type RingWay = (typeof ringWays)[number];

export const wayWords: Readonly<Record<RingWay, string>> = {
  corners: "two corners",
  side: "a side, then depth",
  outline: "any outline",
};

export function isRingWay(value: string): value is RingWay {
  return (ringWays as readonly string[]).includes(value);
}

export function ringWayChoices(chosen: RingWay): Ways {
  return {
    label: "How it is drawn",
    chosen,
    items: ringWays.map((value) => ({ value, words: wayWords[value] })),
  };
}

/** What the first click does; a size can be typed where the first figures aren't something else's. */
export function firstHint(context: ToolContext, what: string, way: RingWay, sized: boolean): string {
  if (way === "side") return `Click one end of a side of the ${what}, or type where it is`;
  if (way === "outline") return `Click the ${what}'s corners; the first again, or Enter, closes it`;
  const [wide, deep] = [7.3152, 5.4864].map((m) => lengthWords(m, context.project()).replace(/ 0″$/, ""));
  return sized
    ? `Click one corner of the ${what}, or type its size (${wide}, Tab, ${deep})`
    : `Click one corner of the ${what}, then the opposite one`;
}

/** A line that closes, drawn as a rectangle. */
export function asRectangle(line: LineKind, what: string, choices: RectangleKind["choices"]): RectangleKind {
  return {
    what,
    choices,
    commit: (context, outline) =>
      line.commit(
        context,
        outline.map(([x, y]) => ({ at: [x, y] as Point, tie: null })),
      ),
  };
}

/** An outline from its first place on. */
export interface Begun {
  readonly way: RingWay;
  readonly at: Snap;
  /** The press that set the place goes on. */
  readonly held: boolean;
}

export function beginRing(
  context: ToolContext,
  kinds: { readonly line: LineKind; readonly rectangle: RectangleKind },
  { way, at, held }: Begun,
  home: ToolStart,
): ToolState {
  if (way === "outline") return next(context, kinds.line, { points: [at], to: at, typed: {}, held }, home);
  if (way === "side")
    return drawingSide(context, kinds.rectangle, { from: at.at, to: at, typed: {}, held }, home);
  return drawing(context, kinds.rectangle, { from: at.at, to: at, typed: {} }, home);
}
