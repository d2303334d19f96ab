/** The key: one sample of each thing that is drawn on this sheet, painted by the same hand. */
import type { Display } from "../document/schema";
import { depthClasses } from "../drawing";
import type { DrawingMark, MarkLayer, SymbolMark } from "../drawing/marks";
import { type Style, type StyleName, styles } from "../drawing/styles";
import { textWidth } from "../drawing/text-width";
import { formatLength } from "../units";
import { type Block, headingPitch, headingScale, paddingX, paddingY } from "./block";
import { inks } from "./inks";
import { paintRings, paintSymbol } from "./paint";
import type { Pen } from "./pen";

type Sample =
  | { readonly kind: "line"; readonly style: StyleName }
  | {
      readonly kind: "symbol";
      readonly symbol: SymbolMark["symbol"];
      readonly size: number;
      readonly style: StyleName;
    }
  | { readonly kind: "area"; readonly fills: readonly StyleName[] };

interface Entry {
  readonly words: string;
  readonly sample: Sample;
  /** Shown when the drawing has a mark of this style. */
  readonly when: StyleName;
}

const line = (words: string, style: StyleName): Entry => ({
  words,
  sample: { kind: "line", style },
  when: style,
});
const symbol = (words: string, shape: SymbolMark["symbol"], size: number, style: StyleName): Entry => ({
  words,
  sample: { kind: "symbol", symbol: shape, size, style },
  when: style,
});
const area = (words: string, when: StyleName, ...fills: StyleName[]): Entry => ({
  words,
  sample: { kind: "area", fills },
  when,
});

const drawn: readonly Entry[] = [
  line("lot line", "lot-line"),
  line("setback", "setback"),
  line("ground as it is", "contour-existing-major"),
  line("finished ground", "contour-finished-major"),
  line("cut or fill ends", "daylight"),
  line("swale", "swale"),
  line("pipe under a drive", "pipe"),
  line("drain round the footing", "footing-drain"),
  line("steepest of drive", "drive-steep"),
  line("water runs to this wall", "wall-wet"),
  line("buried, overhead line", "feature-danger"),
  line("tie to a lot line", "tie"),
  line("section line", "section-line"),
  line("keep clear", "keep-clear"),
  line("edge of footing", "trench"),
  symbol("water runs this way", "arrow", 4.2, "arrow"),
  symbol("shot and its height", "cross", 1.8, "shot"),
  symbol("test pit", "ring", 2.6, "pit"),
  symbol("mark", "triangle", 3.2, "mark-symbol"),
  symbol("deepest cut or fill", "dot", 1.1, "depth-spot"),
  area("water stands", "pond", "pond"),
  area("guessed, no shots", "guessed-hatch", "guessed-hatch"),
];

/** Classes of cut and fill that occur, deepest cut first: tint and hatch together. */
function depthEntries(display: Display): readonly Entry[] {
  return depthClasses(display).flatMap((one): Entry[] => {
    if (!one.ink) return [];
    return [area(one.words, one.ink, one.ink, one.ink.startsWith("cut") ? "cut-hatch" : "fill-hatch")];
  });
}

/** What the key must explain for these layers. */
export function keyEntries(layers: readonly MarkLayer[], display: Display): readonly Entry[] {
  const used = new Set<StyleName>();
  for (const layer of layers) for (const mark of layer.marks as readonly DrawingMark[]) used.add(mark.style);
  return [...drawn, ...depthEntries(display)].filter((entry) => used.has(entry.when));
}

/** Over the text size: width of a sample, the gap after it, least and widest gap between columns, line pitch, words. */
const sampleScale = 2.7;
const gapScale = 0.75;
const columnGapScale = 1;
const widestGapScale = 5;
const rowPitch = 1.5;
const wordScale = 0.95;

function strokeOf(style: Style) {
  const stroke = { colour: inks[style.stroke ?? "ink"], width: style.width ?? 0.2 };
  return style.dash ? { ...stroke, dash: style.dash } : stroke;
}

/** In a small sample a wide hatch would hardly show. */
function closer(style: Style): Style {
  return style.hatch
    ? { ...style, hatch: { ...style.hatch, spacing: Math.min(style.hatch.spacing, 1.2) } }
    : style;
}

function drawSample(pen: Pen, sample: Sample, x: number, middle: number, size: number): void {
  const sampleWidth = sampleScale * size;
  const height = size * 1.15;
  if (sample.kind === "line") {
    pen.line([x, middle, x + sampleWidth, middle], strokeOf(styles[sample.style]));
    return;
  }
  if (sample.kind === "symbol") {
    paintSymbol(pen, { ...sample, kind: "symbol" }, [x + sampleWidth / 2, middle]);
    return;
  }
  const [top, bottom] = [middle - height / 2, middle + height / 2];
  const box = [x, top, x + sampleWidth, top, x + sampleWidth, bottom, x, bottom];
  for (const style of sample.fills) paintRings(pen, [box], closer(styles[style]));
  pen.line(box, { colour: inks.soft, width: 0.12 }, true);
}

/** The step between contours: the smallest, 0.05 m or 0.25 ft, needs two decimals whatever heights are rounded to. */
function intervalText(interval: number, { length, rounding }: Display): string {
  const decimal = length === "ft" || length === "m";
  return formatLength(interval, length, decimal ? Math.max(rounding, 2) : rounding);
}

interface KeyColumn {
  readonly entries: readonly Entry[];
  readonly width: number;
}

function columnsOf(entries: readonly Entry[], count: number, size: number): readonly KeyColumn[] {
  const rows = Math.ceil(entries.length / count);
  return Array.from({ length: Math.ceil(entries.length / rows) }, (_, i) => {
    const own = entries.slice(i * rows, (i + 1) * rows);
    const words = Math.max(...own.map((entry) => textWidth(entry.words, size * wordScale)));
    return { entries: own, width: (sampleScale + gapScale) * size + words };
  });
}

/** As many columns as the width holds with every word whole. */
function keyColumns(entries: readonly Entry[], room: number, size: number): readonly KeyColumn[] {
  for (let count = entries.length; count > 1; count--) {
    const columns = columnsOf(entries, count, size);
    const gaps = (columns.length - 1) * columnGapScale * size;
    if (columns.reduce((sum, { width }) => sum + width, gaps) <= room) return columns;
  }
  return columnsOf(entries, 1, size);
}

function drawColumn(pen: Pen, { entries }: KeyColumn, left: number, top: number, size: number): void {
  for (const [row, { words, sample }] of entries.entries()) {
    const middle = top + (row + 0.5) * rowPitch * size;
    drawSample(pen, sample, left, middle, size);
    const look = { size: size * wordScale, colour: inks.ink };
    pen.text(words, left + (sampleScale + gapScale) * size, middle + size * 0.31, look);
  }
}

/** Samples in as many columns as the width holds. */
export function keyBlock(layers: readonly MarkLayer[], display: Display, interval: number): Block | null {
  const entries = keyEntries(layers, display);
  const contours = entries.some(({ when }) => when.startsWith("contour-"));
  const heading = contours ? `Key; contours every ${intervalText(interval, display)}` : "Key";
  if (entries.length === 0) return null;
  return {
    name: "key",
    height(width, size) {
      const [longest] = keyColumns(entries, width - 2 * paddingX, size);
      const rows = longest?.entries.length ?? 0;
      return 2 * paddingY + headingPitch * size + rows * rowPitch * size;
    },
    draw(pen, x0, y0, width, size) {
      const room = width - 2 * paddingX;
      const headSize = size * headingScale;
      let x = x0 + paddingX;
      pen.text(heading, x, y0 + paddingY + headSize * 0.8, { size: headSize, weight: 600, colour: inks.ink });
      const columns = keyColumns(entries, room, size);
      const spare = room - columns.reduce((sum, column) => sum + column.width, 0);
      const gap = columns.length > 1 ? spare / (columns.length - 1) : 0;
      for (const column of columns) {
        drawColumn(pen, column, x, y0 + paddingY + headingPitch * size, size);
        x += column.width + Math.min(gap, widestGapScale * size);
      }
    },
  };
}
