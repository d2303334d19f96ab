import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { describe, expect, it } from "vitest";
import { ellipsize, textWidth } from "../../src/drawing/text-width";

interface Font {
  glyphForCodePoint(codePoint: number): { advanceWidth: number };
  hasGlyphForCodePoint(codePoint: number): boolean;
}

// The PDF writer's own font reader is an outside witness for the table of widths.
const pdfkitRequire = createRequire(createRequire(import.meta.url).resolve("pdfkit"));
const fontkit = pdfkitRequire("fontkit") as { create(bytes: Uint8Array): Font };
const fontFile = (name: string) => fontkit.create(readFileSync(`assets/fonts/SourceSans3-${name}.ttf`));

const written =
  "½¼¾⅛⅜⅝⅞′″⁄⁰¹²³⁴⁵⁶⁷⁸⁹₀₁₂₃₄₅₆₇₈₉±→↑←↓°≈≤≥∆−×·–—…“”‘’•▲☐ éüßÅñ" +
  Array.from({ length: 95 }, (_, i) => String.fromCodePoint(32 + i)).join("");

describe("text width", () => {
  it.each([
    ["Regular", 400],
    ["SemiBold", 600],
  ] as const)("of every character that is written equals the advance in the %s font file", (name, weight) => {
    const font = fontFile(name);
    for (const character of written) {
      const codePoint = character.codePointAt(0) ?? 0;
      expect(font.hasGlyphForCodePoint(codePoint), character).toBe(true);
      const { advanceWidth } = font.glyphForCodePoint(codePoint);
      expect(textWidth(character, 1000, weight), character).toBeCloseTo(advanceWidth, 6);
    }
  });

  it("adds up and grows with the size", () => {
    expect(textWidth("5′ 2⅝″", 2)).toBeCloseTo(
      2 * ["5", "′", " ", "2", "⅝", "″"].reduce((sum, one) => sum + textWidth(one, 1), 0),
      9,
    );
  });
});

describe("shortening", () => {
  it("leaves a text alone that fits, and ends one that doesn't in an ellipsis within the width", () => {
    const name = "The long narrow storage building behind the orchard";
    expect(ellipsize(name, 1000, 3)).toBe(name);
    const short = ellipsize(name, 30, 3);
    expect(short.endsWith("…")).toBe(true);
    expect(textWidth(short, 3)).toBeLessThanOrEqual(30);
    expect(textWidth(short, 3)).toBeGreaterThan(24);
  });

  it("gives nothing where not even the ellipsis fits", () => {
    expect(ellipsize("drive", 1, 3)).toBe("");
  });
});
