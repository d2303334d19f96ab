/** What the drawing of a building, a pad and an area of a feature differ in, while it is a rectangle. */
import type { Edit, Point } from "../../../document";
import type { Without } from "../../snap/targets";
import type { Choices, ToolContext } from "../tool";

/** The ways to draw a rectangle: from corner to corner, or by a side at any angle and then its depth. */
export type RectangleWay = "corners" | "side";

export interface RectangleKind {
  /** What is drawn, as a sentence names it: "building". */
  readonly what: string;
  /** What its corners don't snap to. */
  readonly without?: Without;
  choices(way: RectangleWay): Choices;
  /** Puts the rectangle into the project and selects it. */
  commit(context: ToolContext, outline: readonly Point[]): Edit;
}
