/**
 * The existing ground out to where it is needed: measured triangles with a skirt of guessed ones round them.
 *
 * Method  Every hull point is carried outwards by one distance, square to its two sides, with steps of at
 *         most 30 degrees round its corner. A ghost point's height is that of its hull point plus the slope
 *         of the plane fitted to all measured points: the guess joins the measured ground without a step
 *         and goes on with the general fall of the site. Every triangle of it is marked.
 * Source  First principles.
 */
import { type Bounds, containsPoint, nearestOnRing, type Point } from "../geometry";
import type { Ground, Tin } from "./ground";
import { fittedPlane } from "./plane";
import { rimEdges } from "./rim";

/** Widest step of the fan round a hull corner, radians. */
const FAN_STEP = Math.PI / 6;

/** Corners that turn less than this, radians, get one ghost: the hull runs straight on. */
const STRAIGHT = 1e-6;

/**
 * Ground for every place in `reach` (and some metres more), guessed outside the measured points and in the triangles
 * between them that are marked as doubtful.
 */
export function makeGround(tin: Tin, reach: Bounds, doubtful?: Uint8Array): Ground {
  const rim = rimEdges(tin.halfedges);
  const corners = rim.map((e) => tin.triangles[e] as number);
  const hull = corners.map((i): Point => [tin.x[i] as number, tin.y[i] as number]);
  const plane = fittedPlane(tin.x, tin.y, tin.z);
  const out = skirtWidth(hull, reach);
  const fans = ghostDirections(hull);
  const ghosts = ghostPoints(tin, corners, fans, out, plane);
  const skirt = skirtTriangles(tin, rim, corners, fans);
  const measured = tin.triangles.length / 3;
  const guessed = new Uint8Array(skirt.triangles.length / 3).fill(1, measured);
  if (doubtful) guessed.set(doubtful);
  return {
    tin: { ...ghosts, ...skirt },
    measuredPoints: tin.x.length,
    measuredTriangles: measured,
    guessed,
    hull: Float64Array.from(hull.flat()),
    plane,
  };
}

/** How far out the skirt must go: past the farthest corner of the reach, fans being a little short between steps. */
function skirtWidth(hull: readonly Point[], reach: Bounds): number {
  let farthest = 0;
  for (const x of [reach.minX, reach.maxX]) {
    for (const y of [reach.minY, reach.maxY]) {
      if (!containsPoint(hull, x, y)) farthest = Math.max(farthest, nearestOnRing(hull, x, y).distance);
    }
  }
  return (1.01 * farthest) / Math.cos(FAN_STEP / 2) + 1;
}

/** For each hull corner the outward unit directions of its ghosts, in the order of the way round. */
function ghostDirections(hull: readonly Point[]): Point[][] {
  const n = hull.length;
  const angles = hull.map((from, i) => {
    const to = hull[(i + 1) % n] as Point;
    return Math.atan2(-(to[0] - from[0]), to[1] - from[1]); // of the outward normal (dy, -dx)
  });
  return angles.map((leaving, i) => {
    const arriving = angles[(i + n - 1) % n] as number;
    const bend = wrapped(leaving - arriving);
    if (bend < STRAIGHT) return [direction(arriving + bend / 2)];
    const steps = Math.ceil(bend / FAN_STEP);
    return Array.from({ length: steps + 1 }, (_, k) => direction(arriving + (bend * k) / steps));
  });
}

function direction(angle: number): Point {
  return [Math.cos(angle), Math.sin(angle)];
}

/** The same turn within -180 to 180 degrees. */
function wrapped(angle: number): number {
  return angle - 2 * Math.PI * Math.round(angle / (2 * Math.PI));
}

function ghostPoints(
  tin: Tin,
  corners: readonly number[],
  fans: readonly Point[][],
  out: number,
  plane: Ground["plane"],
): Pick<Tin, "x" | "y" | "z"> {
  const x: number[] = [];
  const y: number[] = [];
  const z: number[] = [];
  corners.forEach((corner, i) => {
    for (const [dx, dy] of fans[i] as Point[]) {
      x.push((tin.x[corner] as number) + out * dx);
      y.push((tin.y[corner] as number) + out * dy);
      z.push((tin.z[corner] as number) + out * (plane.gx * dx + plane.gy * dy));
    }
  });
  return { x: appended(tin.x, x), y: appended(tin.y, y), z: appended(tin.z, z) };
}

/**
 * The measured triangles followed by those of the skirt, linked into one surface. Round hull corner i the
 * fan (corner, ghost, next ghost); along hull side i the pair (corner, last ghost, next corner's first
 * ghost) and (corner, next corner's first ghost, next corner), so that each triangle's first side is shared
 * with the one before it in the way round, and its last side with the one after it.
 */
function skirtTriangles(
  tin: Tin,
  rim: readonly number[],
  corners: readonly number[],
  fans: readonly Point[][],
): Pick<Tin, "triangles" | "halfedges" | "hull"> {
  const n = corners.length;
  const firstGhost = ghostStarts(tin.x.length, fans);
  const triangles: number[] = [];
  const halfedges: number[] = [];
  const inward = new Int32Array(n); // half-edge of the skirt on hull side i
  const offset = tin.triangles.length;
  for (let i = 0; i < n; i++) {
    const corner = corners[i] as number;
    const last = (firstGhost[i + 1] as number) - 1;
    for (let ghost = firstGhost[i] as number; ghost < last; ghost++) triangles.push(corner, ghost, ghost + 1);
    const nextFirst = firstGhost[(i + 1) % n] as number;
    triangles.push(corner, last, nextFirst, corner, nextFirst, corners[(i + 1) % n] as number);
    inward[i] = offset + triangles.length - 1;
  }
  linkRound(triangles, halfedges, offset);
  inward.forEach((e, i) => {
    halfedges[e - offset] = rim[i] as number;
  });
  const all = appended(tin.halfedges, halfedges);
  inward.forEach((e, i) => {
    all[rim[i] as number] = e;
  });
  const hull = Uint32Array.from(
    { length: (firstGhost[n] as number) - tin.x.length },
    (_, k) => tin.x.length + k,
  );
  return { triangles: appended(tin.triangles, triangles), halfedges: all, hull };
}

/** Index of each hull corner's first ghost point, and after the last the end of all. */
function ghostStarts(measuredPoints: number, fans: readonly Point[][]): number[] {
  const starts = [measuredPoints];
  for (const fan of fans) starts.push((starts[starts.length - 1] as number) + fan.length);
  return starts;
}

/** Links each skirt triangle to the next one in the way round; outer sides stay open. */
function linkRound(triangles: readonly number[], halfedges: number[], offset: number): void {
  const count = triangles.length / 3;
  for (let e = 0; e < triangles.length; e++) halfedges.push(-1);
  for (let t = 0; t < count; t++) {
    const next = (t + 1) % count;
    // A triangle ends with its last side, unless that lies on the hull: then it is its middle one.
    const onHull = triangles[3 * t + 2] === triangles[3 * next];
    const leaving = onHull ? 3 * t + 1 : 3 * t + 2;
    halfedges[leaving] = offset + 3 * next;
    halfedges[3 * next] = offset + leaving;
  }
}

function appended<T extends Float64Array | Uint32Array | Int32Array>(head: T, tail: readonly number[]): T {
  const whole = new (head.constructor as new (length: number) => T)(head.length + tail.length);
  whole.set(head);
  whole.set(tail, head.length);
  return whole;
}
