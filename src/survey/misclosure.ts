/**
 * How much a run of levels may miss a known height.
 *
 * Units   metres.
 * Method  constant x √ of the run's length, or of its number of set-ups: chance errors grow so.
 * Source  named with each class; constants marked "from memory" were not read again in the standard's own text.
 */

import type { Survey } from "../document/schema";
import type { BookPage } from "./bookPage";

export interface MisclosureClass {
  readonly id: Survey["misclosureClass"];
  readonly name: string;
  /** Metres at one of `per`. */
  readonly constant: number;
  /** "km": √ of kilometres run. "setups": √ of the number of set-ups. */
  readonly per: "km" | "setups";
  readonly source: string;
}

const FGCC = "Federal Geodetic Control Committee, Standards and Specifications, 1984, loops (from memory)";
const USACE = "US Army Corps of Engineers, EM 1110-1-1005 (from memory)";
/** √ of a mile in √ of kilometres. */
const ROOT_MILE = Math.sqrt(1.609344);

export const misclosureClasses: readonly MisclosureClass[] = [
  {
    id: "site",
    name: "building site, rotary laser",
    constant: 0.005,
    per: "setups",
    source: "5 mm for each √ of the set-ups: common practice on building sites",
  },
  {
    id: "earthwork",
    name: "earthwork",
    constant: 0.012,
    per: "setups",
    source: "1/2 in for each √ of the set-ups: common practice for grading",
  },
  {
    id: "construction",
    name: "construction layout",
    constant: (0.1 * 0.3048) / ROOT_MILE,
    per: "km",
    source: USACE,
  },
  {
    id: "third-us",
    name: "third order (miles)",
    constant: (0.05 * 0.3048) / ROOT_MILE,
    per: "km",
    source: USACE,
  },
  { id: "third", name: "third order", constant: 0.012, per: "km", source: FGCC },
  { id: "second-2", name: "second order, class II", constant: 0.008, per: "km", source: FGCC },
  { id: "second-1", name: "second order, class I", constant: 0.006, per: "km", source: FGCC },
  { id: "first-2", name: "first order, class II", constant: 0.005, per: "km", source: FGCC },
  { id: "first-1", name: "first order, class I", constant: 0.004, per: "km", source: FGCC },
];

export function misclosureClass(id: MisclosureClass["id"]): MisclosureClass {
  const found = misclosureClasses.find((each) => each.id === id);
  if (found === undefined) throw new RangeError(`no misclosure class ${id}`);
  return found;
}

/** The permitted misclosure, m; null where the length that the class asks for isn't known. */
export function permittedMisclosure(
  { constant, per }: MisclosureClass,
  run: { readonly setups: number; readonly length: number | null },
): number | null {
  if (per === "setups") return constant * Math.sqrt(run.setups);
  return run.length === null ? null : constant * Math.sqrt(run.length / 1000);
}

/** How a page of levels closes: what it misses its last known height by and what the class permits, m. */
export interface RunCloses {
  /** Null where the run doesn't come back to a known height. */
  readonly misclosure: number | null;
  /** Null where the class goes by the run's length, and that isn't known. */
  readonly permitted: number | null;
  /** Null where it can't be said. */
  readonly within: boolean | null;
}

/** The run's length is the sum of its sights' distances, known where each reading that ends a set-up has one. */
export function runCloses({ rows, book }: BookPage, chosen: MisclosureClass): RunCloses {
  const distances = rows.flatMap(({ fs, distance }) => (fs === null ? [] : [distance ?? null]));
  const known = distances.filter((distance) => distance !== null);
  const all = known.length > 0 && known.length === distances.length;
  const length = all ? known.reduce((sum, distance) => sum + distance, 0) : null;
  const permitted = permittedMisclosure(chosen, { setups: book.setups.length, length });
  const { misclosure } = book;
  const within = misclosure === null || permitted === null ? null : Math.abs(misclosure) <= permitted;
  return { misclosure, permitted, within };
}
