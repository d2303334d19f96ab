/**
 * Acts about an outline or a place: parking pads and terraces, retaining walls, grade points.
 *
 * Source  First principles. Side slopes are run for one of rise.
 */

import type { GradePoint } from "../document/schema";
import { boundsOf, containsPoint } from "../geometry";
import { grown } from "./boxes";
import type { PadPlane, WallLine } from "./ground-shapes";
import { open } from "./line-operators";
import type { Operator } from "./operator";
import { nearestSegment, nowhere } from "./wall-distance";

/** A flat or tilted pad: outside its outline the slopes start at its nearest edge. Corners are round. */
export function padOperator(plane: PadPlane): Operator {
  const { pad, ring, segments, gx, gy, base, share } = plane;
  const found = nowhere();
  const heights = ring.map(([x, y]) => base + gx * x + gy * y);
  const [least, most] = [Math.min(...heights), Math.max(...heights)];
  return {
    id: pad.id,
    bounds: boundsOf(ring),
    flattest: Math.max(pad.fillSlope, pad.cutSlope),
    ends: (low, high) => ({ leastUpper: least + share * low, mostLower: most + share * high }),
    limitsAt(x, y, _existing, limits) {
      limits.share = share;
      limits.core = containsPoint(ring, x, y);
      if (limits.core) {
        limits.lower = limits.upper = base + gx * x + gy * y;
        limits.stone = pad.gravel;
        return;
      }
      nearestSegment(segments, x, y, found);
      const k = found.segment * 5;
      const along = Math.min(Math.max(found.along, 0), segments[k + 4] as number);
      const px = (segments[k] as number) + (segments[k + 2] as number) * along;
      const py = (segments[k + 1] as number) + (segments[k + 3] as number) * along;
      const edge = base + gx * px + gy * py;
      limits.lower = edge - found.distance / pad.fillSlope;
      limits.upper = edge + found.distance / pad.cutSlope;
      limits.stone = 0;
    },
  };
}

/** Slope by which earth runs round the ends of a wall, run for one of rise. */
const roundEnds = 2;

/**
 * A retaining wall: in front of it (behind it, where it holds a cut) the ground stays as it is. At its ends the earth
 * runs round it by a slope, so that no cliff stands there without a wall.
 */
export function wallOperator(line: WallLine): Operator {
  const { wall, segments, distances, length } = line;
  const found = nowhere();
  // Seen along the line the lower ground lies to one side; held is the side that keeps its ground.
  const keeps = (wall.lowSide === "left") === (wall.holds === "fill") ? 1 : -1;
  return {
    id: wall.id,
    bounds: grown(boundsOf(line.line), wall.reach),
    flattest: Number.POSITIVE_INFINITY,
    ends: () => ({ leastUpper: Number.NEGATIVE_INFINITY, mostLower: Number.POSITIVE_INFINITY }),
    limitsAt(x, y, existing, limits) {
      nearestSegment(segments, x, y, found);
      open(limits);
      const across = found.across * keeps;
      const along = (distances[found.segment] as number) + found.along;
      const past = Math.max(0, found.segment === 0 ? -along : 0, along - length);
      if (across < 0 || found.distance > wall.reach || past > wall.reach / 2) return;
      const free = past / roundEnds;
      if (wall.holds === "fill") limits.upper = existing + free;
      else limits.lower = existing - free;
    },
  };
}

/** A place held at a height, with slopes down or up to the ground all round. */
export function pointOperator(point: GradePoint): Operator {
  const [px, py] = point.at;
  return {
    id: point.id,
    bounds: boundsOf([point.at]),
    flattest: Math.max(point.fillSlope, point.cutSlope),
    ends: () => ({ leastUpper: point.height, mostLower: point.height }),
    limitsAt(x, y, _existing, limits) {
      const distance = Math.hypot(x - px, y - py);
      open(limits);
      limits.lower = point.height - distance / point.fillSlope;
      limits.upper = point.height + distance / point.cutSlope;
    },
  };
}
