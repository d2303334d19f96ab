/**
 * Slope sides of a roof: how much of it drains to the eave along each wall.
 *
 * Units   metres, m2. Areas are those of the plan, on which rain falls, overhang included.
 * Method  The outline grown by the overhang, cut along the ridge (through its middle, along or across its longest wall); each
 *         part drains to the wall farthest from the ridge on its side. A hip gives each wall the part nearest to it.
 * Source  First principles; that a roof's area counts in plan is common practice for the rational formula.
 * Error   A ridge that doesn't lie in the middle, dormers and roofs at several heights aren't known.
 */
import type { Roof } from "../document/schema";
import {
  centroid,
  clipConvexByHalfPlane,
  counterClockwise,
  flatArea,
  type Point,
  signedArea,
} from "../geometry";

export interface RoofPart {
  /** Wall along whose eave it drains. */
  readonly wall: number;
  /** In plan, m2. */
  readonly area: number;
  /** The eave, from one end of the wall to the other, moved out by the overhang. */
  readonly eave: readonly [Point, Point];
}

/** Null while the roof's shape isn't known, or where it can't be told from the outline (a hip over a bent one). */
export function roofParts(outline: readonly Point[], roof: Roof): RoofPart[] | null {
  if (roof.shape === "unknown" || outline.length < 3) return null;
  const isLeft = signedArea(outline) > 0;
  const out = (a: Point, b: Point): Point => {
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]) || 1;
    const way: Point = [(b[1] - a[1]) / length, -(b[0] - a[0]) / length];
    return isLeft ? way : [-way[0], -way[1]];
  };
  const walls = outline.map((a, i) => {
    const b = outline[(i + 1) % outline.length] as Point;
    const [nx, ny] = out(a, b);
    const moved = ([x, y]: Point): Point => [x + nx * roof.overhang, y + ny * roof.overhang];
    return {
      a,
      b,
      normal: [nx, ny] as Point,
      eave: [moved(a), moved(b)] as const,
      length: Math.hypot(b[0] - a[0], b[1] - a[1]),
    };
  });
  const grown = counterClockwise(mitred(walls.map(({ eave }) => eave))).flat();
  const part = (wall: number, area: number): RoofPart[] => {
    const found = walls[wall];
    return found && area > 1e-9 ? [{ wall, area, eave: found.eave }] : [];
  };
  if (roof.shape === "one-way") return part(Math.min(roof.lowWall, walls.length - 1), flatArea(grown));
  if (roof.shape === "hip") {
    if (!isConvex(outline)) return null;
    return walls.flatMap((_, i) => part(i, flatArea(nearestPart(grown, walls, i))));
  }
  const longest = walls.reduce(
    (best, wall, i) => (wall.length > (walls[best]?.length ?? 0) + 1e-6 ? i : best),
    0,
  );
  const along = walls[longest] as (typeof walls)[number];
  const ridge: Point =
    roof.shape === "gable" ? [along.normal[1], -along.normal[0]] : [along.normal[0], along.normal[1]];
  const middle = centroid(outline);
  const through: Point = [middle[0] + ridge[0], middle[1] + ridge[1]];
  const left: Point = [-ridge[1], ridge[0]];
  return [
    { cut: clipConvexByHalfPlane(grown, middle, through), side: left },
    { cut: clipConvexByHalfPlane(grown, through, middle), side: [-left[0], -left[1]] as Point },
  ].flatMap(({ cut, side }) => part(eaveWall(walls, side), flatArea(cut)));
}

/** The longest of the walls that face a way: the eave along which that side drips. */
function eaveWall(
  walls: readonly { readonly normal: Point; readonly length: number }[],
  side: Point,
): number {
  const facing = ({ normal }: { readonly normal: Point }) => normal[0] * side[0] + normal[1] * side[1];
  return walls.reduce((best, wall, i) => {
    const before = walls[best] as (typeof walls)[number];
    return Math.max(0, facing(wall)) * wall.length > Math.max(0, facing(before)) * before.length + 1e-9
      ? i
      : best;
  }, 0);
}

/** The ring of lines that were moved out, each cut with the next. */
function mitred(lines: readonly (readonly [Point, Point])[]): Point[] {
  return lines.map(([c, d], i) => {
    const [a, b] = lines[(i + lines.length - 1) % lines.length] as readonly [Point, Point];
    const [ux, uy, vx, vy] = [b[0] - a[0], b[1] - a[1], d[0] - c[0], d[1] - c[1]];
    const across = ux * vy - uy * vx;
    // Two walls in one line: their ends lie on it.
    if (Math.abs(across) < 1e-9) return c;
    const t = ((c[0] - a[0]) * vy - (c[1] - a[1]) * vx) / across;
    return [a[0] + t * ux, a[1] + t * uy];
  });
}

function isConvex(outline: readonly Point[]): boolean {
  const ring = counterClockwise(outline);
  return ring.every((b, i) => {
    const [a, c] = [ring.at(i - 1) as Point, ring[(i + 1) % ring.length] as Point];
    return (b[0] - a[0]) * (c[1] - b[1]) - (b[1] - a[1]) * (c[0] - b[0]) >= -1e-9;
  });
}

/** The part of a convex roof that lies nearer to one eave than to any other: its slope is the same everywhere. */
function nearestPart(
  grown: readonly number[],
  walls: readonly { readonly normal: Point; readonly eave: readonly [Point, Point] }[],
  of: number,
): readonly number[] {
  const own = walls[of] as (typeof walls)[number];
  const reach = (wall: (typeof walls)[number]) =>
    wall.normal[0] * wall.eave[0][0] + wall.normal[1] * wall.eave[0][1];
  return walls.reduce((rest, other, i) => {
    if (i === of) return rest;
    // Nearer to the own line: (own normal − other normal) · p >= own reach − other reach.
    const [nx, ny] = [own.normal[0] - other.normal[0], own.normal[1] - other.normal[1]];
    const size = Math.hypot(nx, ny);
    if (size < 1e-9) return rest;
    const away = (reach(own) - reach(other)) / (size * size);
    const at: Point = [nx * away, ny * away];
    return clipConvexByHalfPlane(rest, at, [at[0] + ny, at[1] - nx]);
  }, grown);
}
