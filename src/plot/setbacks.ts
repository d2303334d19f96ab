/**
 * Setbacks: how far from each piece of lot line nothing may be built, and what does cross.
 *
 * Units   metres.
 * Method  The setback line of a piece is every place at that distance inside it: a parallel, and an arc round a corner
 *         that points into the lot; kept where no other piece's setback asks for more. A thing crosses where it comes
 *         nearer to a piece than its setback, or leaves the lot.
 * Source  first principles. Codes measure from the wall, the eaves or the steps: which, the local office says.
 */
import {
  containsPoint,
  counterClockwise,
  distanceToSegment,
  type Point,
  pointAlong,
  segmentsMeet,
} from "../geometry";

export interface LineSetback {
  /** Piece i runs from corner i of the lot to the next. */
  readonly line: number;
  readonly distance: number;
}

export interface SetbackLine extends LineSetback {
  /** Runs of the line that count. */
  readonly runs: readonly (readonly Point[])[];
}

export interface Crossing extends LineSetback {
  readonly thing: string;
  /** How far it stands in the setback; more than the setback itself where it leaves the lot. */
  readonly by: number;
  /** Its nearest place to the line. */
  readonly at: Point;
}

/** A thing that may not stand in a setback: a closed outline, or a line. */
export interface Standing {
  readonly name: string;
  readonly points: readonly Point[];
  readonly closed: boolean;
}

/** Runs are followed in steps of about this, and their ends found within a thousandth of it, m. */
const STEP = 0.5;
const MOST_STEPS = 4000;
const ROUNDING = 1e-6;

export function setbackLines(outline: readonly Point[], setbacks: readonly LineSetback[]): SetbackLine[] {
  const wanted = widest(outline, setbacks);
  return wanted.map((setback) => ({ ...setback, runs: runsOf(setback, outline, wanted) }));
}

/** Of two setbacks on one piece the greater counts; those on pieces that aren't there are left out. */
function widest(outline: readonly Point[], setbacks: readonly LineSetback[]): LineSetback[] {
  const most = new Map<number, LineSetback>();
  for (const { line, distance } of setbacks) {
    if (line >= outline.length || !(distance > 0)) continue;
    if (distance > (most.get(line)?.distance ?? 0)) most.set(line, { line, distance });
  }
  return [...most.values()].sort((a, b) => a.line - b.line);
}

function runsOf(setback: LineSetback, outline: readonly Point[], wanted: readonly LineSetback[]): Point[][] {
  const path = parallelWithArcs(setback, outline);
  const length = path
    .slice(1)
    .reduce((sum, p, i) => sum + Math.hypot(p[0] - (path[i]?.[0] ?? 0), p[1] - (path[i]?.[1] ?? 0)), 0);
  const steps = Math.min(MOST_STEPS, Math.max(2, Math.ceil(length / STEP)));
  const place = (share: number) => pointAlong(path, share * length).at;
  const counts = (p: Point) =>
    containsPoint(outline, p[0], p[1]) &&
    wanted.every(({ line, distance }) => toPiece(outline, line, p) >= distance - ROUNDING);
  const runs: Point[][] = [];
  let run: Point[] | null = null;
  let before = false;
  for (let i = 0; i <= steps; i++) {
    const now = counts(place(i / steps));
    if (now !== before && i > 0) {
      const edge = place(edgeBetween((i - 1) / steps, i / steps, before, (share) => counts(place(share))));
      if (now) run = [edge];
      else if (run) {
        run.push(edge);
        runs.push(run);
        run = null;
      }
    }
    if (now) run = [...(run ?? []), place(i / steps)];
    before = now;
  }
  if (run) runs.push(run);
  return runs.map(straightened);
}

function edgeBetween(from: number, to: number, before: boolean, counts: (share: number) => boolean): number {
  let [low, high] = [from, to];
  for (let i = 0; i < 30; i++) {
    const middle = (low + high) / 2;
    if (counts(middle) === before) low = middle;
    else high = middle;
  }
  return before ? low : high;
}

/** Places on a straight way between their neighbours say nothing. */
function straightened(run: readonly Point[]): Point[] {
  return run.filter((p, i) => {
    const [a, b] = [run[i - 1], run[i + 1]];
    return !a || !b || distanceToSegment(a, b, p[0], p[1]) > 1e-9;
  });
}

/** The parallel inside a piece; past its ends a quarter turn about the corner, for corners that point into the lot. */
function parallelWithArcs({ line, distance }: LineSetback, outline: readonly Point[]): Point[] {
  const inwards = counterClockwise(outline) === outline ? 1 : -1;
  const [a, b] = pieceOf(outline, line);
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]) || 1;
  const [nx, ny] = [(-inwards * (b[1] - a[1])) / length, (inwards * (b[0] - a[0])) / length];
  const round = (centre: Point, from: number, to: number): Point[] =>
    Array.from({ length: 19 }, (_, i): Point => {
      const angle = from + ((to - from) * i) / 18;
      return [
        centre[0] + distance * (nx * Math.cos(angle) - ny * Math.sin(angle)),
        centre[1] + distance * (nx * Math.sin(angle) + ny * Math.cos(angle)),
      ];
    });
  const quarter = (inwards * Math.PI) / 2;
  return [...round(a, quarter, 0), ...round(b, 0, -quarter)];
}

function pieceOf(outline: readonly Point[], line: number): readonly [Point, Point] {
  return [outline[line] as Point, outline[(line + 1) % outline.length] as Point];
}

function toPiece(outline: readonly Point[], line: number, [x, y]: Point): number {
  const [a, b] = pieceOf(outline, line);
  return distanceToSegment(a, b, x, y);
}

/** What stands in a setback or leaves the lot; the worst of each thing and piece. Things far within are not mentioned. */
export function setbackCrossings(
  outline: readonly Point[],
  setbacks: readonly LineSetback[],
  things: readonly Standing[],
): Crossing[] {
  if (outline.length < 3) return [];
  const wanted = widest(outline, setbacks);
  return things.flatMap((thing) =>
    wanted.flatMap((setback): Crossing[] => {
      const nearest = nearestPlace(thing, setback.line, outline);
      if (nearest === null || setback.distance - nearest.distance <= ROUNDING) return [];
      return [{ ...setback, thing: thing.name, by: setback.distance - nearest.distance, at: nearest.at }];
    }),
  );
}

/** Signed: negative outside the lot beyond that piece. */
function nearestPlace(
  { points, closed }: Standing,
  line: number,
  outline: readonly Point[],
): { readonly distance: number; readonly at: Point } | null {
  const [a, b] = pieceOf(outline, line);
  let best: { distance: number; at: Point } | null = null;
  const take = (distance: number, at: Point) => {
    if (best === null || distance < best.distance) best = { distance, at };
  };
  for (const at of points) take(signedDistance(at, line, outline), at);
  const sides = closed ? points.length : points.length - 1;
  for (let i = 0; i < sides; i++) {
    const [p, q] = [points[i] as Point, points[(i + 1) % points.length] as Point];
    if (segmentsMeet(a, b, p, q)) take(0, p);
    for (const end of [a, b]) take(distanceToSegment(p, q, end[0], end[1]), end);
  }
  return best;
}

/** A place outside the lot belongs to the piece that it is nearest to. */
function signedDistance(at: Point, line: number, outline: readonly Point[]): number {
  const distance = toPiece(outline, line, at);
  if (containsPoint(outline, at[0], at[1])) return distance;
  const nearest = Math.min(...outline.map((_, i) => toPiece(outline, i, at)));
  return distance <= nearest + ROUNDING ? -distance : distance;
}
