/** A text at the end of a thin line that leads to what it tells, for where it has no room beside that. */
import { capOf } from "./beside";
import { type DrawContext, type LabelTexts, type Must, onPaper, placeLabel, seenWay } from "./context";
import type { DrawingMark, LineMark, XY } from "./marks";
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

interface LeaderRoom {
  readonly least?: number;
  readonly most?: number;
  readonly spread?: number;
}

/** Places about `at`, the shortest lines first, none shorter than `least` mm or longer than `most`, none turned farther than `spread` from `out`; `out` is the direction on the plan that is tried first, radians. */
export function ledPlaces(
  at: XY,
  out: number,
  label: { readonly text: string; readonly style: StyleName },
  context: DrawContext,
  { least = 0, most = Infinity, spread = Infinity }: LeaderRoom = {},
): readonly Led[] {
  return lengths
    .filter((length) => length >= least && length <= most)
    .flatMap((length) =>
      turns
        .filter((turn) => Math.abs(turn) <= spread)
        .map((turn): Led => {
          const [right, up] = seenWay(out + turn, context.turn);
          const end: XY = [right * length, up * length];
          const anchor = end[0] < 0 ? "end" : "start";
          const shift: XY = [end[0] + (end[0] < 0 ? -gap : gap), end[1] - capOf(label.style) / 2];
          return { texts: [{ kind: "text", at, ...label, anchor, shift, halo: true }], end };
        }),
    );
}

/** How broad a leader is taken to be, mm, and what it may cross: rather no lot line and no wall, and never a text. */
const leaderWidth = 0.3;
const leaderCrosses = ["lines", "firm-lines"] as const;
/** The square that a sign takes reaches so much farther out at its corners than at its sides. */
const toCorner = Math.SQRT2;

interface Leading {
  /** Where the line begins, mm off the place. */
  readonly from?: number;
  readonly style: StyleName;
  readonly over: Must;
  /** Asked of free places alone. */
  readonly allows?: (texts: LabelTexts) => boolean;
}

/**
 * Puts a text to the first free of its places and leads a line there, which other texts keep off from then on. On the
 * screen a line that could only run through another text isn't drawn, nor its text; on paper the text must be told.
 */
export function placeLed(
  context: DrawContext,
  group: string,
  at: XY,
  led: readonly Led[],
  { from = 0, style, over, allows = () => true }: Leading,
): readonly DrawingMark[] {
  const { labels, metresPerMm } = context;
  const line = (one: Led, start: number) => leaderLine(at, one, start, style, context);
  const onSheet = (one: Led) => onPaper(line(one, from * toCorner).points, metresPerMm);
  const byTexts = new Map(led.map((one) => [one.texts, one]));
  const candidates = led.map(({ texts }) => texts);
  const rounds = context.medium === "paper" ? [...leaderCrosses, null] : leaderCrosses;
  for (const crosses of rounds) {
    const label = placeLabel(context, group, candidates, over, (texts) => {
      const one = byTexts.get(texts);
      if (!one || !allows(texts)) return false;
      return crosses === null || labels.lineFits(onSheet(one), leaderWidth, crosses);
    });
    const chosen = byTexts.get(label);
    if (!chosen) continue;
    labels.takeLine(group, onSheet(chosen), leaderWidth);
    return [line(chosen, from), ...label];
  }
  return [];
}

/** The line from `from` mm off the place to the text. */
function leaderLine(
  at: XY,
  { end }: Led,
  from: number,
  style: StyleName,
  { turn, metresPerMm }: DrawContext,
): LineMark {
  const length = Math.hypot(...end);
  const [c, s] = [Math.cos(turn) * metresPerMm, Math.sin(turn) * metresPerMm];
  const to = (share: number) =>
    [at[0] + share * (end[0] * c + end[1] * s), at[1] + share * (end[1] * c - end[0] * s)] as const;
  return { kind: "line", points: [...to(from / length), ...to(1)], style };
}
