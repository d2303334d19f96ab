/** The building as a rectangle. It is drawn anew where one stands, so its corners don't hold to the old one. */
import type { Without } from "../../snap/targets";
import type { RectangleKind } from "../rectangle/kind";
import type { ToolContext } from "../tool";
import { commitBuilding } from "./commit";
import { buildingChoices } from "./kinds";

export const notItself: Without = ({ kind }) => kind === "building";

export function rectangleKind(context: ToolContext): RectangleKind {
  return {
    what: "building",
    without: notItself,
    choices: (way) => buildingChoices(context.project(), way),
    commit: commitBuilding,
  };
}
