/** Rain by the hour and flows, as the plan's units have them. */
import { FOOT, INCH } from "./constants";

const hour = 3600;

export interface RateUnit {
  readonly words: string;
  /** In m/s, or m3/s. */
  readonly factor: number;
}

/** Inches or millimetres an hour. */
export function rainUnit(feet: boolean): RateUnit {
  return feet ? { words: "in/h", factor: INCH / hour } : { words: "mm/h", factor: 1e-3 / hour };
}

/** Feet or metres a second. */
export function speedUnit(feet: boolean): RateUnit {
  return feet ? { words: "ft/s", factor: FOOT } : { words: "m/s", factor: 1 };
}

/** Cubic feet or litres a second. */
export function flowUnit(feet: boolean): RateUnit {
  return feet ? { words: "ft³/s", factor: FOOT ** 3 } : { words: "l/s", factor: 1e-3 };
}

/** "2.35 in/h": two figures after the first, no more than can be known. */
export function formatRate(value: number, { words, factor }: RateUnit): string {
  const shown = value / factor;
  const decimals = shown >= 100 ? 0 : shown >= 10 ? 1 : 2;
  return `${shown.toFixed(decimals)} ${words}`;
}
