/**
 * Colours of the maps of heights and steepness, from published schemes that the colour-blind can read.
 *
 * Source  heights: cividis, low to high (Nuñez, Anderton, Renslow 2018, “Optimizing colormaps with consideration for
 *         color vision deficiency”, PLoS ONE 13(7)), sampled at ten even steps. Steepness: ColorBrewer's Purples of seven
 *         classes (Brewer, Harrower, Pennsylvania State University); the flattest is nearest to the sheet, so the dark
 *         theme runs them the other way.
 */
import type { Theme } from "./tokens";

const cividis = [
  "#00204d",
  "#00336f",
  "#39486b",
  "#575c6d",
  "#707173",
  "#8a8779",
  "#a69d75",
  "#c4b56c",
  "#e4cf5b",
  "#ffea46",
] as const;

const purples = ["#f2f0f7", "#dadaeb", "#bcbddc", "#9e9ac8", "#807dba", "#6a51a3", "#4a1486"] as const;

/** `count` colours from low to high. */
export function heightColours(count: number): readonly string[] {
  return Array.from({ length: count }, (_, i) => between(count === 1 ? 0.5 : i / (count - 1)));
}

/** Seven colours from level to steep. */
export function slopeColours(theme: Theme): readonly string[] {
  return theme === "dark" ? [...purples].reverse() : purples;
}

/** The scheme's colour at a share of its length; straight between its samples. */
function between(share: number): string {
  const at = share * (cividis.length - 1);
  const i = Math.min(cividis.length - 2, Math.floor(at));
  const [low, high] = [channels(cividis[i] as string), channels(cividis[i + 1] as string)];
  return `#${low.map((c, k) => hex(c + ((high[k] as number) - c) * (at - i))).join("")}`;
}

function channels(colour: string): number[] {
  return [1, 3, 5].map((start) => Number.parseInt(colour.slice(start, start + 2), 16));
}

function hex(value: number): string {
  return Math.round(value).toString(16).padStart(2, "0");
}
