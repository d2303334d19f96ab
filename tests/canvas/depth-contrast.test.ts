import { describe, expect, it } from "vitest";
import { depthOpacity } from "../../src/canvas/paint/depthPicture";
import { type Palette, palettes } from "../../src/look/tokens";

type Rgb = readonly number[];

const rgb = (hex: string): Rgb => [1, 3, 5].map((at) => Number.parseInt(hex.slice(at, at + 2), 16));

/** Relative luminance and contrast ratio as WCAG 2.1 defines them. */
function luminance(colour: Rgb): number {
  const [r = 0, g = 0, b = 0] = colour.map((value) => {
    const share = value / 255;
    return share <= 0.03928 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

function contrast(a: Rgb, b: Rgb): number {
  const [light = 0, dark = 0] = [luminance(a), luminance(b)].sort((x, y) => y - x);
  return (light + 0.05) / (dark + 0.05);
}

/** The sheet, then the classes from the shallowest as they are seen on it. */
function ramp(palette: Palette, side: "cut" | "fill"): Rgb[] {
  const sheet = rgb(palette.sheet);
  const seen = ([0, 1, 2, 3] as const).map((depth) =>
    rgb(palette[`${side}${depth}`]).map(
      (value, i) => value * depthOpacity + (sheet[i] ?? 0) * (1 - depthOpacity),
    ),
  );
  return [sheet, ...seen];
}

describe("cut and fill on the sheet", () => {
  it.each([
    ["dark", "cut", 1.75],
    ["dark", "fill", 1.75],
    ["light", "cut", 1.1],
    ["light", "fill", 1.1],
  ] as const)(
    "%s: the shallowest %s stands off the sheet by %d, each class off the one before by 1.3",
    (theme, side, least) => {
      const colours = ramp(palettes[theme], side);
      expect(contrast(colours[0] as Rgb, colours[1] as Rgb)).toBeGreaterThan(least);
      for (let i = 1; i + 1 < colours.length; i++)
        expect(contrast(colours[i] as Rgb, colours[i + 1] as Rgb)).toBeGreaterThan(1.3);
    },
  );
});
