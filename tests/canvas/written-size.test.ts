/** Words on the plan are as large as the person wants words; handles and lines stay as they are. */
import { afterEach, describe, expect, it } from "vitest";
import type { Painting } from "../../src/canvas/paint/painting";
import { paintMarks } from "../../src/canvas/paint/paintMarks";
import { textOnScreen } from "../../src/canvas/scene/written";
import { pxPerMm, writtenPxPerMm } from "../../src/canvas/screen";
import type { DrawingMark, TextMark } from "../../src/drawing/marks";
import { palettes } from "../../src/look/tokens";
import { appStore } from "../../src/store/store";

const view = { centre: [0, 0], scale: 20, angle: 0, width: 400, height: 300 } as const;
const corner: TextMark = { kind: "text", at: [0, 0], text: "A", style: "corner-label", shift: [2, 1] };
const line: DrawingMark = { kind: "line", points: [-5, 0, 5, 0], style: "wall" };

function wordsAt(textSize: 1 | 1.5): void {
  appStore.setState(({ preferences }) => ({ preferences: { ...preferences, textSize } }));
}

/** What a canvas was told: the font and place of the word, the width of the line. */
function painted(mm: Painting["mm"]): { font: string; at: readonly number[]; width: number } {
  const told = { font: "", at: [] as readonly number[], width: 0 };
  const context = {
    font: "",
    lineWidth: 0,
    globalAlpha: 1,
    fillText(_: string, x: number, y: number) {
      Object.assign(told, { font: this.font, at: [x, y] });
    },
    stroke() {
      told.width = this.lineWidth;
    },
    beginPath() {},
    moveTo() {},
    lineTo() {},
    closePath() {},
    setLineDash() {},
  };
  const painting = { context: context as unknown as CanvasRenderingContext2D, view, palette: palettes.light };
  paintMarks({ ...painting, mm }, [line, corner]);
  return told;
}

const sizeOf = (font: string) => Number.parseFloat(font.match(/([\d.]+)px/)?.[1] ?? "");

describe("words half as large again", () => {
  afterEach(() => wordsAt(1));

  it("have letters and gaps of one and a half, and lines as wide as before", () => {
    const usual = painted({ words: pxPerMm, signs: pxPerMm });
    wordsAt(1.5);
    const large = painted({ words: writtenPxPerMm(), signs: pxPerMm });
    expect(sizeOf(usual.font)).toBeCloseTo(3.4 * pxPerMm, 1);
    expect(sizeOf(large.font)).toBeCloseTo(1.5 * 3.4 * pxPerMm, 1);
    const [x = 0, y = 0] = usual.at;
    expect(large.at[0]).toBeCloseTo(200 + 1.5 * (x - 200), 6);
    expect(large.at[1]).toBeCloseTo(150 + 1.5 * (y - 150), 6);
    expect(large.width).toBe(usual.width);
  });

  it("take the room on the screen that they are painted in", () => {
    const usual = textOnScreen(corner, view);
    wordsAt(1.5);
    const large = textOnScreen(corner, view);
    expect(large.width).toBeCloseTo(1.5 * usual.width, 6);
    expect(large.height).toBeCloseTo(1.5 * usual.height, 6);
    expect(large.x - 200).toBeCloseTo(1.5 * (usual.x - 200), 6);
  });
});
