/** A grid of stakes from what was typed. Source: first principles. */
import type { Project, surveyEdits } from "../../document";
import { parseBearing, parseLength } from "../../units";
import { readPlace } from "../levelbook/typing";

export interface Stakes {
  readonly rows: string;
  readonly columns: string;
  readonly rowSpacing: string;
  readonly columnSpacing: string;
  readonly start: string;
  /** Bearing of a row, from the plan's north. */
  readonly towards: string;
}

export const noStakes: Stakes = {
  rows: "4",
  columns: "5",
  rowSpacing: "",
  columnSpacing: "",
  start: "",
  towards: "90",
};

export type StakesRead =
  | { readonly ok: true; readonly grid: surveyEdits.NewGrid }
  | { readonly ok: false; readonly field: keyof Stakes; readonly why: string };

export function stakesFrom(typed: Stakes, project: Project): StakesRead {
  const fault = (field: keyof Stakes, why: string): StakesRead => ({ ok: false, field, why });
  for (const field of ["rows", "columns"] as const) {
    const count = Number(typed[field]);
    if (!Number.isInteger(count) || count < 1) return fault(field, "Type a whole number, such as 4.");
  }
  for (const field of ["columnSpacing", "rowSpacing"] as const) {
    const spacing = parseLength(typed[field], project.display.length);
    if (!spacing.ok) return fault(field, spacing.message);
  }
  const start = readPlace(typed.start, project);
  if (!start.ok) return fault("start", start.message);
  const { place } = start;
  const corner = place.kind === "corner" ? project.building?.outline[place.corner] : undefined;
  const at: readonly [number, number] | undefined = place.kind === "at" ? [place.x, place.y] : corner;
  if (!at) return fault("start", "Type where the first stake stands.");
  const bearing = parseBearing(typed.towards);
  if (!bearing.ok) return fault("towards", bearing.message);
  const turn = Math.PI / 2 - bearing.radians - project.lot.north;
  return {
    ok: true,
    grid: {
      at: [at[0], at[1]],
      turn,
      rows: Number(typed.rows),
      columns: Number(typed.columns),
      rowSpacing: typed.rowSpacing,
      columnSpacing: typed.columnSpacing,
    },
  };
}
