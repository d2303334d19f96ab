/** Paragraphs and lists in a column. */
import { type Block, headingPitch, headingScale, paddingX, paddingY, pitch } from "./block";
import { inks } from "./inks";
import type { Pen } from "./pen";
import { type Run, wrap } from "./text";

export interface Paragraph {
  readonly runs: readonly Run[];
  /** A list's item: a bullet before it, the lines hung after that. */
  readonly bullet?: boolean;
}

const bulletIndent = 1.1;
/** Free paper between paragraphs over the text size. */
const paragraphGap = 0.28;

function lay(paragraph: Paragraph, width: number, size: number) {
  return wrap(paragraph.runs, width - (paragraph.bullet ? bulletIndent * size : 0), size);
}

function drawParagraph(
  pen: Pen,
  paragraph: Paragraph,
  x: number,
  y0: number,
  width: number,
  size: number,
): number {
  let y = y0;
  const indent = paragraph.bullet ? bulletIndent * size : 0;
  for (const [i, line] of lay(paragraph, width, size).entries()) {
    const baseline = y + size * 0.95;
    if (i === 0 && paragraph.bullet) pen.text("•", x, baseline, { size, colour: inks.ink });
    for (const word of line.words) {
      const weight = word.strong ? 600 : 400;
      pen.text(word.text, x + indent + word.x, baseline, { size, weight, colour: inks.ink });
    }
    y += pitch * size;
  }
  return y;
}

const continuing = ", continued";

/** Paragraphs under a heading. It may be broken between paragraphs, its heading repeated. */
export function proseBlock(name: string, heading: string, paragraphs: readonly Paragraph[]): Block {
  return {
    name,
    height(outer, size) {
      const width = outer - 2 * paddingX;
      const lines = paragraphs.reduce((sum, paragraph) => sum + lay(paragraph, width, size).length, 0);
      const gaps = Math.max(0, paragraphs.length - 1) * paragraphGap * size;
      return 2 * paddingY + headingPitch * size + lines * pitch * size + gaps;
    },
    draw(pen, x0, y0, outer, size) {
      const x = x0 + paddingX;
      let y = y0 + paddingY;
      const headSize = size * headingScale;
      pen.text(heading, x, y + headSize * 0.8, { size: headSize, weight: 600, colour: inks.ink });
      y += headingPitch * size;
      for (const paragraph of paragraphs) {
        y = drawParagraph(pen, paragraph, x, y, outer - 2 * paddingX, size) + paragraphGap * size;
      }
    },
    split(width, size, room) {
      const first = (count: number) => proseBlock(name, heading, paragraphs.slice(0, count));
      let count = paragraphs.length - 1;
      while (count > 0 && first(count).height(width, size) > room) count--;
      if (count <= 0) return null;
      const title = heading.endsWith(continuing) ? heading : `${heading}${continuing}`;
      return [first(count), proseBlock(name, title, paragraphs.slice(count))];
    },
  };
}
