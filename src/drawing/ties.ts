/** Which ties fix a building on its lot. */
import {
  between,
  containsPoint,
  distance,
  distanceToSegment,
  nearestShare,
  type Point,
  segmentsMeet,
  signedArea,
} from "../geometry";
import { compass } from "../units";

/** A square distance from a corner of the building to a lot line. */
export interface Tie {
  readonly corner: Point;
  readonly foot: Point;
  readonly lotSide: number;
  readonly length: number;
}

/** The side of the lot that a tie's line closes: "west". */
export function tieWind({ lotSide }: Tie, lot: { outline: readonly Point[]; north: number }): string {
  const a = lot.outline[lotSide] as Point;
  const b = lot.outline[(lotSide + 1) % lot.outline.length] as Point;
  const out = signedArea(lot.outline) > 0 ? 1 : -1;
  return compass([out * (b[1] - a[1]), -out * (b[0] - a[0])], lot.north);
}

/** Does a tie run over the building or along one of its walls? Then it can't be measured. */
function crossesBuilding(tie: Pick<Tie, "corner" | "foot">, outline: readonly Point[]): boolean {
  const overCorner = outline.some(
    (corner) => corner !== tie.corner && distanceToSegment(tie.corner, tie.foot, corner[0], corner[1]) < 0.01,
  );
  return (
    overCorner ||
    [0.02, 0.1, 0.3, 0.6].some((t) => containsPoint(outline, ...between(tie.corner, tie.foot, t)))
  );
}

/** Square ties from each corner to each lot line, where the foot lies on the line, shortest first. */
function possibleTies(outline: readonly Point[], lot: readonly Point[]): Tie[] {
  const ties = lot.flatMap((a, lotSide) => {
    const b = lot[(lotSide + 1) % lot.length] as Point;
    return outline.flatMap((corner): Tie[] => {
      const t = nearestShare(a, b, corner[0], corner[1]);
      const foot = between(a, b, t);
      const length = distance(corner, foot);
      if (t <= 0 || t >= 1 || length === 0 || crossesBuilding({ corner, foot }, outline)) return [];
      return [{ corner, foot, lotSide, length }];
    });
  });
  return ties.sort((a, b) => a.length - b.length);
}

/** Corners next to a corner, over a wall that runs more along the lot line than across it. */
function besideAlong(tie: Tie, outline: readonly Point[]): readonly Point[] {
  const i = outline.indexOf(tie.corner);
  const n = outline.length;
  return [outline[(i + 1) % n] as Point, outline[(i + n - 1) % n] as Point].filter((next) => {
    const wall = Math.atan2(next[1] - tie.corner[1], next[0] - tie.corner[0]);
    return turnBetween(wall, tieDirection(tie)) > Math.PI / 4;
  });
}

function crosses({ corner, foot }: Tie, line: readonly Point[]): boolean {
  return line.slice(1).some((to, i) => segmentsMeet(corner, foot, line[i] as Point, to));
}

/** Ties that differ by less than this, m, say the same. */
const sameTie = 0.005;
/** Two lot lines count as different directions from here on, radians. */
const leastTurn = 0.5;

function tieDirection(tie: Tie): number {
  return Math.atan2(tie.foot[1] - tie.corner[1], tie.foot[0] - tie.corner[0]);
}

/** How far two undirected directions differ, 0 to a quarter turn. */
function turnBetween(a: number, b: number): number {
  const turn = Math.abs(Math.atan2(Math.sin(a - b), Math.cos(a - b)));
  return Math.min(turn, Math.PI - turn);
}

/**
 * The ties that place the building on the lot, each as a list to take the first drawable of: two to the nearest line
 * (so that it can't be turned) unless they are equal, and one to a line that runs another way. Ties that cross a drive or
 * a swale come after those that don't: once it is dug no tape lies straight over it.
 */
export function chooseTies(
  outline: readonly Point[],
  lot: readonly Point[],
  inTheWay: readonly (readonly Point[])[] = [],
): readonly (readonly Tie[])[] {
  const all = possibleTies(outline, lot);
  const isFree = (tie: Tie) => inTheWay.every((line) => !crosses(tie, line));
  const ties = [...all.filter(isFree), ...all.filter((tie) => !isFree(tie))];
  const [first] = ties;
  if (!first) return [];
  const beside = besideAlong(first, outline);
  const twins = ties.filter(
    (tie) =>
      tie.lotSide === first.lotSide &&
      beside.includes(tie.corner) &&
      Math.abs(tie.length - first.length) > sameTie,
  );
  const others = ties.filter((tie) => turnBetween(tieDirection(tie), tieDirection(first)) > leastTurn);
  return [[first], twins, others];
}
