/** Units that bills are counted and priced in. */
import { CUBIC_YARD, FOOT, SHORT_TON, SQUARE_FOOT } from "./constants";
import type { AreaUnit, VolumeUnit } from "./notation";

export type CountedUnit = "m3" | "m2" | "m" | "pieces" | "loads" | "hours";

/** A unit as a reader has it: `size` of it in the unit inside. */
export interface ReadersUnit {
  /** For a table: "yd3". */
  readonly name: string;
  /** For a price: "a yd³". */
  readonly each: string;
  readonly size: number;
}

/** What a bill's item is counted in, in the reader's units. */
export function countedIn(
  unit: CountedUnit,
  { area, volume }: { readonly area: AreaUnit; readonly volume: VolumeUnit },
): ReadersUnit {
  const feet = area === "ft2";
  switch (unit) {
    case "m3":
      return volume === "yd3"
        ? { name: "yd3", each: "a yd³", size: CUBIC_YARD }
        : { name: "m3", each: "a m³", size: 1 };
    case "m2":
      return feet ? { name: "ft2", each: "a ft²", size: SQUARE_FOOT } : { name: "m2", each: "a m²", size: 1 };
    case "m":
      return feet ? { name: "ft", each: "a foot", size: FOOT } : { name: "m", each: "a metre", size: 1 };
    case "hours":
      return { name: "hours", each: "an hour", size: 1 };
    default:
      return { name: unit, each: "each", size: 1 };
  }
}

/** Weights on a truck: tons of 2,000 lb, or tonnes; kg in one. */
export function weighedIn({ volume }: { readonly volume: VolumeUnit }): {
  readonly name: string;
  readonly size: number;
} {
  return volume === "yd3" ? { name: "tons_of_2000_lb", size: SHORT_TON } : { name: "tonnes", size: 1000 };
}
