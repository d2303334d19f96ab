/** Lines of running text: words broken to a width, some of them strong. */
import { textWidth } from "../drawing/text-width";

export interface Run {
  readonly text: string;
  readonly strong?: boolean;
}

export interface Line {
  readonly words: readonly { readonly text: string; readonly strong: boolean; readonly x: number }[];
}

/** Breaks runs of text into lines no wider than `width` (mm, at an em of `size`). A longer word stands alone. */
export function wrap(runs: readonly Run[], width: number, size: number): readonly Line[] {
  const space = textWidth(" ", size);
  const lines: { text: string; strong: boolean; x: number }[][] = [[]];
  let x = 0;
  for (const { text, strong = false } of runs) {
    for (const word of unbroken(text)) {
      const wide = textWidth(word, size, strong ? 600 : 400);
      let line = lines[lines.length - 1] ?? [];
      if (line.length > 0 && x + wide > width) {
        line = [];
        lines.push(line);
        x = 0;
      }
      line.push({ text: word, strong, x });
      x += wide + space;
    }
  }
  return lines.map((words) => ({ words: joined(words) }));
}

const inchPart = /^[\d½¼¾⅛⅜⅝⅞⁰¹²³⁴-⁹⁄₀-₉]+″/;
const unit = /^(%|mm|cm|m|m²|m³|ft²|yd³|yd|loads?)([.,;:)]|$)/;

/** Words, with feet and inches, and a number and its unit, kept together. */
export function unbroken(text: string): readonly string[] {
  const words: string[] = [];
  for (const word of text.split(" ")) {
    const before = words[words.length - 1];
    const measure = before?.endsWith("′") && inchPart.test(word);
    const amount = before !== undefined && /\d$/.test(before) && unit.test(word);
    if (measure || amount) words[words.length - 1] = `${before} ${word}`;
    else if (word !== "") words.push(word);
  }
  return words;
}

/** Neighbouring words of one weight become one piece of text, so that a reader finds whole phrases. */
function joined(words: readonly { text: string; strong: boolean; x: number }[]) {
  const pieces: { text: string; strong: boolean; x: number }[] = [];
  for (const word of words) {
    const last = pieces[pieces.length - 1];
    if (last && last.strong === word.strong) last.text += ` ${word.text}`;
    else pieces.push({ ...word });
  }
  return pieces;
}
