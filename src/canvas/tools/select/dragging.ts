/** A thing under the hand: shown as it would be with each move, one edit when it is let go. */
import type { EditCommand, Point, Project } from "../../../document";
import type { DrawingMark } from "../../../drawing/marks";
import type { Snap } from "../../snap/snap";
import type { Field, TypedValues } from "../../typed/typedEntry";
import type { Cursor, PlanPointer, ToolContext, ToolStart, ToolState } from "../tool";

export interface DragStep<Args> {
  readonly args: Args;
  readonly marks?: readonly DrawingMark[];
  readonly snap?: Snap | null;
}

export interface Drag<Args> {
  readonly name: string;
  readonly hint: string;
  readonly cursor: Cursor;
  readonly fields?: readonly Field[];
  /** The place before: a direction from it can be locked. */
  readonly from?: Point | undefined;
  readonly command: EditCommand<Args>;
  /** What the pointer and what is typed make of it; null where they make nothing. */
  at(pointer: PlanPointer, typed: TypedValues): DragStep<Args> | null;
  /** It was let go and became an edit. */
  dropped?(before: Project, after: Project): void;
}

interface Now<Args> {
  readonly pointer: PlanPointer;
  readonly typed: TypedValues;
  readonly step: DragStep<Args> | null;
}

/** Starts the drag with the pointer where it is. */
export function startDrag<Args>(
  context: ToolContext,
  drag: Drag<Args>,
  pointer: PlanPointer,
  home: ToolStart,
): ToolState {
  return moved(context, drag, { pointer, typed: {}, step: null }, home);
}

function moved<Args>(context: ToolContext, drag: Drag<Args>, now: Now<Args>, home: ToolStart): ToolState {
  const step = drag.at(now.pointer, now.typed);
  if (step) context.preview(drag.command, step.args);
  // Where the hand asks for what can't be, the last that could stays.
  return dragging(context, drag, { ...now, step: step ?? now.step }, home);
}

function dragging<Args>(context: ToolContext, drag: Drag<Args>, now: Now<Args>, home: ToolStart): ToolState {
  const give = (change: Partial<Now<Args>>) => moved(context, drag, { ...now, ...change }, home);
  const letGo = (pointer: PlanPointer): ToolState => {
    const last = drag.at(pointer, now.typed) ?? now.step;
    if (last) drop(context, drag, last.args);
    else context.cancelPreview();
    return home(context);
  };
  const giveUp = (): ToolState => {
    context.cancelPreview();
    return home(context);
  };
  return {
    name: drag.name,
    hint: drag.hint,
    cursor: drag.cursor,
    ...(drag.fields ? { fields: drag.fields } : {}),
    ...(drag.from ? { locksFrom: drag.from } : {}),
    marks: now.step?.marks ?? [],
    snap: now.step?.snap ?? null,
    move: (pointer) => give({ pointer }),
    release: letGo,
    typed: (typed) => give({ typed }),
    finish: () => letGo(now.pointer),
    cancel: giveUp,
    lost: giveUp,
  };
}

function drop<Args>(context: ToolContext, drag: Drag<Args>, args: Args): void {
  const before = context.project();
  const edit = context.drop(drag.command, args);
  if (edit.ok) drag.dropped?.(before, edit.project);
}
