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
    for (const word of text.split(" ").filter((part) => part !== "")) {
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
