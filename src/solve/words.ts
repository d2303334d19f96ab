/** Figures in the project's own notation, for sentences. */
import type { Display } from "../document/schema";
import { formatArea, formatLength, formatSlope, formatVolume } from "../units";

export interface Words {
  readonly length: (metres: number) => string;
  readonly slope: (slope: number) => string;
  readonly area: (squareMetres: number) => string;
  readonly volume: (cubicMetres: number) => string;
}

export function wordsFor(display: Display): Words {
  return {
    length: (metres) => formatLength(metres, display.length, display.rounding),
    slope: (slope) => formatSlope(slope, display.slope),
    area: (squareMetres) => formatArea(squareMetres, display.area),
    volume: (cubicMetres) => formatVolume(cubicMetres, display.volume),
  };
}
