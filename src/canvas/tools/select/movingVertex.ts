/** A place of a line under the hand; pulling between two places makes a new one. */
import type { Point } from "../../../document";
import type { DrawingMark } from "../../../drawing/marks";
import { distance } from "../../../geometry";
import { type LineRef, linePoints } from "../../select/handles";
import { snapTargets } from "../../snap/targets";
import { aim, pieceFields, withTyped } from "../aim";
import { fallWords } from "../ground";
import { alongPiece, lengthWords } from "../liveMarks";
import type { PlanPointer, ToolContext, ToolStart, ToolState } from "../tool";
import { startDrag } from "./dragging";
import { lineWord, setLine } from "./setLine";

interface Pulled {
  readonly line: LineRef;
  readonly index: number;
  /** A new place is made after `index`. */
  readonly makes: boolean;
}

export function movingVertex(
  context: ToolContext,
  { line, index, makes }: Pulled,
  pointer: PlanPointer,
  home: ToolStart,
): ToolState {
  const { points, closed } = linePoints(context.project(), line);
  const at = makes ? index + 1 : index;
  const with_ = (place: Point): Point[] => {
    const copy = points.slice();
    copy.splice(at, makes ? 0 : 1, place);
    return copy;
  };
  const straight = line.kind === "section" ? points[1] : undefined;
  const before = points[at - 1] ?? (closed ? points.at(-1) : straight);
  const targets = snapTargets(context.project(), (thing) => isSame(thing, line));
  const isDriveEnd = line.kind === "drive" && !makes && at === points.length - 1;
  return startDrag(
    context,
    {
      name: "movingVertex",
      hint: makes
        ? `Adds a place to ${lineWord(context.project(), line)}; Shift places it freely`
        : `Moves this place of ${lineWord(context.project(), line)}; double-click removes it, Shift moves it freely`,
      cursor: "move",
      fields: before ? pieceFields : [],
      from: before,
      command: setLine,
      at(now, typed) {
        const aimed = aim(context, now, { targets, ...(before ? { from: before } : {}) });
        const snap = before ? withTyped(aimed, before, typed, context.project().lot.north) : aimed;
        const moved = with_(snap.at);
        const what = makes
          ? `add a place to ${lineWord(context.project(), line)}`
          : `change ${lineWord(context.project(), line)}`;
        const door = snap.tie?.kind === "door" ? snap.tie.id : null;
        return {
          args: { line, points: moved, what, ...(isDriveEnd ? { door } : {}) },
          marks: pieceMarks(context, line, moved, at, closed),
          snap,
        };
      },
    },
    pointer,
    home,
  );
}

function isSame(thing: { kind: string; id?: string }, line: LineRef): boolean {
  return thing.kind === line.kind && (line.kind === "lot" || thing.id === line.id);
}

/** The two pieces that meet in the place: length, and the ground's fall along a drive or swale. */
function pieceMarks(
  context: ToolContext,
  line: LineRef,
  points: readonly Point[],
  at: number,
  closed: boolean,
): DrawingMark[] {
  const n = points.length;
  const wrap = (i: number) => (closed ? points[(i + n) % n] : points[i]);
  const pieces = [
    [wrap(at - 1), wrap(at)],
    [wrap(at), wrap(at + 1)],
  ];
  return pieces.flatMap(([a, b]): DrawingMark[] => {
    if (!a || !b) return [];
    const size = lengthWords(distance(a, b), context.project());
    const falls = line.kind === "drive" || line.kind === "swale";
    const fall = falls ? fallWords(context, a, b) : null;
    return [
      { kind: "line", points: [...a, ...b], style: "preview" },
      alongPiece(a, b, fall ? `${size}, ground ${fall}` : size),
    ];
  });
}
