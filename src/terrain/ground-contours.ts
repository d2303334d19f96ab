/** Contours of the existing ground, measured and guessed parts apart. */
import type { Ground } from "./ground";
import { type ContourLines, type TracedLine, tracedContours } from "./tin-contours";

export interface GroundContours {
  readonly measured: ContourLines;
  readonly guessed: ContourLines;
}

/** Contours at each level; where a line passes between measured and guessed ground it is cut in two. */
export function groundContours(
  ground: Pick<Ground, "tin" | "guessed">,
  levels: readonly number[],
): GroundContours[] {
  return tracedContours(ground.tin, levels).map((lines) => {
    const split: GroundContours = { measured: [], guessed: [] };
    for (const line of lines) splitLine(line, ground.guessed, split);
    return split;
  });
}

function splitLine({ points, triangles }: TracedLine, guessed: Uint8Array, into: GroundContours): void {
  const pieces = triangles.length;
  const kind = (piece: number) => guessed[triangles[piece % pieces] as number] as number;
  const first = firstChange(points, pieces, kind);
  let start = first;
  for (let piece = first; piece < first + pieces; piece++) {
    const ends = piece === first + pieces - 1 || kind(piece + 1) !== kind(piece);
    if (!ends) continue;
    (kind(piece) ? into.guessed : into.measured).push(stretch(points, pieces, start, piece + 1));
    start = piece + 1;
  }
}

/** Where to begin: a closed line at its first change of kind, so that no stretch is cut at its start. */
function firstChange(points: Float64Array, pieces: number, kind: (piece: number) => number): number {
  const closed = points[0] === points[2 * pieces] && points[1] === points[2 * pieces + 1];
  if (!closed) return 0;
  for (let piece = 1; piece < pieces; piece++) if (kind(piece) !== kind(piece - 1)) return piece;
  return 0;
}

/** Places `from` to `to` of a line; past the end a closed line goes on from its start. */
function stretch(points: Float64Array, pieces: number, from: number, to: number): Float64Array {
  if (to <= pieces) return points.slice(2 * from, 2 * to + 2);
  if (from >= pieces) return points.slice(2 * (from - pieces), 2 * (to - pieces) + 2);
  const whole = new Float64Array(2 * (to - from) + 2);
  whole.set(points.subarray(2 * from, 2 * pieces));
  whole.set(points.subarray(0, 2 * (to - pieces) + 2), 2 * (pieces - from));
  return whole;
}
