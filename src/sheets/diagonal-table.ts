/** Diagonals to check a footprint with that isn't a rectangle; a rectangle's stand in the drawing. */
import type { Project } from "../document/schema";
import { cornerName } from "../grading";
import { plannedDiagonals } from "../plot";
import type { Figures, Table } from "./tables";

/** More than these aren't taped: those from the first corners hold the rest. */
const most = 12;
/** Diagonals this much alike, m, belong to a rectangle: less than anyone can lay out. */
const alike = 0.002;

export function diagonalTable({ building }: Project, figures: Figures): Table | null {
  const outline = building?.outline ?? [];
  const diagonals = plannedDiagonals(outline);
  const [one, two] = diagonals;
  if (!one || (outline.length === 4 && two && Math.abs(one.length - two.length) < alike)) return null;
  const left = diagonals.length - most;
  return {
    title: `Diagonals${figures.unit}`,
    columns: [
      { head: "between", align: "left", strong: true },
      { head: "planned", align: "right", strong: true },
      { head: "taped", align: "right", blank: 17 },
    ],
    rows: diagonals
      .slice(0, most)
      .map(({ from, to, length }) => [
        `${cornerName(from)}–${cornerName(to)}`,
        figures.cell(figures.length(length)),
        "",
      ]),
    note: `Level, between the outside corners.${left > 0 ? ` ${left} more can be had in the building step.` : ""}`,
  };
}
