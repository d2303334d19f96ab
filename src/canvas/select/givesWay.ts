/**
 * Lengths are told once. While figures that can be typed over stand on a thing, or a tool tells the lengths of what it
 * has in hand, what the plan itself writes of them gives way.
 */
import { thingKey } from "../../document";
import type { DrawingMark, MarkLayer } from "../../drawing/marks";
import type { AppState } from "../../store/state";
import { shownProject } from "../../store/store";
import type { ToolState } from "../tools/tool";
import { liveDimensions } from "./liveDimensions";

/** Whose lengths are told elsewhere, and which of them: all, or those that the tool writes. */
export interface ToldElsewhere {
  readonly thing: string;
  readonly words: "all" | readonly string[];
}

export function toldElsewhere(state: AppState, hand: Pick<ToolState, "marks">): ToldElsewhere | null {
  const { tool, preview, selection } = state;
  const [only] = selection;
  if (tool !== "select" || !only || selection.length > 1) return null;
  const thing = thingKey(only);
  if (preview !== null) {
    const words = (hand.marks ?? []).flatMap((mark) => (mark.kind === "text" ? [mark.text] : []));
    return words.length > 0 ? { thing, words } : null;
  }
  return liveDimensions(shownProject(state), selection).length > 0 ? { thing, words: "all" } : null;
}

/** Whether a layer writes anything of a thing that may be told elsewhere. */
export function tellsOf({ id, marks }: MarkLayer, thing: string): boolean {
  if (id === "dimensions" && thing === "building") return true;
  return marks.some((mark) => mark.kind === "text" && mark.tells?.thing === thing);
}

/** The marks of a layer without what is told elsewhere. */
export function givingWay({ id, marks }: MarkLayer, told: ToldElsewhere | null): readonly DrawingMark[] {
  if (told === null) return marks;
  // Lines and ticks of dimensions mean nothing without their figures.
  if (id === "dimensions" && told.thing === "building" && told.words === "all") return [];
  if (!marks.some((mark) => isTold(mark, told))) return marks;
  return marks.flatMap((mark): readonly DrawingMark[] => {
    if (mark.kind !== "text" || !mark.tells || !isTold(mark, told)) return [mark];
    return mark.tells.rest === "" ? [] : [{ ...mark, text: mark.tells.rest }];
  });
}

function isTold(mark: DrawingMark, { thing, words }: ToldElsewhere): boolean {
  if (mark.kind !== "text" || mark.tells?.thing !== thing) return false;
  const { length } = mark.tells;
  return (
    words === "all" ||
    words.some((text) => text === length || text.startsWith(`${length} `) || text.startsWith(`${length},`))
  );
}
