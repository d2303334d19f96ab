/**
 * Limits of the floor that have no formula: floors are tried.
 *
 * Units   metres.
 * Method  A rule's margin (0 or more: kept) is read at even floors. Between two of which one keeps the rule and the
 *         other doesn't, the turn is closed in by the secant and by halving in turn, and the kept side taken. What is
 *         kept or broken only between two neighbouring floors looked at isn't seen.
 * Source  First principles.
 */
import type { BandRule, HeightSpan } from "./results";

/** A rule at one floor: by how much it is kept, and the place that decides. */
export interface Reading {
  readonly margin: number;
  readonly place: string;
  readonly at?: readonly [number, number];
}

export type Searched = Pick<BandRule, "kind" | "height" | "heights" | "atAnyFloor">;

/** Floors looked at, both ends among them. */
const looks = 17;
/** Far finer than any floor is built, m. */
const closeness = 1e-7;
const slack = 1e-9;

/**
 * What floors between low and high keep a margin. `usual` is the kind where the floor doesn't decide; `closer` reads
 * the margin more closely, for the turns only.
 */
export function searched(
  margin: (floor: number) => number,
  low: number,
  high: number,
  usual: BandRule["kind"],
  closer = margin,
): Searched {
  const floors = Array.from({ length: looks }, (_, i) => low + ((high - low) * i) / (looks - 1));
  const margins = floors.map(margin);
  const kept = margins.map(keeps);
  if (!kept.includes(false)) return { kind: usual, height: null, atAnyFloor: "kept" };
  if (!kept.includes(true)) return { kind: usual, height: null, atAnyFloor: "broken" };
  const spans: [number | null, number | null][] = [];
  kept.forEach((now, i) => {
    const before = i === 0 ? false : (kept[i - 1] as boolean);
    if (now && !before) spans.push([i === 0 ? null : turn(i), null]);
    if (!now && before) (spans[spans.length - 1] as [number | null, number | null])[1] = turn(i);
  });
  return asRule(spans);

  function turn(i: number): number {
    const [a, b] = [floors[i - 1] as number, floors[i] as number];
    if (closer !== margin) {
      const ends = [closer(a), closer(b)] as const;
      if (keeps(ends[0]) !== keeps(ends[1])) return turnBetween(closer, a, b, ends);
    }
    return turnBetween(margin, a, b, [margins[i - 1] as number, margins[i] as number]);
  }
}

function asRule(spans: readonly HeightSpan[]): Searched {
  const [only] = spans;
  if (spans.length === 1 && only && only[1] === null) return { kind: "notBelow", height: only[0] };
  if (spans.length === 1 && only && only[0] === null) return { kind: "notAbove", height: only[1] };
  return { kind: "within", height: null, heights: spans };
}

/** The last floor that keeps the margin between two of which just one does. */
function turnBetween(
  margin: (floor: number) => number,
  a: number,
  b: number,
  [atA, atB]: readonly [number, number],
): number {
  const keptFirst = keeps(atA);
  let [kept, broken] = keptFirst ? [a, b] : [b, a];
  let [keptMargin, brokenMargin] = keptFirst ? [atA, atB] : [atB, atA];
  for (let round = 0; Math.abs(broken - kept) > closeness; round++) {
    const secant = kept + ((broken - kept) * keptMargin) / (keptMargin - brokenMargin);
    // The secant alone may creep along a bend; a step beyond it closes the other side.
    const beyond = secant + Math.sign(broken - kept) * closeness * 0.5;
    const next = round % 2 === 1 || !inside(beyond, kept, broken) ? (kept + broken) / 2 : beyond;
    const m = margin(next);
    if (keeps(m)) [kept, keptMargin] = [next, m];
    else [broken, brokenMargin] = [next, m];
  }
  return kept;
}

const keeps = (margin: number) => margin >= -slack;

function inside(value: number, a: number, b: number): boolean {
  return value > Math.min(a, b) && value < Math.max(a, b);
}
