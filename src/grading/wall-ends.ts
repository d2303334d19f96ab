/**
 * How far the earth that a retaining wall's typed height makes runs round its ends, past what the wall holds.
 *
 * Units   metres.
 * Method  Round each end, from straight on along the wall to nearly square to it, over the side whose ground the wall keeps: the last
 *         place at which the ground, as finished, differs from the ground finished with that height left open. What other
 *         acts bring there isn't counted.
 * Source  First principles.
 */
import { type Point, pointAlong } from "../geometry";
import type { WallEnd } from "../solve/results";
import type { HeightOfGround, WallLine } from "./ground-shapes";
import { finishHeights, prepare } from "./operators";
import { placesAt } from "./places";
import type { GradingPlan } from "./plan";

/** Off the wall's direction, degrees; not straight on, where a wall drawn on from the end begins to hold. */
const turns = [0.1, 15, 30, 45, 60, 75, 89];
/** Looked so far out, so many steps of it first, then closed in on by halves. */
const look = 30;
const steps = 120;
const halvings = 14;
/** Earth thinner than this is none, m. */
const thinnest = 1e-6;
/** Earth that runs less far than this isn't told, m. */
const least = 0.01;

export function runRoundEnds(
  line: WallLine,
  plan: GradingPlan,
  ground: HeightOfGround,
  floor: number,
): WallEnd[] {
  if (!line.heldAt) return [];
  const open = { ...plan, walls: plan.walls?.map((one) => (one === line ? { ...one, heldAt: null } : one)) };
  const made = (points: readonly Point[]) => {
    const finished = (shaped: GradingPlan) =>
      finishHeights(
        prepare(placesAt(points, ground), shaped, { low: floor, high: floor }),
        floor,
        new Float64Array(points.length),
      );
    const bare = finished(open);
    return finished(plan).map((z, i) => Math.abs(z - (bare[i] as number)));
  };
  return (["first", "last"] as const).flatMap((end) => {
    const found = endOf(line, end, made);
    return found.past < least && found.ahead < least ? [] : [found];
  });
}

function endOf(
  { line, length, wall }: WallLine,
  end: WallEnd["end"],
  made: (points: readonly Point[]) => Float64Array,
): WallEnd {
  const { at, direction } = pointAlong(line, end === "first" ? 0 : length);
  const sign = end === "first" ? -1 : 1;
  const on: Point = [direction[0] * sign, direction[1] * sign];
  // Left of the line as it runs, where that is the side the wall keeps as it is.
  const left = (wall.lowSide === "left") === (wall.holds === "fill") ? 1 : -1;
  const kept: Point = [-direction[1] * left, direction[0] * left];
  const rays = turns.map((degrees) => {
    const angle = (degrees * Math.PI) / 180;
    return { along: Math.cos(angle), across: Math.sin(angle) };
  });
  const place = ({ along, across }: (typeof rays)[number], far: number): Point => [
    at[0] + far * (along * on[0] + across * kept[0]),
    at[1] + far * (along * on[1] + across * kept[1]),
  ];
  const ends = lastMade(
    rays.map((ray) => (far: number) => place(ray, far)),
    made,
  );
  return {
    end,
    at: [at[0], at[1]],
    towards: [on[0], on[1]],
    past: Math.max(...ends.map((far, i) => far * (rays[i] as (typeof rays)[number]).along)),
    ahead: Math.max(...ends.map((far, i) => far * (rays[i] as (typeof rays)[number]).across)),
    meets: ends.every((far) => far < look),
  };
}

/** How far out along each ray earth lies last; 0 where none does. All rays go together: each look at the ground costs. */
function lastMade(
  rays: readonly ((far: number) => Point)[],
  made: (points: readonly Point[]) => Float64Array,
): number[] {
  const step = look / steps;
  const seen = made(rays.flatMap((at) => Array.from({ length: steps }, (_, i) => at(step * (i + 1)))));
  const low = rays.map((_, r) => {
    let last = 0;
    for (let i = 0; i < steps; i++) if ((seen[r * steps + i] as number) > thinnest) last = i + 1;
    return last * step;
  });
  const high = low.map((far) => Math.min(look, far + step));
  const middle = (r: number) => ((low[r] as number) + (high[r] as number)) / 2;
  for (let i = 0; i < halvings; i++)
    made(rays.map((at, r) => at(middle(r)))).forEach((depth, r) => {
      if (depth > thinnest) low[r] = middle(r);
      else high[r] = middle(r);
    });
  return low;
}
