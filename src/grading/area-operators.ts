/**
 * Acts about an outline or a place: parking pads and terraces, retaining walls, grade points.
 *
 * Source  First principles. Side slopes are run for one of rise.
 */

import type { GradePoint } from "../document/schema";
import { boundsOf, containsPoint, type Point, signedArea } from "../geometry";
import { grown } from "./boxes";
import type { PadPlane, WallLine } from "./ground-shapes";
import { open } from "./line-operators";
import type { Edge, Limits, Operator } from "./operator";
import { nearestSegment, nowhere } from "./wall-distance";

/**
 * A flat or tilted pad: outside its outline the slopes start at its nearest edge. Round corners run round as cones; at
 * mitred ones the slopes of both edges go on until they meet.
 */
export function padOperator(plane: PadPlane, corners: "round" | "mitred" = "round"): Operator {
  const { pad, ring, segments, gx, gy, base, share } = plane;
  const found = nowhere();
  const heightAt = (x: number, y: number) => base + gx * x + gy * y;
  const heights = ring.map(([x, y]) => heightAt(x, y));
  const [least, most] = [Math.min(...heights), Math.max(...heights)];
  const outward = signedArea(ring) > 0 ? -1 : 1;
  const flattest = Math.max(pad.fillSlope, pad.cutSlope);
  const slopeOff = (edge: number, out: number, limits: Limits) => {
    limits.lower = Math.min(limits.lower, edge - out / pad.fillSlope);
    limits.upper = Math.max(limits.upper, edge + out / pad.cutSlope);
  };
  /** The slope of an edge carried on past its end, as far as the place. */
  const carriedOn = (segment: number, x: number, y: number, limits: Limits) => {
    const k = segment * 5;
    if (segments[k + 4] === 0) return;
    const [ux, uy] = [segments[k + 2] as number, segments[k + 3] as number];
    const [dx, dy] = [x - (segments[k] as number), y - (segments[k + 1] as number)];
    const across = dy * ux - dx * uy;
    slopeOff(heightAt(x + across * uy, y - across * ux), across * outward, limits);
  };
  return {
    id: pad.id,
    bounds: boundsOf(ring),
    edges: ring.map((start, i): Edge => [start, ring[(i + 1) % ring.length] as Point]),
    flattest: corners === "mitred" ? flattest / sharpestMitre(ring) : flattest,
    // A tilted edge goes on with its tilt where its slope is carried past its end.
    ends: (low, high) =>
      corners === "mitred" && (gx !== 0 || gy !== 0)
        ? { leastUpper: Number.NEGATIVE_INFINITY, mostLower: Number.POSITIVE_INFINITY }
        : { leastUpper: least + share * low, mostLower: most + share * high },
    limitsAt(x, y, _existing, limits) {
      limits.share = share;
      limits.core = containsPoint(ring, x, y);
      if (limits.core) {
        limits.lower = limits.upper = heightAt(x, y);
        limits.stone = pad.gravel;
        return;
      }
      limits.stone = 0;
      limits.lower = Number.POSITIVE_INFINITY;
      limits.upper = Number.NEGATIVE_INFINITY;
      nearestSegment(segments, x, y, found);
      const k = found.segment * 5;
      const length = segments[k + 4] as number;
      const past = found.along < 0 ? -1 : found.along > length ? 1 : 0;
      if (past !== 0 && corners === "mitred") {
        carriedOn(found.segment, x, y, limits);
        carriedOn((found.segment + past + ring.length) % ring.length, x, y, limits);
        return;
      }
      const along = Math.min(Math.max(found.along, 0), length);
      const px = (segments[k] as number) + (segments[k + 2] as number) * along;
      const py = (segments[k + 1] as number) + (segments[k + 3] as number) * along;
      slopeOff(heightAt(px, py), found.distance, limits);
    },
  };
}

/** Least share of its distance from a corner by which a place between two mitred slopes is away from them. */
function sharpestMitre(ring: readonly Point[]): number {
  const bends = ring.map(([x, y], i) => {
    const [ax, ay] = ring[(i + ring.length - 1) % ring.length] as Point;
    const [bx, by] = ring[(i + 1) % ring.length] as Point;
    const [ux, uy, vx, vy] = [x - ax, y - ay, bx - x, by - y];
    return Math.abs(Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy));
  });
  return Math.max(1e-3, Math.cos(Math.max(...bends) / 2));
}

/** Slope by which earth runs round the ends of a wall, run for one of rise. */
const roundEnds = 2;

/**
 * A retaining wall: in front of it (behind it, where it holds a cut) the ground stays as it is. At its ends the earth
 * runs round it by a slope, so that no cliff stands there without a wall. With a typed height the other side is held at it
 * along the line and as far as it is to be level, and goes on by the plan's side slopes.
 */
export function wallOperator(line: WallLine): Operator {
  const { wall, segments, distances, length } = line;
  const found = nowhere();
  // Seen along the line the lower ground lies to one side; held is the side that keeps its ground.
  const keeps = (wall.lowSide === "left") === (wall.holds === "fill") ? 1 : -1;
  return {
    id: wall.id,
    bounds: grown(boundsOf(line.line), wall.reach),
    edges: wallEdges(line, keeps),
    flattest: Number.POSITIVE_INFINITY,
    ends: () => ({ leastUpper: Number.NEGATIVE_INFINITY, mostLower: Number.POSITIVE_INFINITY }),
    limitsAt(x, y, existing, limits) {
      nearestSegment(segments, x, y, found);
      open(limits);
      const across = found.across * keeps;
      const along = (distances[found.segment] as number) + found.along;
      const past = Math.max(0, found.segment === 0 ? -along : 0, along - length);
      if (line.heldAt && (across < 0 || past > 0)) {
        const level = across < 0 ? wall.level : 0;
        const off = past > 0 ? Math.abs(across) : found.distance;
        holdAt(line, line.heldAt(along), Math.hypot(past, Math.max(0, off - level)), limits);
      }
      if (across < 0 || found.distance > wall.reach || past > wall.reach / 2) return;
      const free = past / roundEnds;
      if (wall.holds === "fill") limits.upper = existing + free;
      else limits.lower = existing - free;
    },
  };
}

/** The wall's line, gone on at its ends as far as it says anything there, and where what it keeps ends in front of it. */
function wallEdges({ line, wall }: WallLine, keeps: 1 | -1): Edge[] {
  const last = line.length - 2;
  return line.slice(1).flatMap((to, i): Edge[] => {
    const from = line[i] as Point;
    const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
    const [ux, uy] = [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
    const beyond = wall.reach / 2;
    const [before, after] = [i === 0 ? beyond : 0, i === last ? beyond : 0];
    const start: Point = [from[0] - ux * before, from[1] - uy * before];
    const end: Point = [to[0] + ux * after, to[1] + uy * after];
    const out = ([x, y]: Point): Point => [x - uy * keeps * wall.reach, y + ux * keeps * wall.reach];
    return [
      [start, end],
      [out(start), out(end)],
    ];
  });
}

/** By the side slopes from what is held level: down where that lies over the ground, up where under it. */
function holdAt({ slopes }: WallLine, height: number, beyond: number, limits: Limits): void {
  limits.lower = height - beyond / slopes.fill;
  limits.upper = height + beyond / slopes.cut;
  limits.core = beyond === 0;
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
