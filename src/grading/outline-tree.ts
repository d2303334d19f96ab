/**
 * An outline as half-planes in front of its walls: which must all hold, and of which any will do.
 *
 * Method  A place is within a convex outline if it is behind all walls. Where the outline turns inwards, it is if it is
 *         behind any wall of that stretch; and so on, by turns, for what stands within an inward stretch. The convex
 *         hull of a stretch tells where it is to be parted. Walls in one line are taken as one.
 * Source  Convex differences: S.B. Tor, A.E. Middleditch, ACM Transactions on Graphics 3 (1984).
 */
import { convexHull, type Point } from "../geometry";
import type { Footprint } from "./footprint";

export interface OutlineSide {
  readonly kind: "side";
  /** Walls in one line, in their order. */
  readonly walls: readonly number[];
}

export interface OutlineGroup {
  readonly kind: "all" | "any";
  readonly parts: readonly OutlineTree[];
}

export type OutlineTree = OutlineSide | OutlineGroup;

/** Walls that turn by less than this are in one line, radians. */
export const straight = 0.01;

/** A stretch of the outline: its corners, and the walls between each two. */
interface Stretch {
  readonly corners: readonly Point[];
  readonly walls: readonly (readonly number[])[];
}

export function outlineTree(footprint: Footprint): OutlineTree {
  const round = bentCorners(footprint);
  const hull = new Set(convexHull(round.corners));
  const first = round.corners.findIndex((corner) => hull.has(corner));
  const turned = <T>(list: readonly T[]) => [...list.slice(first), ...list.slice(0, first)];
  const corners = turned(round.corners);
  return parted({ corners: [...corners, corners[0] as Point], walls: turned(round.walls) }, hull, "all");
}

/** Only corners where the outline turns; of an outline without any all. */
function bentCorners({ walls }: Footprint): Stretch {
  const bent = walls.flatMap((wall, i) => {
    const before = walls[(i + walls.length - 1) % walls.length] as typeof wall;
    return Math.abs(turnOf(before.along, wall.along)) < straight ? [] : [i];
  });
  const starts = bent.length < 3 ? walls.map((_, i) => i) : bent;
  return {
    corners: starts.map((i) => (walls[i] as (typeof walls)[number]).start),
    walls: starts.map((start, k) => {
      const end = starts[k + 1] ?? (starts[0] as number) + walls.length;
      return Array.from({ length: end - start }, (_, n) => (start + n) % walls.length);
    }),
  };
}

export function turnOf(a: Point, b: Point): number {
  return Math.atan2(a[0] * b[1] - a[1] * b[0], a[0] * b[0] + a[1] * b[1]);
}

/** The stretch parted at its corners on the hull. */
function parted({ corners, walls }: Stretch, hull: ReadonlySet<Point>, kind: "all" | "any"): OutlineTree {
  const ends = corners.flatMap((corner, i) => (i > 0 && hull.has(corner) ? [i] : []));
  if (ends[ends.length - 1] !== walls.length) ends.push(walls.length);
  const parts = ends.map((end, k): OutlineTree => {
    const start = k === 0 ? 0 : (ends[k - 1] as number);
    return treeOf(
      { corners: corners.slice(start, end + 1), walls: walls.slice(start, end) },
      kind === "all" ? "any" : "all",
    );
  });
  return parts.length === 1 ? (parts[0] as OutlineTree) : { kind, parts };
}

function treeOf(stretch: Stretch, kind: "all" | "any"): OutlineTree {
  const hull = new Set(convexHull(stretch.corners));
  const bends = stretch.corners.slice(1, -1).some((corner) => hull.has(corner));
  return stretch.walls.length === 1 || !bends
    ? { kind: "side", walls: stretch.walls.flat() }
    : parted(stretch, hull, kind);
}
