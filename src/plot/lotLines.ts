/**
 * The lot's lines as a person counts them: a curve of the deed is one line, though it is drawn by many chords.
 *
 * Units   metres; piece i of the outline runs from its corner i to the next.
 * Method  a curve is known again by the places along it, so it stays one line while corners elsewhere are moved; where one of
 *         its own places was moved, its chords are lines like others.
 */
import type { Lot, Point } from "../document/schema";
import { deedOutline } from "./document";
import type { Crossing, SetbackLine } from "./setbacks";

export interface LotLine {
  /** First of its pieces, and how many they are; they may go on past the last corner of the outline. */
  readonly first: number;
  readonly pieces: number;
  /** Null for a straight line. */
  readonly curve: { readonly radius: number; readonly length: number } | null;
}

/** Places nearer than this are the same, m. */
const SAME = 1e-6;

export function lotLines(lot: Pick<Lot, "outline" | "deed" | "north">): LotLine[] {
  const count = lot.outline.length;
  const curves = new Map(curvesOf(lot).map((line) => [line.first, line]));
  const inCurve = new Set(
    [...curves.values()].flatMap(({ first, pieces }) =>
      Array.from({ length: pieces }, (_, i) => (first + i) % count),
    ),
  );
  return lot.outline.flatMap((_, piece): LotLine[] => {
    const curve = curves.get(piece);
    if (curve) return [curve];
    return inCurve.has(piece) ? [] : [{ first: piece, pieces: 1, curve: null }];
  });
}

function curvesOf({ outline, deed, north }: Pick<Lot, "outline" | "deed" | "north">): LotLine[] {
  const drawn = deed === null || outline.length < 3 ? null : deedOutline(deed, north);
  if (deed === null || drawn === null) return [];
  return deed.courses.flatMap(({ curve, distance }, i): LotLine[] => {
    const along = drawn.lines[i]?.slice(1) ?? [];
    if (curve === null || along.length === 0) return [];
    const at = outline.findIndex((_, k) =>
      along.every((place, j) => isSame(place, outline[(k + j) % outline.length])),
    );
    if (at < 0) return [];
    const first = (at - 1 + outline.length) % outline.length;
    return [{ first, pieces: along.length + 1, curve: { radius: curve.radius.m, length: distance.m } }];
  });
}

function isSame(one: Readonly<Point>, other: Readonly<Point> | undefined): boolean {
  return other !== undefined && Math.hypot(one[0] - other[0], one[1] - other[1]) < SAME;
}

/** Pieces of a line, by their numbers in the outline. */
export function piecesOf({ first, pieces }: LotLine, corners: number): number[] {
  return Array.from({ length: pieces }, (_, i) => (first + i) % corners);
}

/** Which line a piece belongs to, counted from 0. */
export function lineOfPiece(lines: readonly LotLine[], piece: number, corners: number): number {
  return lines.findIndex((line) => piecesOf(line, corners).includes(piece));
}

/** The worst crossing of each thing with each line, in the order in which they were found. */
export function crossingsByLine(
  crossings: readonly Crossing[],
  lines: readonly LotLine[],
  corners: number,
): Crossing[] {
  const worst = new Map<string, Crossing>();
  for (const crossing of crossings) {
    const key = `${lineOfPiece(lines, crossing.line, corners)} ${crossing.thing}`;
    const before = worst.get(key);
    if (before === undefined || crossing.by > before.by) worst.set(key, crossing);
  }
  return [...worst.values()];
}

/** Runs along the chords of one curve joined where they meet; `line` is then the curve's first piece. */
export function setbacksByLine(
  setbacks: readonly SetbackLine[],
  lines: readonly LotLine[],
  corners: number,
): SetbackLine[] {
  const joined: SetbackLine[] = [];
  for (const line of lines) {
    const own = piecesOf(line, corners).flatMap((piece) => setbacks.filter((each) => each.line === piece));
    for (const setback of own) {
      const before = joined.at(-1);
      if (before && before.line === line.first && before.distance === setback.distance)
        joined[joined.length - 1] = { ...before, runs: joinedRuns(before.runs, setback.runs) };
      else joined.push(before?.line === line.first ? setback : { ...setback, line: line.first });
    }
  }
  return joined;
}

/** Runs are found to within about a millimetre at their ends. */
const MEETS = 0.005;

function joinedRuns(before: SetbackLine["runs"], after: SetbackLine["runs"]): SetbackLine["runs"] {
  const [last, next] = [before.at(-1), after[0]];
  const [end, start] = [last?.at(-1), next?.[0]];
  if (!last || !next || !end || !start || Math.hypot(end[0] - start[0], end[1] - start[1]) > MEETS)
    return [...before, ...after];
  return [...before.slice(0, -1), [...last, ...next.slice(1)], ...after.slice(1)];
}
