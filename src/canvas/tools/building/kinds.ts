/** The ways to draw the building, and to change one that stands. */
import type { Project } from "../../../document";
import { wayWords } from "../rectangle/ways";
import type { Choices } from "../tool";

export const buildingKinds = ["corners", "side", "outline", "pull", "add-on"] as const;
export type BuildingKind = (typeof buildingKinds)[number];

export const buildingWords: Readonly<Record<BuildingKind, string>> = {
  ...wayWords,
  pull: "pull a wall",
  "add-on": "add-on",
};

const typed: Readonly<Record<BuildingKind, string>> = {
  corners: "Draws a rectangle: type its width, Tab, its depth; or its corners, like 30, 30",
  side: "Draws a rectangle at any angle: type the side's length, Tab, its bearing; then the depth",
  outline: "Type each wall's length, Tab, its bearing; an arrow key gives the way",
  pull: "Pulls a piece of a wall out or in, for an L, T or U; sizes can be typed",
  "add-on": "Adds a rectangle to a wall, or to a piece of it; sizes can be typed",
};

export function isBuildingKind(value: string): value is BuildingKind {
  return (buildingKinds as readonly string[]).includes(value);
}

/** What can be chosen; without a building there is nothing to pull at. */
export function buildingChoices(project: Project, chosen: BuildingKind): Choices {
  const kinds = project.building ? buildingKinds : buildingKinds.slice(0, 3);
  return {
    label: "How the building is drawn",
    chosen,
    items: kinds.map((value) => ({ value, words: buildingWords[value] })),
    typed: typed[chosen],
    caution: null,
  };
}
