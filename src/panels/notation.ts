/** Figures as this project writes them: one formatter a kind, from the project's display settings. */
import type { Display } from "../document";
import {
  bothUnits,
  depthInWords,
  flowUnit,
  formatAboveBelow,
  formatArea,
  formatBore,
  formatLength,
  formatMass,
  formatMoney,
  formatRate,
  formatSigned,
  formatSlope,
  formatVolume,
  rainUnit,
  roundingFor,
  speedUnit,
} from "../units";

export interface Notation {
  readonly display: Display;
  /** Lengths and heights. */
  length(m: number): string;
  signed(m: number): string;
  aboveBelow(m: number): string;
  /** Laser readings, in the notation of the readings column. */
  reading(m: number): string;
  depth(m: number): string;
  area(m2: number): string;
  volume(m3: number): string;
  slope(ratio: number): string;
  /** A round figure of a rule as it is usually written in both: the plan's own first. */
  rule(feet: string, metric: string): string;
  /** Rates of water and rain, in feet and inches or metric as areas are told. */
  flow(m3PerSecond: number): string;
  speed(mPerSecond: number): string;
  rain(mPerSecond: number): string;
  /** Bore of a pipe. */
  bore(m: number): string;
  /** Short tons beside cubic yards, tonnes else. */
  mass(kg: number): string;
  /** An amount in the user's own money. */
  money(amount: number): string;
}

const made = new WeakMap<Display, Notation>();

/** The same object for the same settings, so that memoised components stay still. */
export function notationOf(display: Display): Notation {
  const known = made.get(display);
  if (known) return known;
  const notation = makeNotation(display);
  made.set(display, notation);
  return notation;
}

function makeNotation(display: Display): Notation {
  const { length, rounding, reading } = display;
  const feet = display.area === "ft2";
  return {
    display,
    length: (m) => formatLength(m, length, rounding),
    signed: (m) => formatSigned(m, length, rounding),
    aboveBelow: (m) => formatAboveBelow(m, length, rounding),
    reading: (m) => formatLength(m, reading, roundingFor(reading, display)),
    depth: (m) => depthInWords(m, length, rounding),
    area: (m2) => formatArea(m2, display.area),
    volume: (m3) => formatVolume(m3, display.volume),
    slope: (ratio) => formatSlope(ratio, display.slope),
    rule: (inFeet, metric) => bothUnits(inFeet, metric, display.length),
    flow: (rate) => formatRate(rate, flowUnit(feet)),
    speed: (rate) => formatRate(rate, speedUnit(feet)),
    rain: (rate) => formatRate(rate, rainUnit(feet)),
    bore: (m) => formatBore(m, feet),
    mass: (kg) => formatMass(kg, display.volume === "yd3" ? "ton" : "t"),
    money: (amount) => formatMoney(amount, display.volume),
  };
}
