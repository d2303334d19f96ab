/** A grid of stakes from what was typed. Source: first principles. */
import { type Point, type Project, stakeOrder, stakePoint, type surveyEdits } from "../../document";
import type { StakeRow } from "../../store/stakeGrid";
import { formatBearing, parseBearing, parseLength, parseNumber } from "../../units";
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

/** The fields with a first stake and a direction that were clicked on the plan. */
export function withPickedRow(
  stakes: Stakes,
  { from, towards }: StakeRow,
  project: Project,
  length: (m: number) => string,
): Stakes {
  const bearing = Math.atan2(towards[0] - from[0], towards[1] - from[1]) - project.lot.north;
  const full = 2 * Math.PI;
  return {
    ...stakes,
    start: `${length(from[0])}, ${length(from[1])}`,
    towards: formatBearing(((bearing % full) + full) % full, 2),
  };
}

/** Places of the stakes as they would be walked; none while a field isn't understood. */
export function stakesShown(typed: Stakes, project: Project): readonly Point[] {
  const read = stakesFrom(typed, project);
  if (!read.ok || read.grid.rows * read.grid.columns > mostShown) return [];
  const { grid } = read;
  const spacing = (text: string) => {
    const parsed = parseLength(text, project.display.length);
    return { text, m: parsed.ok ? parsed.m : 0 };
  };
  const laid = {
    at: grid.at,
    turn: grid.turn ?? 0,
    columnSpacing: spacing(grid.columnSpacing),
    rowSpacing: spacing(grid.rowSpacing),
  };
  return stakeOrder(grid).map(({ row, column }) => stakePoint(laid, row, column));
}

/** A mistyped count must not hold the window up. */
const mostShown = 5000;

export type StakesRead =
  | { readonly ok: true; readonly grid: surveyEdits.NewGrid }
  | { readonly ok: false; readonly field: keyof Stakes; readonly why: string };

export function stakesFrom(typed: Stakes, project: Project): StakesRead {
  const fault = (field: keyof Stakes, why: string): StakesRead => ({ ok: false, field, why });
  for (const field of ["rows", "columns"] as const) {
    const count = parseNumber(typed[field]);
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
      rows: parseNumber(typed.rows),
      columns: parseNumber(typed.columns),
      rowSpacing: typed.rowSpacing,
      columnSpacing: typed.columnSpacing,
    },
  };
}
