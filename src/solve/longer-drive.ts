/**
 * A drive led round a bend, so that it is long enough for its grade: one of the ways out of an empty band.
 *
 * Units   metres.
 * Method  A floor higher by the gap takes a run longer by gap ÷ grade. The longest straight piece before the landing is
 *         led over a place beside its middle, so far out that the way is that much longer; to the side that stays on the
 *         lot and off the building, else farther from it.
 * Source  First principles.
 */
import { soundLot } from "../document/lot";
import type { Drive, Project } from "../document/schema";
import { containsPoint, nearestOnRing, type Point } from "../geometry";

/** More than this beside its piece a bend is no longer a way to drive. */
const mostSideways = 0.75;

/** The drive with a bend that lengthens it; null where no piece of it has room for that. */
export function longerDrive(project: Project, drive: Drive, more: number): Drive | null {
  const pieces = drive.line.slice(1).map((end, i) => ({ i, start: drive.line[i] as Point, end }));
  // The landing takes the end of the last piece, which so must stay straight where it is the only one.
  const landing = drive.landing.length;
  const usable = pieces.map(({ i, start, end }) => {
    const last = i === pieces.length - 1;
    const length = Math.hypot(end[0] - start[0], end[1] - start[1]);
    return { i, start, end, length, free: last ? length - landing : length };
  });
  const longest = usable.reduce((a, b) => (b.free > a.free ? b : a));
  const { start, end, length, free } = longest;
  const out = Math.sqrt(((free + more) / 2) ** 2 - (free / 2) ** 2);
  if (!(free > 0) || out > mostSideways * free) return null;
  const along: Point = [(end[0] - start[0]) / length, (end[1] - start[1]) / length];
  const middle: Point = [start[0] + (along[0] * free) / 2, start[1] + (along[1] * free) / 2];
  const sides = [out, -out].map((h): Point => [middle[0] - along[1] * h, middle[1] + along[0] * h]);
  const bend = sides.reduce((a, b) => (room(project, b) > room(project, a) ? b : a));
  const straightOn: Point[] = free < length ? [[start[0] + along[0] * free, start[1] + along[1] * free]] : [];
  const line = [
    ...drive.line.slice(0, longest.i + 1),
    bend,
    ...straightOn,
    ...drive.line.slice(longest.i + 1),
  ];
  return { ...drive, line: line.map(([x, y]): [number, number] => [x, y]) };
}

/** How good a place for a bend is: off the lot is worst, then near the building. */
function room({ lot, building }: Project, [x, y]: Point): number {
  const lines = soundLot(lot).outline;
  const onLot = lines.length < 3 || containsPoint(lines, x, y);
  const outline = building?.outline ?? [];
  if (outline.length < 3) return onLot ? 1 : 0;
  if (containsPoint(outline, x, y)) return -1;
  return (onLot ? 1e6 : 0) + nearestOnRing(outline, x, y).distance;
}
