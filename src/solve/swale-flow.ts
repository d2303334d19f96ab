/**
 * Water that comes to each swale in the storm, and how it runs there.
 *
 * Units   metres, m2, m3/s, s.
 * Method  What drains to the cells of the swale's bed, on the filled finished ground (D-infinity), what was typed for the
 *         ground beyond, and the roof's water that comes there. Peak by the rational formula with C weighted by area; even
 *         flow by Manning: deepest at the bed's least fall, fastest at its steepest.
 * Source  see `drainage/runoff.ts` and `drainage/channel.ts`. Time of concentration by Kirpich, on the ground beyond and
 *         to the swale, then down its bed at the speed of the flow itself; at least five minutes.
 */
import type { Storm } from "../document/schema";
import { liningBears } from "../document/waterCovers";
import {
  atBorder,
  type Catchment,
  catchmentOf,
  criticalDepth,
  type Flow,
  froude,
  kirpichTime,
  leastTime,
  normalDepth,
  rationalPeak,
  weightedC,
  wetted,
} from "../drainage";
import { distanceToSegment, nearestOnPolyline } from "../geometry";
import { bedHeight, type GradingPlan } from "../grading";
import type { SwaleFlow, SwaleResult } from "./results";
import type { RoofDrip } from "./roof-water";
import { beyondTable, rainFor } from "./storm-rain";

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
): SwaleFlows {
  const caught = plan.swales.flatMap((line): Caught[] => {
    const result = results.find(({ id }) => id === line.swale.id);
    if (!result) return [];
    const left = (cell: number) => line.length - alongLine(line, flow, cell);
    return [{ line, result, left, ...catchmentOf(flow, bedCells(line, flow), left) }];
  });
  const to = storm.uphill > 0 ? uphillTo(caught, storm) : null;
  const found = caught.map((one) =>
    swaleFlow(one, { storm, drips, roofRunoff, uphill: one === to ? storm.uphill : 0 }),
  );
  return {
    flows: found.map((one) => one.flow),
    joining: found.map(({ joining }) => joining),
    uphillCells: to ? edgeCells(to, flow) : [],
  };
}

export interface SwaleFlows {
  readonly flows: readonly SwaleFlow[];
  readonly joining: readonly Joining[];
  /** Cells at the edge of the known ground over which the water of the ground beyond comes to its swale. */
  readonly uphillCells: readonly number[];
}

interface Caught extends Catchment {
  readonly line: Line;
  readonly result: SwaleResult;
  /** How far it is down the bed from the place of a cell, m. */
  readonly left: (cell: number) => number;
}

/** The swale that is named; else the one with the most ground that reaches the edge of what is known. */
function uphillTo(caught: readonly Caught[], { uphillTo: named }: Storm): Caught | null {
  const chosen = caught.find(({ result }) => result.id === named);
  if (chosen) return chosen;
  const open = caught.filter(({ touchesEdge }) => touchesEdge);
  return [...(open.length > 0 ? open : caught)].sort((a, b) => b.area - a.area)[0] ?? null;
}

function edgeCells({ part }: Caught, { grid }: Flow): number[] {
  const cells: number[] = [];
  for (let i = 0; i < part.length; i++) if ((part[i] as number) >= 0.5 && atBorder(i, grid)) cells.push(i);
  return cells;
}

/** Parts of each slope side's water that come to one swale, in the order of the sides. */
export interface Joining {
  readonly swale: string;
  readonly parts: readonly number[];
}

interface Rained {
  readonly storm: Storm;
  readonly drips: readonly RoofDrip[];
  readonly roofRunoff: number;
  /** Ground beyond the shots that drains to this swale, m2. */
  readonly uphill: number;
}

function swaleFlow(
  { line, result, left, area, longest, fall, entry, touchesEdge, part }: Caught,
  { storm, drips, roofRunoff, uphill }: Rained,
): { flow: SwaleFlow; joining: Joining } {
  const parts = drips.map(
    ({ cells }) => cells.reduce((sum, i) => sum + (part[i] as number), 0) / (cells.length || 1),
  );
  const roof = drips.reduce((sum, drip, i) => sum + drip.area * (parts[i] as number), 0);
  const catchment = area + uphill + roof;
  const inBed = entry < 0 ? 0 : left(entry);
  const runoff =
    weightedC([
      { c: storm.runoff, area },
      { c: storm.uphillRunoff ?? storm.runoff, area: uphill },
      { c: roofRunoff, area: roof },
    ]) ?? storm.runoff;
  const { bottomWidth: bottom, sideSlope } = line.swale;
  const kind = line.swale.shape === "dish" ? ("rounded" as const) : ("trapezoid" as const);
  const shape = { kind, bottom, sideSlope };
  const onGround = wayTime(longest, fall) + (uphill > 0 ? beyondTime(storm) : 0);
  const peakIn = (time: number) => {
    const rain = rainFor(storm, time);
    return { rain, peak: rain === null ? null : rationalPeak(runoff, rain, catchment) };
  };
  const depthOf = (peak: number | null) =>
    peak === null ? null : normalDepth(shape, peak, result.leastFall, storm.roughness);
  const time = gatheringTime(onGround, inBed, (so) => {
    const { peak } = peakIn(so);
    const deep = depthOf(peak);
    return peak === null || !deep ? null : peak / wetted(shape, deep).area;
  });
  const { rain: intensity, peak } = peakIn(time);
  const depth = depthOf(peak);
  const steepest = steepestFall(result);
  const fastest = peak === null ? null : normalDepth(shape, peak, steepest, storm.roughness);
  const speed = peak === null || !fastest ? null : peak / wetted(shape, fastest).area;
  const { room, roomAt } = leastRoom(result);
  const bears = storm.lining === null ? storm.mostSpeed : liningBears(storm.lining, steepest);
  const found: SwaleFlow = {
    id: result.id,
    catchment,
    longest: longest + inBed,
    fall:
      fall +
      (entry < 0 ? 0 : Math.max(0, bedHeight(line, line.length - inBed) - bedHeight(line, line.length))),
    inBed,
    touchesEdge,
    time,
    intensity,
    beyondTable: beyondTable(storm.table, time),
    roof,
    uphill,
    runoff,
    peak,
    depth,
    speed,
    steepest,
    froude: peak === null || fastest === null ? null : froude(shape, peak, fastest),
    critical: peak === null ? null : criticalDepth(shape, peak),
    bears,
    room,
    roomAt,
    verdict: verdictOf({ depth, speed, room, bears, freeboard: storm.freeboard }),
  };
  return { flow: found, joining: { swale: result.name, parts } };
}

/** Over the ground, then down the bed as fast as the storm runs in it; the two hang on each other, so in a few rounds. */
function gatheringTime(onGround: number, inBed: number, speedIn: (time: number) => number | null): number {
  let time = Math.max(leastTime, onGround);
  for (let round = 0; round < 4; round++) {
    const speed = speedIn(time);
    if (speed === null) break;
    time = Math.max(leastTime, onGround + inBed / speed);
  }
  return time;
}

function alongLine({ line }: Line, { grid }: Flow, cell: number): number {
  const [column, row] = [cell % grid.columns, Math.floor(cell / grid.columns)];
  return nearestOnPolyline(line, grid.x0 + (column + 0.5) * grid.cell, grid.y0 + (row + 0.5) * grid.cell)
    .along;
}

function wayTime(length: number, fall: number): number {
  return length > 0 && fall > 0 ? kirpichTime(length, fall / length) : 0;
}

/** Time that water takes on the ground beyond the shots, s. */
function beyondTime({ uphillLength, uphillFall }: Storm): number {
  return wayTime(uphillLength, uphillLength * uphillFall);
}

interface Carrying extends Pick<SwaleFlow, "depth" | "speed" | "room" | "bears"> {
  readonly freeboard: number;
}

function verdictOf({ depth, speed, room, bears, freeboard }: Carrying): SwaleFlow["verdict"] {
  if (depth === null) return null;
  if (room !== null && depth > room) return "overflows";
  if (speed !== null && (bears === null || speed > bears)) return "is scoured";
  return room !== null && depth + freeboard > room + 1e-9 ? "has too little room" : "carries it";
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
