import { describe, expect, it } from "vitest";
import { type Ink, palettes } from "../../src/look/tokens";

/** Relative luminance of #rrggbb. Source: W3C, Web Content Accessibility Guidelines 2.1, definitions. */
function luminance(colour: string): number {
  const [r = 0, g = 0, b = 0] = [1, 3, 5]
    .map((at) => Number.parseInt(colour.slice(at, at + 2), 16) / 255)
    .map((part) => (part <= 0.03928 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4));
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

function contrast(a: string, b: string): number {
  const [low = 0, high = 0] = [luminance(a), luminance(b)].sort((x, y) => x - y);
  return (high + 0.05) / (low + 0.05);
}

/** Every pair of text and ground that the window uses. */
const pairs: readonly (readonly [Ink, readonly Ink[]])[] = [
  ["ink", ["paper", "sheet", "raised", "accentSoft"]],
  ["soft", ["paper", "sheet", "raised", "accentSoft"]],
  ["accent", ["paper", "sheet", "raised", "accentSoft"]],
  ["warn", ["paper", "sheet"]],
  ["bad", ["paper", "sheet", "raised"]],
  ["ok", ["paper", "sheet"]],
  ["onAccent", ["accent"]],
  ["paper", ["ink"]],
  ["fillInk", ["paper"]],
  ["cutInk", ["paper"]],
];

describe.each(["light", "dark"] as const)(
  "text on its ground, %s: at least 4.5 to 1 (WCAG 2.1, 1.4.3)",
  (theme) => {
    const palette = palettes[theme];
    it.each(pairs.flatMap(([ink, grounds]) => grounds.map((ground) => [ink, ground] as const)))(
      "%s on %s",
      (ink, ground) => {
        expect(contrast(palette[ink], palette[ground])).toBeGreaterThanOrEqual(4.5);
      },
    );
  },
);

it("the measure itself: black on white is 21 to 1", () => {
  expect(contrast("#000000", "#ffffff")).toBeCloseTo(21, 9);
  expect(contrast("#777777", "#ffffff")).toBeLessThan(4.5);
});
