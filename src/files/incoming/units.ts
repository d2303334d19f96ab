/** Units that files of ground come in. Source: definitions (international foot 0.3048 m; US survey foot 1200/3937 m). */
export const fileUnits = ["m", "cm", "mm", "km", "ft", "ft-us", "in", "yd"] as const;

export type FileUnit = (typeof fileUnits)[number];

const metres: Readonly<Record<FileUnit, number>> = {
  m: 1,
  cm: 0.01,
  mm: 0.001,
  km: 1000,
  ft: 0.3048,
  "ft-us": 1200 / 3937,
  in: 0.0254,
  yd: 0.9144,
};

const words: Readonly<Record<FileUnit, string>> = {
  m: "metres",
  cm: "centimetres",
  mm: "millimetres",
  km: "kilometres",
  ft: "feet (international)",
  "ft-us": "feet (US survey)",
  in: "inches",
  yd: "yards",
};

/** Metres in one of the unit. */
export function metresPer(unit: FileUnit): number {
  return metres[unit];
}

export function unitWords(unit: FileUnit): string {
  return words[unit];
}

/**
 * How far the two feet differ over the farthest coordinate, m: what a wrong choice would move that point by.
 * `reach` in feet.
 */
export function feetApart(reach: number): number {
  return Math.abs(reach) * (metres["ft-us"] - metres.ft);
}
