/** Aiming a corner of a rectangle, and what can be typed while it is drawn: its sizes, or a corner as a place. */
import type { Point } from "../../../document";
import { type Snap, unsnapped } from "../../snap/snap";
import { handStep, roundTo } from "../../snap/step";
import type { Without } from "../../snap/targets";
import type { Field, TypedValues } from "../../typed/typedEntry";
import { aim } from "../aim";
import type { PlanPointer, ToolContext } from "../tool";

const depth: Field = { name: "depth", kind: "length" };
export const sizeFields: readonly Field[] = [
  { name: "width", kind: "length", pair: true, thenNext: true },
  depth,
];
/** No corner is there yet. */
export const firstSizeFields: readonly Field[] = [
  { name: "width", kind: "length", pair: true, first: true, thenNext: true },
  depth,
];

/** A corner typed as a place; null where none was. */
export function typedCorner({ east, north, right, up }: TypedValues, last: Point | null): Snap | null {
  if (east !== undefined && north !== undefined) return unsnapped([east, north]);
  if (last && right !== undefined && up !== undefined) return unsnapped([last[0] + right, last[1] + up]);
  return null;
}

/** Aims a corner; off any snap it lies on round numbers, so that sizes come out round too. */
export function aimCorner(context: ToolContext, pointer: PlanPointer, without?: Without): Snap {
  const aimed = aim(context, pointer, without ? { without } : {});
  if (aimed.word !== null || pointer.free) return aimed;
  const step = handStep(context.project().display.length, context.view().scale);
  return unsnapped([roundTo(aimed.at[0], step), roundTo(aimed.at[1], step)]);
}
