/** Aiming a corner of the building, and the sizes that can be typed while it is drawn. */
import { type Snap, unsnapped } from "../../snap/snap";
import { handStep, roundTo } from "../../snap/step";
import type { Field } from "../../typed/typedEntry";
import { aim } from "../aim";
import type { PlanPointer, ToolContext } from "../tool";

export const sizeFields: readonly Field[] = [
  { name: "width", kind: "length" },
  { name: "depth", kind: "length" },
];

/** Aims a corner; off any snap it lies on round numbers, so that sizes come out round too. */
export function aimCorner(context: ToolContext, pointer: PlanPointer): Snap {
  const aimed = aim(context, pointer, { without: ({ kind }) => kind === "building" });
  if (aimed.word !== null || pointer.free) return aimed;
  const step = handStep(context.project().display.length, context.view().scale);
  return unsnapped([roundTo(aimed.at[0], step), roundTo(aimed.at[1], step)]);
}
