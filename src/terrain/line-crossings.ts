/**
 * Where breaklines cross one another between their ends.
 *
 * Method  On the snapped grid: crossing pairs are found by exact predicates, the crossing is rounded to the
 *         grid and both pieces go through it; what that bends is looked at again until nothing crosses.
 * Source  First principles.
 */
import { crossingShares, type Point, turn } from "../geometry";

/** A straight piece of a breakline between two places (by index). */
export interface LinePiece {
  readonly from: number;
  readonly to: number;
  /** Index of the breakline. */
  readonly line: number;
}

/** Places that pieces run between; crossings are appended. */
export interface LinePlaces {
  /** Grid units, x0, y0, x1, y1, ... */
  readonly units: number[];
  readonly z: number[];
  /** 1 where the height was given with the line or measured, 0 where it was read off the points' surface. */
  readonly given: number[];
}

/** A crossing of two lines: its place and what each line says of the height there. */
export interface Crossing {
  readonly place: number;
  readonly lines: readonly [number, number];
  readonly heights: readonly [number, number];
}

/**
 * Splits pieces that cross; afterwards none do, other than at their ends. A given height goes before one that was read
 * off; between two of a kind the mean is taken.
 */
export function splitAtCrossings(
  places: LinePlaces,
  pieces: readonly LinePiece[],
): { pieces: LinePiece[]; crossings: Crossing[] } {
  const crossings: Crossing[] = [];
  let current = [...pieces];
  for (;;) {
    const cuts = new Map<number, number[]>();
    forEachCrossingPair(places, current, (i, j) => {
      const place = addCrossing(places, current[i] as LinePiece, current[j] as LinePiece, crossings);
      cuts.set(i, [...(cuts.get(i) ?? []), place]);
      cuts.set(j, [...(cuts.get(j) ?? []), place]);
    });
    if (cuts.size === 0) return { pieces: current, crossings };
    current = current.flatMap((piece, i) => cutPiece(places, piece, cuts.get(i) ?? []));
  }
}

function addCrossing(places: LinePlaces, one: LinePiece, other: LinePiece, crossings: Crossing[]): number {
  const shares = crossingShares(...endsOf(places, one), ...endsOf(places, other));
  if (!shares) throw new Error(`lines ${one.line} and ${other.line} cross and are parallel`);
  const [a, b] = endsOf(places, one);
  const heights = [heightAt(places, one, shares[0]), heightAt(places, other, shares[1])] as const;
  const given = [isGiven(places, one), isGiven(places, other)] as const;
  const place = places.z.length;
  places.units.push(
    Math.round(a[0] + shares[0] * (b[0] - a[0])),
    Math.round(a[1] + shares[0] * (b[1] - a[1])),
  );
  places.z.push(given[0] === given[1] ? (heights[0] + heights[1]) / 2 : heights[given[0] ? 0 : 1]);
  places.given.push(given[0] || given[1] ? 1 : 0);
  if (given[0] && given[1]) crossings.push({ place, lines: [one.line, other.line], heights });
  return place;
}

function heightAt({ z }: LinePlaces, { from, to }: LinePiece, share: number): number {
  return (z[from] as number) + share * ((z[to] as number) - (z[from] as number));
}

function isGiven({ given }: LinePlaces, { from, to }: LinePiece): boolean {
  return given[from] === 1 && given[to] === 1;
}

function endsOf({ units }: LinePlaces, { from, to }: LinePiece): [Point, Point] {
  return [
    [units[2 * from] as number, units[2 * from + 1] as number],
    [units[2 * to] as number, units[2 * to + 1] as number],
  ];
}

/** The piece through the given places, in their order along it; places on its ends change nothing. */
function cutPiece(places: LinePlaces, piece: LinePiece, through: readonly number[]): LinePiece[] {
  if (through.length === 0) return [piece];
  const [a, b] = endsOf(places, piece);
  const along = (place: number) =>
    ((places.units[2 * place] as number) - a[0]) * (b[0] - a[0]) +
    ((places.units[2 * place + 1] as number) - a[1]) * (b[1] - a[1]);
  const way = [piece.from, ...[...through].sort((p, q) => along(p) - along(q)), piece.to];
  const parts: LinePiece[] = [];
  for (let i = 1; i < way.length; i++) {
    const from = way[i - 1] as number;
    const to = way[i] as number;
    if (!samePlace(places, from, to)) parts.push({ from, to, line: piece.line });
    else if (i === way.length - 1 && parts.length > 0) parts.push({ ...(parts.pop() as LinePiece), to });
    else way[i] = from;
  }
  return parts;
}

function samePlace({ units }: LinePlaces, a: number, b: number): boolean {
  return units[2 * a] === units[2 * b] && units[2 * a + 1] === units[2 * b + 1];
}

/** Visits the pairs of pieces that cross between their ends. Method: a sweep over their boxes from west to east. */
function forEachCrossingPair(
  places: LinePlaces,
  pieces: readonly LinePiece[],
  visit: (one: number, other: number) => void,
): void {
  const ends = pieces.map((piece) => endsOf(places, piece));
  const west = Float64Array.from(ends, ([a, b]) => Math.min(a[0], b[0]));
  const east = Float64Array.from(ends, ([a, b]) => Math.max(a[0], b[0]));
  const south = Float64Array.from(ends, ([a, b]) => Math.min(a[1], b[1]));
  const north = Float64Array.from(ends, ([a, b]) => Math.max(a[1], b[1]));
  const order = pieces.map((_, i) => i).sort((i, j) => (west[i] as number) - (west[j] as number));
  const open: number[] = [];
  for (const i of order) {
    const [from, low, high] = [west[i] as number, south[i] as number, north[i] as number];
    let kept = 0;
    for (const j of open) {
      if ((east[j] as number) < from) continue;
      open[kept++] = j;
      if ((south[j] as number) > high || (north[j] as number) < low) continue;
      if (cross(ends[j] as [Point, Point], ends[i] as [Point, Point])) visit(j, i);
    }
    open.length = kept;
    open.push(i);
  }
}

/** Whether two pieces cross at a place that is an end of neither. Exact. */
function cross([a, b]: readonly [Point, Point], [c, d]: readonly [Point, Point]): boolean {
  if (Math.max(a[1], b[1]) < Math.min(c[1], d[1]) || Math.max(c[1], d[1]) < Math.min(a[1], b[1]))
    return false;
  const abc = turn(a[0], a[1], b[0], b[1], c[0], c[1]);
  const abd = turn(a[0], a[1], b[0], b[1], d[0], d[1]);
  if (!(abc < 0 ? abd > 0 : abc > 0 && abd < 0)) return false;
  const cda = turn(c[0], c[1], d[0], d[1], a[0], a[1]);
  const cdb = turn(c[0], c[1], d[0], d[1], b[0], b[1]);
  return cda < 0 ? cdb > 0 : cda > 0 && cdb < 0;
}
