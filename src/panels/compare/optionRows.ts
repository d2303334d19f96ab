/** The figures of options as rows of a table: one row a figure, one cell an option, with the difference from now. */
import type { OptionFigures } from "../../solve/compare";
import type { Notation } from "../notation";
import { listed } from "../words";

export interface OptionCell {
  readonly text: string;
  /** Against the plan as it is now: "6 more", "3″ lower"; empty where they are alike or nothing is to be said. */
  readonly difference: string;
  /** The figure is a fault of the option, not only a size. */
  readonly faulty: boolean;
}

export interface OptionRow {
  readonly name: string;
  readonly cells: readonly OptionCell[];
}

interface Row {
  readonly name: string;
  readonly text: (figures: OptionFigures, notation: Notation) => string;
  readonly size?: (figures: OptionFigures) => number | null;
  /** The words for a difference of this size. */
  readonly apart?: (by: number, notation: Notation) => string;
  readonly faulty?: (figures: OptionFigures) => boolean;
}

const none = "–";

const rows: readonly Row[] = [
  {
    name: "Floor",
    text: ({ floor }, notation) => (floor === null ? none : notation.length(floor)),
    size: ({ floor }) => floor,
    apart: (by, notation) => `${notation.length(Math.abs(by))} ${by > 0 ? "higher" : "lower"}`,
  },
  {
    name: "Fill, from the ground as it is",
    text: ({ fill }, notation) => (fill === null ? none : notation.volume(fill)),
    size: ({ fill }) => fill,
    apart: (by, notation) => moreOrLess(by, notation.volume(Math.abs(by))),
  },
  {
    name: "Loads of fill, once stripped",
    text: ({ fillLoadsTold }) => fillLoadsTold ?? none,
    size: ({ fillLoads }) => fillLoads,
    apart: (by) => moreOrLess(by, String(Math.abs(by))),
  },
  {
    name: "Cut, from the ground as it is",
    text: ({ cut }, notation) => (cut === null ? none : notation.volume(cut)),
    size: ({ cut }) => cut,
    apart: (by, notation) => moreOrLess(by, notation.volume(Math.abs(by))),
  },
  {
    name: "Loads of cut, once stripped",
    text: ({ cutLoadsTold }) => cutLoadsTold ?? none,
    size: ({ cutLoads }) => cutLoads,
    apart: (by) => moreOrLess(by, String(Math.abs(by))),
  },
  {
    name: "Cost of what is priced",
    text: ({ cost }, notation) => (cost === null ? "nothing priced" : notation.money(cost)),
    size: ({ cost }) => cost,
    apart: (by, notation) => moreOrLess(by, notation.money(Math.abs(by))),
  },
  {
    name: "Deepest fill under the floor, before the strip",
    text: ({ deepestFill }, notation) => (deepestFill === null ? none : notation.length(deepestFill)),
    size: ({ deepestFill }) => deepestFill,
    apart: (by, notation) => moreOrLess(by, notation.length(Math.abs(by))),
  },
  {
    name: "Most wall showing, ground as finished",
    text: ({ mostShowing }, notation) =>
      mostShowing === null ? none : `${notation.length(mostShowing.m)} at ${mostShowing.at}`,
    size: ({ mostShowing }) => mostShowing?.m ?? null,
    apart: (by, notation) => moreOrLess(by, notation.length(Math.abs(by))),
  },
  {
    name: "Floor over the ground as it is, at most",
    text: ({ floorAboveGround: over }, notation) =>
      over === null
        ? none
        : over.m < 0
          ? `nowhere: ${notation.length(-over.m)} under it at ${over.at}`
          : `${notation.length(over.m)} at ${over.at}`,
    size: ({ floorAboveGround }) => floorAboveGround?.m ?? null,
    apart: (by, notation) => moreOrLess(by, notation.length(Math.abs(by))),
  },
  {
    name: "Steepest drive",
    text: ({ steepestDrive }, notation) =>
      steepestDrive === null ? "no drive" : notation.slope(steepestDrive.grade),
    size: ({ steepestDrive }) => steepestDrive?.grade ?? null,
    apart: (by) => (by > 0 ? "steeper" : "gentler"),
  },
  {
    name: "Water leaves the walls",
    text: ({ wetWalls, walls }) =>
      walls === 0 ? none : wetWalls === 0 ? "on every side" : `not on ${wetWalls} of ${walls} sides`,
    faulty: ({ wetWalls }) => wetWalls > 0,
  },
  {
    name: "Swales",
    text: ({ swales, stuckSwales }) =>
      swales === 0 ? "no swale" : stuckSwales.length === 0 ? "drain" : `${listed(stuckSwales)} to mend`,
    faulty: ({ stuckSwales }) => stuckSwales.length > 0,
  },
  {
    name: "Low places that hold water",
    text: ({ ponds }) => (ponds === 0 ? "none" : String(ponds)),
    size: ({ ponds }) => ponds,
    apart: (by) => moreOrLess(by, String(Math.abs(by)), "fewer"),
  },
  {
    name: "Limits of the floor",
    text: ({ breaks }) => (breaks === null ? "kept" : `broken: ${breaks}`),
    faulty: ({ breaks }) => breaks !== null,
  },
  {
    name: "To look at",
    text: ({ warnings }) => (warnings === 0 ? "nothing" : String(warnings)),
    size: ({ warnings }) => warnings,
    apart: (by) => moreOrLess(by, String(Math.abs(by)), "fewer"),
  },
];

function moreOrLess(by: number, amount: string, less = "less"): string {
  return `${amount} ${by > 0 ? "more" : less}`;
}

/** Rows for the plan as it is now and its options, in their order; the first of `columns` is what the others differ from. */
export function optionRows(columns: readonly OptionFigures[], notation: Notation): OptionRow[] {
  const now = columns[0];
  return rows.map((row) => ({
    name: row.name,
    cells: columns.map((figures) => ({
      text: row.text(figures, notation),
      difference: now && figures !== now ? difference(row, figures, now, notation) : "",
      faulty: row.faulty?.(figures) ?? false,
    })),
  }));
}

/** Nothing where the two read alike: a difference that can't be seen isn't told. */
function difference(row: Row, figures: OptionFigures, now: OptionFigures, notation: Notation): string {
  const [size, before] = [row.size?.(figures) ?? null, row.size?.(now) ?? null];
  if (size === null || before === null || size === before || !row.apart) return "";
  const text = (of: OptionFigures) => row.text(of, notation);
  return text(figures) === text(now) ? "" : row.apart(size - before, notation);
}
