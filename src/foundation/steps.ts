/**
 * A footing that steps down where a level one would lack cover.
 *
 * Units   metres; positions run along the walls from the first corner, round and back to it.
 * Method  At each place the footing needs k = ⌈(level bottom − bottom asked for) / rise⌉ steps down. A piece of
 *         level j must be at least a least run long, each level reaches a least run beyond the next deeper one, and
 *         gaps shorter than that are dug through: so the trench is nowhere higher than asked for, neighbours differ
 *         by one rise, and every tread has its run.
 * Source  First principles. IRC R403.1.5 (2012) asks for steps where the bottom would slope more than 1 in 10. Overlap:
 *         NHBC Standards 4.3 (greatest of twice the step, the footing's thickness up to 500 mm, 300 mm).
 */

export interface StepDemand {
  /** Length of all walls together. */
  readonly round: number;
  /** Positions from 0 to `round`, rising. */
  readonly at: ArrayLike<number>;
  /** The bottom must not lie above this; NaN: nothing is asked there. */
  readonly asked: ArrayLike<number>;
}

export interface StepPiece {
  readonly from: number;
  readonly to: number;
  /** Steps down from the level footing. */
  readonly level: number;
}

/** From ≤ to; `to` may lie past the end of the round. */
type Span = readonly [from: number, to: number];

/** Heights that differ by less are the same. */
const hair = 1e-9;
/** More steps than this are a slip of a figure. */
const mostLevels = 60;

/** Pieces from 0 to the round's end, in order, each differing from the next by one step. */
export function stepPieces(
  { round, at, asked }: StepDemand,
  levelBottom: number,
  { rise, leastRun }: { readonly rise: number; readonly leastRun: number },
): StepPiece[] {
  const needs = Array.from(asked, (height) =>
    height < levelBottom ? Math.min(mostLevels, Math.ceil((levelBottom - height) / rise - hair)) : 0,
  );
  const deepest = needs.reduce((a, b) => Math.max(a, b), 0);
  const reach: Span[][] = [];
  let below: Span[] = [];
  for (let level = deepest; level >= 1; level--) {
    const wanted = stretches(at, needs, level);
    const spans = joined([...wanted, ...widened(below, leastRun)], leastRun, round);
    const long = spans.map(
      ([a, b]): Span => (b - a < leastRun ? grow(a, b, (leastRun - b + a) / 2) : [a, b]),
    );
    below = joined(long, leastRun, round);
    reach[level] = below;
  }
  return pieces(reach, deepest, round);
}

/** Overlap of the upper footing over the lower. */
export function stepOverlap(rise: number, footingThickness: number, typed: number | null): number {
  return typed ?? Math.max(2 * rise, Math.min(footingThickness, 0.5), 0.3);
}

/** Where one of the two ends of a stretch between stations needs this level. */
function stretches(at: ArrayLike<number>, needs: readonly number[], level: number): Span[] {
  const spans: Span[] = [];
  for (let i = 1; i < needs.length; i++) {
    const [from, to] = [at[i - 1] as number, at[i] as number];
    if (to > from && Math.max(needs[i - 1] as number, needs[i] as number) >= level) spans.push([from, to]);
  }
  return spans;
}

function grow(from: number, to: number, by: number): Span {
  return [from - by, to + by];
}

function widened(spans: readonly Span[], by: number): Span[] {
  return spans.map(([a, b]) => grow(a, b, by));
}

/** Spans on the round put together where less than `gap` parts them. */
function joined(spans: readonly Span[], gap: number, round: number): Span[] {
  if (spans.some(([a, b]) => b - a >= round - gap)) return [[0, round]];
  const placed = spans
    .map(([a, b]): Span => {
      const turn = Math.floor(a / round) * round;
      return [a - turn, b - turn];
    })
    .sort((one, other) => one[0] - other[0]);
  const out: [number, number][] = [];
  for (const [a, b] of placed) {
    const last = out[out.length - 1];
    if (last && a <= last[1] + gap - hair) last[1] = Math.max(last[1], b);
    else out.push([a, b]);
  }
  while (out.length > 1) {
    const [first, last] = [out[0] as [number, number], out[out.length - 1] as [number, number]];
    if (first[0] + round > last[1] + gap - hair) break;
    last[1] = Math.max(last[1], first[1] + round);
    out.shift();
  }
  const [only] = out;
  if (only && out.length === 1 && only[1] - only[0] >= round - gap) return [[0, round]];
  return out;
}

function pieces(reach: readonly (readonly Span[])[], deepest: number, round: number): StepPiece[] {
  const cuts = new Set([0, round]);
  for (const spans of reach)
    for (const span of spans ?? []) for (const end of span) cuts.add(end > round ? end - round : end);
  const sorted = [...cuts].sort((a, b) => a - b);
  const out: { from: number; to: number; level: number }[] = [];
  for (let i = 1; i < sorted.length; i++) {
    const [from, to] = [sorted[i - 1] as number, sorted[i] as number];
    if (to - from < hair) continue;
    const level = levelAt((from + to) / 2, reach, deepest, round);
    const last = out[out.length - 1];
    if (last && last.level === level) last.to = to;
    else out.push({ from: last ? last.to : 0, to, level });
  }
  return out;
}

function levelAt(
  position: number,
  reach: readonly (readonly Span[])[],
  deepest: number,
  round: number,
): number {
  for (let level = deepest; level >= 1; level--) {
    const inside = (reach[level] ?? []).some(
      ([a, b]) => (position >= a && position <= b) || (position + round >= a && position + round <= b),
    );
    if (inside) return level;
  }
  return 0;
}
