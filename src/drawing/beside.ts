/** Places for a label beside a point: the usual eight, best first. */

import { capHeight, type LabelTexts, textMargin } from "./context";
import type { LengthTold, TextMark, XY } from "./marks";
import { type StyleName, styles } from "./styles";

/** For a style that states no text size, mm. */
const usualSize = 2.6;

/** Text size of a style, mm. */
export function sizeOf(style: StyleName): number {
  return styles[style].size ?? usualSize;
}

/** A name longer than this on the plan, mm, is cut short; tables and panels show it whole. */
export const longestName = 40;

/** Height of the capitals of a style, mm. */
export function capOf(style: StyleName): number {
  return sizeOf(style) * capHeight;
}

type Side = readonly [anchor: "start" | "middle" | "end", right: number, up: number];

/** Up-right first, as a reader looks for a spot height; straight above and below last. */
const sides: readonly Side[] = [
  ["start", 1, 0.5],
  ["start", 1, -0.5],
  ["end", -1, 0.5],
  ["end", -1, -0.5],
  ["start", 1, 0],
  ["end", -1, 0],
  ["middle", 0, 1],
  ["middle", 0, -1],
];

/** One line of text at each of eight places round a symbol of `size` mm, clear of it. */
export function besidePoint(at: XY, text: string, style: StyleName, size: number): readonly LabelTexts[] {
  const cap = capOf(style);
  const reach = size / 2 + textMargin + 0.15;
  return sides.map(([anchor, right, up]) => {
    // Above, the baseline keeps clear of the symbol; below, the top of the capitals does; beside, half-way up.
    const baseline = Math.abs(up) === 1 ? (up > 0 ? reach + 0.3 * cap : -reach - cap) : up * cap - cap / 2;
    return [{ kind: "text", at, text, style, anchor, shift: [right * reach, baseline], halo: true }];
  });
}

/** Lines of text stacked about a place, centred. Styles may differ; `lead` is the line pitch over the size. */
export function stacked(
  at: XY,
  lines: readonly { readonly text: string; readonly style: StyleName }[],
  shift: XY = [0, 0],
  anchor: TextMark["anchor"] = "middle",
  lead = 1.25,
): LabelTexts {
  const pitches = lines.map((line) => sizeOf(line.style) * lead);
  const height = pitches.reduce((sum, pitch) => sum + pitch, 0);
  let top = shift[1] + height / 2;
  return lines.map((line, i) => {
    const pitch = pitches[i] ?? 0;
    const baseline = top - pitch / 2 - capOf(line.style) / 2;
    top -= pitch;
    return { kind: "text", at, ...line, anchor, shift: [shift[0], baseline], halo: true };
  });
}

/** Label places whose text tells a length of a thing (see `LengthTold`). */
export function telling(tells: LengthTold, places: readonly LabelTexts[]): readonly LabelTexts[] {
  return places.map((texts) => texts.map((text) => ({ ...text, tells })));
}

/** A text along a direction, centred at a place and `off` mm to the left (+) of the direction it reads in. */
export function along(at: XY, text: string, style: StyleName, angle: number, off = 0): LabelTexts {
  const shift: XY = [0, off - capOf(style) / 2];
  return [{ kind: "text", at, text, style, angle, anchor: "middle", shift, halo: true }];
}
