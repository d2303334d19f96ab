/** Heights written into contour lines: where the line is straightest, and the line broken under them. */
import { sizeOf } from "./beside";
import { capHeight, type DrawContext, onPaper, placeLabel, readable } from "./context";
import type { TextMark } from "./marks";
import type { StyleName } from "./styles";
import { textWidth } from "./text-width";

export interface LabelledContour {
  /** What is left of the line, flat x, y in plan metres. */
  readonly pieces: readonly Float64Array[];
  readonly labels: readonly TextMark[];
}

/** One height every so many mm of line. */
const spacing = 130;
/** Free line before and after the figures, mm. */
const gap = 0.9;
/** Chord over arc of a stretch that may carry a label. */
const straightEnough = 0.965;
/** What reading with the top uphill is worth against straightness. */
const uphillWorth = 0.012;
const mostTries = 10;

interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly x: number;
  readonly y: number;
  readonly angle: number;
  readonly score: number;
}

/** A line with distances along it, all in paper mm. */
interface Ruled {
  readonly points: Float64Array;
  readonly along: Float64Array;
  readonly length: number;
}

function rule(points: Float64Array): Ruled {
  const along = new Float64Array(points.length / 2);
  for (let i = 1; i < along.length; i++) {
    const step = Math.hypot(
      (points[2 * i] ?? 0) - (points[2 * i - 2] ?? 0),
      (points[2 * i + 1] ?? 0) - (points[2 * i - 1] ?? 0),
    );
    along[i] = (along[i - 1] ?? 0) + step;
  }
  return { points, along, length: along[along.length - 1] ?? 0 };
}

/** Index of the segment that holds a distance, by bisection. */
function segmentAt(along: Float64Array, distance: number): number {
  let low = 0;
  let high = along.length - 2;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if ((along[middle] ?? 0) <= distance) low = middle;
    else high = middle - 1;
  }
  return low;
}

function placeAt(line: Ruled, distance: number): [number, number] {
  const i = segmentAt(line.along, distance);
  const start = line.along[i] ?? 0;
  const t = (distance - start) / Math.max((line.along[i + 1] ?? 0) - start, 1e-12);
  const [x0 = 0, y0 = 0, x1 = 0, y1 = 0] = line.points.subarray(2 * i, 2 * i + 4);
  return [x0 + (x1 - x0) * t, y0 + (y1 - y0) * t];
}

export type Gradient = (x: number, y: number) => readonly [number, number] | null;

function judge(
  line: Ruled,
  from: number,
  width: number,
  { metresPerMm: scale, turn }: Pick<DrawContext, "metresPerMm" | "turn">,
  gradient: Gradient,
): Stretch | null {
  const [x0, y0] = placeAt(line, from);
  const [x1, y1] = placeAt(line, from + width);
  const straightness = Math.hypot(x1 - x0, y1 - y0) / width;
  if (straightness < straightEnough) return null;
  const [mx, my] = placeAt(line, from + width / 2);
  const [x, y] = [(x0 + x1 + 2 * mx) / 4, (y0 + y1 + 2 * my) / 4];
  // As it is read on the turned plan: its top may lie on the other side there.
  const angle = readable(Math.atan2(y1 - y0, x1 - x0) + turn) - turn;
  const rise = gradient(x * scale, y * scale);
  const topUphill = rise !== null && rise[1] * Math.cos(angle) - rise[0] * Math.sin(angle) > 0;
  return {
    from,
    to: from + width,
    x,
    y,
    angle,
    score: straightness + (topUphill ? uphillWorth : 0),
  };
}

/** Stretches of one part of the line that could carry the label, best first. */
function stretches(
  line: Ruled,
  part: readonly [number, number],
  width: number,
  judgeAt: (from: number) => Stretch | null,
) {
  const found: Stretch[] = [];
  const last = Math.min(part[1], line.length) - width;
  for (let from = part[0]; from <= last; from += width / 2) {
    const stretch = judgeAt(from);
    if (stretch) found.push(stretch);
  }
  return found.sort((a, b) => b.score - a.score).slice(0, mostTries);
}

function cutOut(
  points: ArrayLike<number>,
  line: Ruled,
  gaps: readonly Stretch[],
  scale: number,
): Float64Array[] {
  const pieces: Float64Array[] = [];
  const cuts = [...gaps].sort((a, b) => a.from - b.from);
  let from = 0;
  for (const cut of [
    ...cuts.map((one) => [one.from, one.to] as const),
    [line.length, line.length] as const,
  ]) {
    if (cut[0] - from > 1e-9) pieces.push(stretchOf(points, line, from, cut[0], scale));
    from = cut[1];
  }
  return pieces;
}

/** The part of a line between two distances, in plan metres. */
function stretchOf(
  points: ArrayLike<number>,
  line: Ruled,
  from: number,
  to: number,
  scale: number,
): Float64Array {
  const [x0, y0] = placeAt(line, from);
  const flat = [x0 * scale, y0 * scale];
  for (let i = segmentAt(line.along, from) + 1; i < line.along.length && (line.along[i] ?? 0) < to; i++) {
    flat.push(points[2 * i] ?? 0, points[2 * i + 1] ?? 0);
  }
  const [x1, y1] = placeAt(line, to);
  flat.push(x1 * scale, y1 * scale);
  return Float64Array.from(flat);
}

/**
 * Writes a height into a contour line, once every so often, and breaks the line there.
 *
 * Method  candidate stretches are as long as the text; the straightest that is free wins, with a preference for
 *         those where the text, readable from below or from the right, has its top uphill.
 * Limits  a line shorter than about two labels stays bare.
 */
export function labelContour(
  points: Float64Array,
  label: { readonly text: string; readonly style: StyleName; readonly group: string },
  context: DrawContext,
  gradient: Gradient,
): LabelledContour {
  const scale = context.metresPerMm;
  const size = sizeOf(label.style);
  const width = textWidth(label.text, size) + 2 * gap;
  const line = rule(onPaper(points, scale));
  if (line.length < 2.2 * width) return { pieces: [points], labels: [] };
  const parts = Math.max(1, Math.round(line.length / spacing));
  const used: Stretch[] = [];
  const labels: TextMark[] = [];
  for (let part = 0; part < parts; part++) {
    const ends = [(line.length * part) / parts, (line.length * (part + 1)) / parts] as const;
    const candidates = stretches(line, ends, width, (from) => judge(line, from, width, context, gradient));
    const texts = candidates.map((one): readonly TextMark[] => [
      {
        kind: "text",
        at: [one.x * scale, one.y * scale],
        text: label.text,
        style: label.style,
        angle: one.angle,
        anchor: "middle",
        shift: [0, (-capHeight * size) / 2],
        halo: true,
        rank: 3,
      },
    ]);
    const chosen = placeLabel(context, label.group, texts);
    const stretch = candidates[texts.indexOf(chosen)];
    if (!stretch) continue;
    used.push(stretch);
    labels.push(...chosen);
  }
  return { pieces: cutOut(points, line, used, scale), labels };
}
