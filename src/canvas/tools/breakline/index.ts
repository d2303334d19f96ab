/** Breakline: its kind is chosen in the strip; its places are clicked along it. */
import {
  type Breakline,
  breaklineKinds,
  breaklineWord,
  isClosedBreakline,
  surveyEdits,
} from "../../../document";
import { distance } from "../../../geometry";
import type { Snap } from "../../snap/snap";
import type { TypedValues } from "../../typed/typedEntry";
import { aim } from "../aim";
import { fallWords } from "../ground";
import type { LineKind, LinePoint } from "../line/lineKind";
import { next } from "../line/next";
import { lengthWords } from "../liveMarks";
import type { Choices, ToolContext, ToolStart, ToolState } from "../tool";
import { byTypedPlace, typedPlace, typedPlaceMarks } from "../typedPlace";

type Kind = Breakline["kind"];

const items = breaklineKinds.map((value) => ({ value, words: breaklineWord(value) }));

function choices(kind: Kind): Choices {
  return {
    label: "What bends the ground there",
    chosen: kind,
    items,
    typed: isClosedBreakline(kind)
      ? "The ground is told as a guess there"
      : "No triangle of the ground will cross it",
    caution: null,
  };
}

const closedHints: Partial<Record<Kind, string>> = {
  hole: "Click round the pond or house inside which nothing was shot; the first place again, or Enter, closes it",
  edge: "Click round the ground that the shots tell; the first place again, or Enter, closes it",
};

function hint(kind: Kind): string {
  return (
    closedHints[kind] ??
    `Click along the ${breaklineWord(kind)}, on its shots where there are some; Enter ends it`
  );
}

function lineOf(kind: Kind): LineKind {
  const closed = isClosedBreakline(kind);
  return {
    closed,
    least: closed ? 3 : 2,
    choices: choices(kind),
    hintFirst: () => hint(kind),
    hintNext: () => hint(kind),
    pieceText(context, a, b) {
      const size = lengthWords(distance(a, b), context.project());
      const fall = fallWords(context, a, b);
      return fall ? `${size}, ground ${fall}` : size;
    },
    commit(context, points) {
      const edit = context.run(surveyEdits.addBreakline, { kind, points: points.map(placeOf) });
      if (edit.ok && edit.made !== undefined) context.select([{ kind: "breakline", id: edit.made }]);
      return edit;
    },
  };
}

/** The shots say the height, the one that was clicked among them. */
const placeOf = ({ at }: LinePoint): Breakline["points"][number] => [at[0], at[1], null];

function ready(context: ToolContext, kind: Kind, at: Snap | null = null, typed: TypedValues = {}): ToolState {
  const typedAt = typedPlace(typed);
  const begin = (start: Snap, held: boolean) => {
    const home = (again: ToolContext) => ready(again, kind);
    return next(context, lineOf(kind), { points: [start], to: start, typed: {}, held }, home);
  };
  return {
    name: "ready",
    hint: hint(kind),
    cursor: "crosshair",
    marks: typedAt ? typedPlaceMarks(typedAt) : [],
    snap: typedAt ? null : at,
    choices: choices(kind),
    choose: (value) => ready(context, breaklineKinds.find((each) => each === value) ?? kind, at, typed),
    move: (pointer) => ready(context, kind, aim(context, pointer), typed),
    press: (pointer) => begin(aim(context, pointer), true),
    ...byTypedPlace(context, {
      typed,
      again: (values) => ready(context, kind, at, values),
      take: (start) => begin(start, false),
    }),
    cancel: () => "leave",
    lost: () => ready(context, kind),
  };
}

export const breaklineTool: ToolStart = (context) => ready(context, "ditch");
