/**
 * How far the side slopes run out in front of each side, and where they never meet the ground.
 *
 * Units   metres.
 * Method  From places along the apron's edge the slope is followed square to the wall in small steps, and the step in
 *         which it meets the ground is halved until the place is exact on the triangles. A retaining wall ends it, and at
 *         mitred corners the slope of the side beside it.
 *         Beyond the farthest look the gap is taken to close as evenly as over its last metres: there the ground is a guess.
 * Source  First principles.
 */
import { type Point, segmentsMeet } from "../geometry";
import type { SideReach } from "../solve/results";
import { apronOperator } from "./apron-operator";
import { onWall, type Wall } from "./footprint";
import type { HeightOfGround } from "./ground-shapes";
import { noLimits } from "./operator";
import type { GradingPlan, SideRule } from "./plan";
import { farthestLook } from "./reach";

/** Places along a side no farther apart than this, and steps along the slope, m. */
const alongWall = 2;
const step = 0.5;
/** A slope that begins nearer than this to the ground needs no reach, m. */
const touching = 1e-3;
/** The gap's last metres before the farthest look tell how fast it closes; slower than this, rise over run, is never. */
const lastMetres = 20;
const slowest = 1e-3;

export function sideReaches(plan: GradingPlan, ground: HeightOfGround, floor: number): SideReach[] {
  const built = plan.pad.corners === "mitred" ? builtBy(plan, floor) : null;
  return plan.footprint.walls.map((wall, i) => {
    const graded = plan.pad.leave[i] === 0;
    const none: SideReach = {
      wall: i,
      name: wall.name,
      graded,
      fill: null,
      cut: null,
      meets: true,
      farther: null,
      endWall: null,
    };
    return graded
      ? { ...none, ...sideReach(wall, plan.pad.sides?.[i] ?? plan.pad, plan, ground, floor, built) }
      : none;
  });
}

/** Fill and cut that the pad with its slopes builds at a place: mitred sides cut each other off. */
type Built = (at: Point) => { readonly lower: number; readonly upper: number };

function builtBy(plan: GradingPlan, floor: number): Built {
  const pad = apronOperator(plan);
  const limits = noLimits();
  return ([x, y]) => {
    pad.limitsAt(x, y, 0, limits);
    return { lower: limits.lower + limits.share * floor, upper: limits.upper + limits.share * floor };
  };
}

function sideReach(
  wall: Wall,
  rule: SideRule,
  plan: GradingPlan,
  ground: HeightOfGround,
  floor: number,
  built: Built | null,
): Pick<SideReach, "fill" | "cut" | "meets" | "farther" | "endWall"> {
  const found: { -readonly [K in "fill" | "cut" | "farther" | "endWall"]: SideReach[K] } = {
    fill: null,
    cut: null,
    farther: null,
    endWall: null,
  };
  let meets = true;
  let never = false;
  const pieces = Math.max(2, Math.ceil(wall.length / alongWall));
  const height = floor + rule.edgeAboveFloor - rule.fall * rule.width;
  for (let k = 0; k <= pieces; k++) {
    const offset = (wall.length * k) / pieces;
    const edge = onWall(wall, offset, rule.width);
    const over = height - ground(edge);
    if (Math.abs(over) < touching) continue;
    const slope = over > 0 ? -1 / rule.fillSlope : 1 / rule.cutSlope;
    const place = (t: number) => onWall(wall, offset, rule.width + t);
    const heightAt = (t: number) => {
      const plane = height + slope * t;
      if (!built) return plane;
      return over > 0 ? Math.min(plane, built(place(t)).lower) : Math.max(plane, built(place(t)).upper);
    };
    const out = daylightOut(place, plan, ground, heightAt, over > 0);
    if (out === null) {
      meets = false;
      const farther = fartherOut((t) => Math.abs(height + slope * t - ground(place(t))));
      if (farther === null) never = true;
      else found.farther = Math.max(found.farther ?? 0, rule.width + farther);
      if (Math.abs(over) > (found.endWall?.height ?? 0))
        found.endWall = { height: Math.abs(over), at: [...edge], along: offset };
      continue;
    }
    const kind = over > 0 ? "fill" : "cut";
    const distance = rule.width + out;
    if (distance > (found[kind]?.distance ?? 0))
      found[kind] = { distance, at: [...onWall(wall, offset, distance)] };
  }
  return { ...found, farther: never ? null : found.farther, meets };
}

/** Where a gap that is still open at the farthest look would close; null: it doesn't. */
function fartherOut(gapAt: (out: number) => number): number | null {
  const gap = gapAt(farthestLook);
  const closing = (gapAt(farthestLook - lastMetres) - gap) / lastMetres;
  return closing > slowest ? farthestLook + gap / closing : null;
}

/** Distance beyond the apron at which a slope meets the ground or a retaining wall; null: not within reach. */
function daylightOut(
  place: (out: number) => Point,
  plan: GradingPlan,
  ground: HeightOfGround,
  heightAt: (out: number) => number,
  fill: boolean,
): number | null {
  const open = (t: number) => (fill ? 1 : -1) * (heightAt(t) - ground(place(t))) > 0;
  for (let t = step; t <= farthestLook; t += step) {
    const walled = heldBetween(place(t - step), place(t), plan, fill);
    if (open(t) && !walled) continue;
    let [near, far] = [t - step, t];
    if (!walled || !open(t))
      while (far - near > 1e-6) {
        const middle = (near + far) / 2;
        if (open(middle)) near = middle;
        else far = middle;
      }
    return far;
  }
  return null;
}

function heldBetween(a: Point, b: Point, { walls = [] }: GradingPlan, fill: boolean): boolean {
  return walls.some(
    ({ line, wall }) =>
      (wall.holds === "fill") === fill &&
      line.slice(1).some((end, i) => segmentsMeet(a, b, line[i] as Point, end)),
  );
}
