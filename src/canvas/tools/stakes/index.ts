/** Grid of stakes: a click for the first stake, a second for the way its row runs; then the sheet has them. */
import type { Point } from "../../../document";
import { pickStakeRow, type StakeRow } from "../../../store/stakeGrid";
import type { Snap } from "../../snap/snap";
import { aim } from "../aim";
import { alongPiece, lengthWords } from "../liveMarks";
import type { ToolContext, ToolStart, ToolState } from "../tool";

export const stakesTool: ToolStart = (context) => first(context);

function first(context: ToolContext, at: Snap | null = null): ToolState {
  return {
    name: "first",
    hint: "Click where the first stake stands; Esc goes back to the sheet",
    cursor: "crosshair",
    marks: at ? [{ kind: "symbol", at: at.at, symbol: "plus", size: 3, style: "preview-line" }] : [],
    snap: at,
    move: (pointer) => first(context, aim(context, pointer)),
    press: (pointer) => second(context, [...aim(context, pointer).at]),
    cancel: () => done(context, null),
    lost: () => first(context),
  };
}

function second(context: ToolContext, from: Point, at: Snap | null = null): ToolState {
  const length = at ? Math.hypot(at.at[0] - from[0], at.at[1] - from[1]) : 0;
  return {
    name: "second",
    hint: "Click where the first row runs to; Esc chooses the first stake anew",
    cursor: "crosshair",
    locksFrom: from,
    marks: [
      { kind: "symbol", at: from, symbol: "plus", size: 3, style: "preview-line" },
      ...(at && length > 0
        ? [
            { kind: "line", points: [...from, ...at.at], style: "preview-line" } as const,
            alongPiece(from, at.at, lengthWords(length, context.project())),
          ]
        : []),
    ],
    snap: at,
    move: (pointer) => second(context, from, aim(context, pointer, { from })),
    press(pointer) {
      const { at: towards } = aim(context, pointer, { from });
      if (Math.hypot(towards[0] - from[0], towards[1] - from[1]) < 0.01) return second(context, from);
      return done(context, { from, towards: [towards[0], towards[1]] });
    },
    cancel: () => first(context),
    lost: () => second(context, from),
  };
}

/** Hands the row to the sheet, which opens again. */
function done(context: ToolContext, row: StakeRow | null): ToolState {
  pickStakeRow({ row });
  context.setTool("select");
  return first(context);
}
