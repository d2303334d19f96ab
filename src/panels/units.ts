/** Ready-made sets of units; anything else is set one by one in the settings. */
import type { Display } from "../document";

export interface UnitSet {
  readonly id: "inches" | "feet" | "metres" | "millimetres";
  readonly name: string;
  readonly example: string;
  readonly display: Omit<Display, "paper" | "slope">;
}

export const unitSets: readonly UnitSet[] = [
  {
    id: "inches",
    name: "Feet and inches",
    example: "99′ 5½″, readings 62⅝″",
    display: { length: "ft-in", reading: "in", area: "ft2", volume: "yd3", rounding: 8 },
  },
  {
    id: "feet",
    name: "Feet and hundredths",
    example: "99.46′, readings 5.22′",
    display: { length: "ft", reading: "ft", area: "ft2", volume: "yd3", rounding: 2 },
  },
  {
    id: "metres",
    name: "Metres",
    example: "30.315 m, readings 1.591 m",
    display: { length: "m", reading: "m", area: "m2", volume: "m3", rounding: 3 },
  },
  {
    id: "millimetres",
    name: "Millimetres",
    example: "30315 mm, readings 1591 mm",
    display: { length: "mm", reading: "mm", area: "m2", volume: "m3", rounding: 0 },
  },
];

/** The set that the project's display is, or null where it was mixed by hand. */
export function unitSetOf(display: Display): UnitSet | null {
  return (
    unitSets.find((set) => set.display.length === display.length && set.display.area === display.area) ?? null
  );
}
