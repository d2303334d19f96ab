/** A text at the end of a thin line that leads to what it tells, for where it has no room beside that. */
import { capOf } from "./beside";
import { type DrawContext, type LabelTexts, seenWay } from "./context";
import type { DrawingMark, XY } from "./marks";
import type { StyleName } from "./styles";

/** Lengths of a leader, mm, and directions tried, turned from the first, radians. */
const lengths = [5, 7.5, 10, 13, 17, 22];
const turns = [0, 0.5, -0.5, 1, -1, 1.5, -1.5, 2.1, -2.1, 2.7, -2.7];
/** Free paper between the line's end and the text, mm. */
const gap = 0.8;

/** One place of such a text. */
export interface Led {
  readonly texts: LabelTexts;
  /** The line's end by the text, mm right and up of the place as seen. */
  readonly end: XY;
}

/** Places about `at`, the shortest lines first, none shorter than `least` mm or longer than `most`; `out` is the direction on the plan that is tried first, radians. */
export function ledPlaces(
  at: XY,
  out: number,
  label: { readonly text: string; readonly style: StyleName },
  context: DrawContext,
  { least = 0, most = Infinity }: { readonly least?: number; readonly most?: number } = {},
): readonly Led[] {
  return lengths
    .filter((length) => length >= least && length <= most)
    .flatMap((length) =>
      turns.map((turn): Led => {
        const [right, up] = seenWay(out + turn, context.turn);
        const end: XY = [right * length, up * length];
        const anchor = end[0] < 0 ? "end" : "start";
        const shift: XY = [end[0] + (end[0] < 0 ? -gap : gap), end[1] - capOf(label.style) / 2];
        return { texts: [{ kind: "text", at, ...label, anchor, shift, halo: true }], end };
      }),
    );
}

/** The line from `from` mm off the place to the text. */
export function leaderLine(
  at: XY,
  { end }: Led,
  from: number,
  style: StyleName,
  { turn, metresPerMm }: DrawContext,
): DrawingMark {
  const length = Math.hypot(...end);
  const [c, s] = [Math.cos(turn) * metresPerMm, Math.sin(turn) * metresPerMm];
  const to = (share: number) =>
    [at[0] + share * (end[0] * c + end[1] * s), at[1] + share * (end[1] * c - end[0] * s)] as const;
  return { kind: "line", points: [...to(from / length), ...to(1)], style };
}
