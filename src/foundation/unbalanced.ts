/**
 * How much fill a wall may hold on one side by published tables; beyond it an engineer decides.
 *
 * Units   metres; thickness as built, nominal thicknesses of blocks are met by 10 mm less.
 * Method  A wall that is free at its top (slab inside on fill): 48 in whatever the soil, if it is thick enough to be in the
 *         tables at all. A wall that a floor holds at its top (crawl space): the greatest fill that its row allows plain,
 *         without steel; a wall lower than a row's is judged by that row.
 * Source  International Residential Code (2012) as in the California Residential Code 2013: R404.1.1(1) plain masonry,
 *         R404.1.2(8) flat concrete walls, R404.1.2.2.2 and R404.1.7. Cells that could not be read are left out, so that the
 *         answer is on the safe side.
 */
import type { BackfillSoil } from "../document/schema";

const inch = 0.0254;
const foot = 0.3048;
/** A nominal thickness is met by this much less. */
const nominal = 0.011;

export interface WallInTable {
  readonly kind: "poured" | "block";
  readonly thickness: number;
  /** Top of footing to top of wall. */
  readonly height: number;
  readonly soil: BackfillSoil;
  /** Whether a floor holds its top. */
  readonly held: boolean;
}

export interface FillLimit {
  readonly limit: number | null;
  readonly source: string;
}

/** Fill in feet that a thickness in inches allows, by soil: gravel and sand, silty, clay. */
type Row = readonly [thickness: number, fill: Readonly<Record<BackfillSoil, number>>];

const fills = (gravel: number, silty: number, clay: number): Readonly<Record<BackfillSoil, number>> => ({
  "gravel-sand": gravel,
  silty,
  clay,
});

/** Hollow blocks, walls up to 8 and 9 ft. */
const blocks: readonly (readonly [highest: number, rows: readonly Row[]])[] = [
  [
    8,
    [
      [8, fills(5, 4, 4)],
      [10, fills(6, 5, 4)],
      [12, fills(7, 6, 5)],
    ],
  ],
  [
    9,
    [
      [8, fills(5, 4, 4)],
      [10, fills(6, 5, 4)],
      [12, fills(6, 6, 5)],
    ],
  ],
];

/** Concrete, walls up to 8 and 10 ft. */
const poured: readonly (readonly [highest: number, rows: readonly Row[]])[] = [
  [
    8,
    [
      [6, fills(5, 4, 4)],
      [8, fills(7, 5, 5)],
      [10, fills(7, 7, 7)],
    ],
  ],
  [
    10,
    [
      [6, fills(5, 4, 4)],
      [8, fills(7, 5, 5)],
      [10, fills(7, 7, 5)],
      [12, fills(7, 7, 7)],
    ],
  ],
];

/** 48 in. */
const freeLimit = 4 * foot;
const thinnest = { poured: 6, block: 8 } as const;

export function fillLimit({ kind, thickness, height, soil, held }: WallInTable): FillLimit {
  const enough = (inches: number) => thickness >= inches * inch - nominal;
  if (!held) {
    const source =
      "International Residential Code R404.1 (2012): a stem wall that is free at its top holds at most 48 in";
    return { limit: enough(thinnest[kind]) ? freeLimit : null, source };
  }
  const table = kind === "block" ? blocks : poured;
  const [, rows] = table.find(([highest]) => height <= highest * foot + 1e-9) ?? [0, []];
  const row = [...rows].reverse().find(([inches]) => enough(inches));
  const name = kind === "block" ? "R404.1.1(1), plain masonry" : "R404.1.2(8), plain concrete";
  return {
    limit: row ? row[1][soil] * foot : null,
    source: `International Residential Code table ${name} (2012), held at top and bottom`,
  };
}

/**
 * Fill outside that nothing inside balances, as the building codes measure it: outside ground down to the lower of the
 * footing's top and the ground inside; with a slab against the wall, down to the slab's top.
 */
export function unbalancedOutside(
  outside: number,
  { topOfFooting, inside, slabTop }: { topOfFooting: number; inside: number; slabTop: number | null },
): number {
  return Math.max(0, outside - (slabTop ?? Math.min(topOfFooting, inside)));
}
