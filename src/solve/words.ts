/** Figures in the project's own notation, for sentences. */
import type { Display } from "../document/schema";
import { bothUnits, formatArea, formatLength, formatSlope, formatVolume } from "../units";

export interface Words {
  readonly length: (metres: number) => string;
  readonly slope: (slope: number) => string;
  readonly area: (squareMetres: number) => string;
  readonly volume: (cubicMetres: number) => string;
  /** A round figure of a rule as it is usually written in both: the plan's own first. */
  readonly rule: (feet: string, metric: string) => string;
}

export function wordsFor(display: Display): Words {
  return {
    length: (metres) => formatLength(metres, display.length, display.rounding),
    slope: (slope) => formatSlope(slope, display.slope),
    area: (squareMetres) => formatArea(squareMetres, display.area),
    volume: (cubicMetres) => formatVolume(cubicMetres, display.volume),
    rule: (feet, metric) => bothUnits(feet, metric, display.length),
  };
}
