/** Inks for white paper: the page's light palette without its paper tone. */
import { type Ink, type Palette, palettes } from "../look/tokens";

export const inks: Palette = { ...palettes.light, paper: "#ffffff", sheet: "#ffffff", rule: "#c4bfb2" };

/** A colour thinned towards white, so that the sheet needs no transparency (older printers flatten it badly). */
export function tint(ink: Ink, opacity: number): string {
  const hex = inks[ink];
  const channels = [1, 3, 5].map((at) => {
    const value = Number.parseInt(hex.slice(at, at + 2), 16);
    return Math.round(255 + (value - 255) * opacity)
      .toString(16)
      .padStart(2, "0");
  });
  return `#${channels.join("")}`;
}
