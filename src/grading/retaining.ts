/**
 * Retaining walls in the finished ground: how much shows, and what loads them from above.
 *
 * Units   metres.
 * Method  The finished ground at the wall, behind and in front of it, at stations along it: read at two places a little off the
 *         line and carried on to it, for the ground to each side begins there. What a wall with a typed
 *         height holds is read with the wall following the ground instead: what it is short of that, the other acts want more.
 * Source  First principles. What counts as loaded from above: ground behind it that rises by more than 1 in 10 over the
 *         wall's height, or a drive, a pad or the building within its height from the footing's bottom (usual practice).
 */
import { containsPoint, nearestOnRing, type Point, pointAlong } from "../geometry";
import type { RetainingResult } from "../solve/results";
import type { HeightOfGround, WallLine } from "./ground-shapes";
import { finishHeights, prepare } from "./operators";
import { placesAt } from "./places";
import { type GradingPlan, onDrive } from "./plan";
import { runRoundEnds } from "./wall-ends";

const spacing = 0.5;
/** Off the line to each side, m. */
const beside = 0.02;
const risesBehind = 0.1;
/** Least height that shows for a wall to be one, m. */
const showing = 0.01;

export function retainingResults(
  plan: GradingPlan,
  ground: HeightOfGround,
  floor: number,
): RetainingResult[] {
  return (plan.walls ?? []).map((line) => retainingResult(line, plan, ground, floor));
}

export function retainingResult(
  line: WallLine,
  plan: GradingPlan,
  ground: HeightOfGround,
  floor: number,
): RetainingResult {
  const { wall, length } = line;
  const pieces = Math.max(1, Math.ceil(length / spacing));
  const distances = Array.from({ length: pieces + 1 }, (_, i) => (length * i) / pieces);
  const toHigh = wall.lowSide === "left" ? -1 : 1;
  const off = (t: number, out: number): Point => {
    const { at, direction } = pointAlong(line.line, t);
    return [at[0] - direction[1] * out * toHigh, at[1] + direction[0] * out * toHigh];
  };
  const finished = (points: readonly Point[], shaped = plan) =>
    finishHeights(
      prepare(placesAt(points, ground), shaped, { low: floor, high: floor }),
      floor,
      new Float64Array(points.length),
    );
  const besideLine = (out: number, shaped = plan) => {
    const near = finished(
      distances.map((t) => off(t, out)),
      shaped,
    );
    const far = finished(
      distances.map((t) => off(t, 2 * out)),
      shaped,
    );
    return near.map((z, i) => 2 * z - (far[i] as number));
  };
  const high = besideLine(beside);
  const low = besideLine(-beside);
  const worst = greatestStep(high, low);
  const exposed = Math.max(0, (high[worst] as number) - (low[worst] as number));
  const holds =
    wall.exposed === null
      ? exposed
      : heldIfOpen(line, plan, (open) => [besideLine(beside, open), besideLine(-beside, open)]);
  const fromFooting = Math.max(exposed, wall.exposed ?? 0) + wall.buried;
  const behind = distances.map((t) => off(t, Math.max(exposed, 0.3)));
  const rises = finished(behind).some(
    (z, i) => z - (high[i] as number) > risesBehind * Math.max(exposed, 0.3),
  );
  const ends = runRoundEnds(line, plan, ground, floor);
  return {
    id: wall.id,
    name: wall.name,
    length,
    exposed,
    at: [...pointAlong(line.line, distances[worst] as number).at],
    fromFooting,
    holds,
    short: wall.exposed === null ? 0 : shortOf(wall.exposed, holds, exposed),
    loadedBy: exposed < showing ? null : loadedBy(plan, fromFooting, off, distances, rises),
    ends,
    wantedLength: ends.every(({ meets }) => meets)
      ? length + ends.reduce((sum, { past }) => sum + past, 0)
      : null,
    stations: distances.map((distance, i) => ({
      distance,
      at: [...pointAlong(line.line, distance).at],
      low: low[i] as number,
      high: high[i] as number,
    })),
  };
}

/** The station with the greatest step up from the one side to the other. */
function greatestStep(high: Float64Array, low: Float64Array): number {
  let worst = 0;
  high.forEach((z, i) => {
    if (z - (low[i] as number) > (high[worst] as number) - (low[worst] as number)) worst = i;
  });
  return worst;
}

/** The height that would show if the wall followed the ground behind it, as the other acts leave that. */
function heldIfOpen(
  line: WallLine,
  plan: GradingPlan,
  sidesOf: (open: GradingPlan) => readonly [Float64Array, Float64Array],
): number {
  const walls = plan.walls?.map((one) => (one === line ? { ...one, heldAt: null } : one));
  const [high, low] = sidesOf({ ...plan, walls });
  const worst = greatestStep(high, low);
  return Math.max(0, (high[worst] as number) - (low[worst] as number));
}

/** Against what it would hold, and against what shows all the same: an act in front of it may have dug deeper. */
function shortOf(typed: number, holds: number, exposed: number): number {
  const deeper = exposed - typed > 2 * beside ? exposed - typed : 0;
  return Math.max(0, holds - typed, deeper);
}

function loadedBy(
  plan: GradingPlan,
  within: number,
  off: (t: number, out: number) => Point,
  distances: readonly number[],
  rises: boolean,
): string | null {
  const outs = [0.25, 0.5, 0.75, 1].map((share) => share * within);
  const places = distances.flatMap((t) => outs.map((out) => off(t, out)));
  const { ring } = plan.footprint;
  if (places.some(([x, y]) => containsPoint(ring, x, y) || nearestOnRing(ring, x, y).distance < 0.05))
    return "the building";
  if (places.some((at) => onDrive(plan, at))) return "wheels on a drive";
  const parked = plan.pads?.find(
    ({ ring: outline, pad }) =>
      pad.use !== "terrace" && places.some(([x, y]) => containsPoint(outline, x, y)),
  );
  if (parked) return `wheels on ${parked.pad.name}`;
  return rises ? "ground that rises behind it" : null;
}
