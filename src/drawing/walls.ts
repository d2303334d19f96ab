/** The building's walls as directed sides, for everything that is drawn along or outside them. */
import { centroid, distance, type Point, signedArea } from "../geometry";

export interface Wall {
  readonly index: number;
  readonly from: Point;
  readonly to: Point;
  readonly length: number;
  /** Unit vectors along the wall and out of the building. */
  readonly along: Point;
  readonly outward: Point;
}

/** The sides of an outline in order; wall i runs from corner i to the next. Sides without length are left out. */
export function wallsOf(outline: readonly Point[]): readonly Wall[] {
  const out = signedArea(outline) >= 0 ? 1 : -1;
  return outline.flatMap((from, index): Wall[] => {
    const to = outline[(index + 1) % outline.length] as Point;
    const length = distance(from, to);
    if (length === 0) return [];
    const along: Point = [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
    return [{ index, from, to, length, along, outward: [out * along[1], -out * along[0]] }];
  });
}

/** Unit vector away from the building at each corner: between the outward directions of its two walls. */
export function cornerDirections(outline: readonly Point[]): readonly Point[] {
  const walls = wallsOf(outline);
  return outline.map((corner, i): Point => {
    const before = walls.find((wall) => wall.index === (i + outline.length - 1) % outline.length);
    const after = walls.find((wall) => wall.index === i);
    const x = (before?.outward[0] ?? 0) + (after?.outward[0] ?? 0);
    const y = (before?.outward[1] ?? 0) + (after?.outward[1] ?? 0);
    const size = Math.hypot(x, y);
    if (size > 1e-9) return [x / size, y / size];
    const middle = centroid(outline);
    const away = distance(middle, corner) || 1;
    return [(corner[0] - middle[0]) / away, (corner[1] - middle[1]) / away];
  });
}

/** Whether the building lies on more than half a turn round each corner, as at the inside of an L. */
export function innerCorners(outline: readonly Point[]): readonly boolean[] {
  const n = outline.length;
  const turn = signedArea(outline) >= 0 ? 1 : -1;
  return outline.map(([x, y], i) => {
    const [px, py] = outline[(i + n - 1) % n] as Point;
    const [nx, ny] = outline[(i + 1) % n] as Point;
    return turn * ((x - px) * (ny - y) - (y - py) * (nx - x)) < -1e-9;
  });
}

/** The outline moved inward by a distance, corner by corner (walls' inner faces); corners keep their order. */
export function innerOutline(outline: readonly Point[], inward: number): readonly Point[] {
  const walls = wallsOf(outline);
  const n = walls.length;
  return walls.map((wall, i): Point => {
    const before = walls[(i + n - 1) % n] as Wall;
    const [ax, ay] = [
      before.from[0] - before.outward[0] * inward,
      before.from[1] - before.outward[1] * inward,
    ];
    const [bx, by] = [wall.from[0] - wall.outward[0] * inward, wall.from[1] - wall.outward[1] * inward];
    const cross = before.along[0] * wall.along[1] - before.along[1] * wall.along[0];
    if (Math.abs(cross) < 1e-9) return [bx, by];
    const t = ((bx - ax) * wall.along[1] - (by - ay) * wall.along[0]) / cross;
    return [ax + before.along[0] * t, ay + before.along[1] * t];
  });
}

/** A tolerance for "square": 2 mm in the diagonals is less than anyone can lay out. */
const square = 0.002;

/** Length of sides and of both diagonals when the outline is a rectangle, else null. */
export function rectangleOf(
  outline: readonly Point[],
): { readonly sides: readonly [number, number]; readonly diagonals: readonly [number, number] } | null {
  const [a, b, c, d] = outline;
  if (outline.length !== 4 || !a || !b || !c || !d) return null;
  const oppositeDiffer = Math.max(
    Math.abs(distance(a, b) - distance(c, d)),
    Math.abs(distance(b, c) - distance(d, a)),
  );
  const diagonals = [distance(a, c), distance(b, d)] as const;
  if (oppositeDiffer > square || Math.abs(diagonals[0] - diagonals[1]) > square) return null;
  return { sides: [distance(a, b), distance(b, c)], diagonals };
}
