/**
 * Water that comes to each swale in the storm, and how it runs there.
 *
 * Units   metres, m2, m3/s, s.
 * Method  What drains to the cells of the swale's bed, on the filled finished ground (D-infinity), what was typed for the
 *         ground beyond, and the roof's water that comes there. Peak by the rational formula with C weighted by area; even
 *         flow by Manning: deepest at the bed's least fall, fastest at its steepest.
 * Source  see `drainage/runoff.ts` and `drainage/channel.ts`. Time of concentration by Kirpich, on the ground beyond and
 *         then to the swale, at least five minutes.
 */
import type { Storm } from "../document/schema";
import { liningBears } from "../document/waterCovers";
import {
  catchmentOf,
  type Flow,
  froude,
  kirpichTime,
  leastTime,
  normalDepth,
  rationalPeak,
  weightedC,
  wetted,
} from "../drainage";
import { distanceToSegment } from "../geometry";
import type { GradingPlan } from "../grading";
import type { SwaleFlow, SwaleResult } from "./results";
import type { RoofDrip } from "./roof-water";
import { rainFor } from "./storm-rain";

type Line = GradingPlan["swales"][number];

/** A ditch is meant to come out at the surface: its room is asked for on its first two thirds (our own choice). */
const beforeOutlet = 2 / 3;

export function swaleFlows(
  plan: GradingPlan,
  results: readonly SwaleResult[],
  flow: Flow,
  storm: Storm,
  drips: readonly RoofDrip[],
  roofRunoff: number,
): { readonly flows: readonly SwaleFlow[]; readonly joining: readonly Joining[] } {
  const found = plan.swales.flatMap((line) => {
    const result = results.find(({ id }) => id === line.swale.id);
    return result ? [swaleFlow(line, result, flow, storm, drips, roofRunoff)] : [];
  });
  return { flows: found.map((one) => one.flow), joining: found.map(({ joining }) => joining) };
}

/** Parts of each slope side's water that come to one swale, in the order of the sides. */
export interface Joining {
  readonly swale: string;
  readonly parts: readonly number[];
}

function swaleFlow(
  line: Line,
  result: SwaleResult,
  flow: Flow,
  storm: Storm,
  drips: readonly RoofDrip[],
  roofRunoff: number,
): { flow: SwaleFlow; joining: Joining } {
  const { area, longest, fall, touchesEdge, part } = catchmentOf(flow, bedCells(line, flow));
  const parts = drips.map(
    ({ cells }) => cells.reduce((sum, i) => sum + (part[i] as number), 0) / (cells.length || 1),
  );
  const roof = drips.reduce((sum, drip, i) => sum + drip.area * (parts[i] as number), 0);
  const catchment = area + storm.uphill + roof;
  const time = Math.max(leastTime, wayTime(longest, fall) + beyondTime(storm));
  const runoff =
    weightedC([
      { c: storm.runoff, area },
      { c: storm.uphillRunoff ?? storm.runoff, area: storm.uphill },
      { c: roofRunoff, area: roof },
    ]) ?? storm.runoff;
  const intensity = rainFor(storm, time);
  const peak = intensity === null ? null : rationalPeak(runoff, intensity, catchment);
  const { bottomWidth: bottom, sideSlope } = line.swale;
  const kind = line.swale.shape === "dish" ? ("rounded" as const) : ("trapezoid" as const);
  const shape = { kind, bottom, sideSlope };
  const depth = peak === null ? null : normalDepth(shape, peak, result.leastFall, storm.roughness);
  const steepest = steepestFall(result);
  const fastest = peak === null ? null : normalDepth(shape, peak, steepest, storm.roughness);
  const speed = peak === null || !fastest ? null : peak / wetted(shape, fastest).area;
  const { room, roomAt } = leastRoom(result);
  const bears = storm.lining === null ? storm.mostSpeed : liningBears(storm.lining, steepest);
  const found: SwaleFlow = {
    id: result.id,
    catchment,
    longest,
    fall,
    touchesEdge,
    time,
    intensity,
    roof,
    runoff,
    peak,
    depth,
    speed,
    steepest,
    froude: peak === null || fastest === null ? null : froude(shape, peak, fastest),
    bears,
    room,
    roomAt,
    verdict: verdictOf(depth, speed, room, bears),
  };
  return { flow: found, joining: { swale: result.name, parts } };
}

function wayTime(length: number, fall: number): number {
  return length > 0 && fall > 0 ? kirpichTime(length, fall / length) : 0;
}

/** Time that water takes on the ground beyond the shots, s. */
function beyondTime({ uphill, uphillLength, uphillFall }: Storm): number {
  return uphill > 0 ? wayTime(uphillLength, uphillLength * uphillFall) : 0;
}

function verdictOf(
  depth: number | null,
  speed: number | null,
  room: number | null,
  bears: number | null,
): SwaleFlow["verdict"] {
  if (depth === null) return null;
  if (room !== null && depth > room) return "overflows";
  return speed !== null && (bears === null || speed > bears) ? "is scoured" : "carries it";
}

/** Cells that lie on the bed. */
function bedCells({ line, swale }: Line, { grid }: Flow): Uint8Array {
  const target = new Uint8Array(grid.columns * grid.rows);
  const reach = Math.max(swale.bottomWidth / 2, 0.75 * grid.cell);
  for (let i = 1; i < line.length; i++) {
    const [a, b] = [line[i - 1], line[i]];
    if (!a || !b) continue;
    const column = (x: number) => Math.floor((x - grid.x0) / grid.cell);
    const row = (y: number) => Math.floor((y - grid.y0) / grid.cell);
    const [left, right] = [
      Math.max(0, column(Math.min(a[0], b[0]) - reach)),
      Math.min(grid.columns - 1, column(Math.max(a[0], b[0]) + reach)),
    ];
    const [low, high] = [
      Math.max(0, row(Math.min(a[1], b[1]) - reach)),
      Math.min(grid.rows - 1, row(Math.max(a[1], b[1]) + reach)),
    ];
    for (let j = low; j <= high; j++) {
      for (let k = left; k <= right; k++) {
        const [x, y] = [grid.x0 + (k + 0.5) * grid.cell, grid.y0 + (j + 0.5) * grid.cell];
        if (distanceToSegment(a, b, x, y) <= reach) target[j * grid.columns + k] = 1;
      }
    }
  }
  return target;
}

function steepestFall({ stations, leastFall }: SwaleResult): number {
  return stations.reduce((most, { fall }) => Math.max(most, fall ?? most), leastFall);
}

/** How deep the ditch lies below the ground as it is, where it is shallowest before it comes out. */
function leastRoom({ stations, length }: SwaleResult): { room: number | null; roomAt: number | null } {
  let room: number | null = null;
  let roomAt: number | null = null;
  for (const { distance, existing, bed } of stations) {
    if (distance > beforeOutlet * length) break;
    const deep = Math.max(0, existing - bed);
    if (room === null || deep < room) [room, roomAt] = [deep, distance];
  }
  return { room, roomAt };
}
