/** The roof's water: how much of it comes down where, and what it joins. */
import type { Drainage, Storm } from "../document/schema";
import { type Flow, leastTime, rationalPeak, roofParts } from "../drainage";
import { between, containsPoint, type Point } from "../geometry";
import type { Footprint } from "../grading";
import type { RoofSide } from "./results";
import { rainFor } from "./storm-rain";
import type { Joining } from "./swale-flow";

/** A slope side, and the cells of the grid where its water comes to the ground, in even parts. */
export interface RoofDrip {
  readonly wall: number;
  readonly area: number;
  readonly outlet: Point | null;
  readonly cells: readonly number[];
}

/** Places along an eave at which its drip is followed, and how far out of the walls at least, m. */
const alongEave = 24;
const leastOut = 0.3;

export function roofDrips({ ring }: Footprint, roof: Drainage["roof"], flow: Flow): RoofDrip[] | null {
  const parts = roofParts(ring, roof);
  if (!parts) return null;
  return parts.map(({ wall, area, eave }) => {
    const outlet = roof.outlets.find((one) => one.wall === wall)?.at ?? null;
    const places =
      outlet && comesOut(outlet, ring, flow)
        ? [outlet]
        : eavePlaces(eave, ring, wall, roof.overhang, flow.grid.cell);
    return { wall, area, outlet, cells: places.flatMap((at) => cellAt(flow, at)) };
  });
}

/** Within the walls, or beyond the ground that is known, water comes out nowhere: it counts as dripping along the eave. */
export function comesOut(outlet: Point, ring: readonly Point[], flow: Pick<Flow, "grid">): boolean {
  return !containsPoint(ring, outlet[0], outlet[1]) && cellAt(flow, outlet).length > 0;
}

/** Along the eave, but at least a cell clear of the wall: water can't land within it. */
function eavePlaces(
  [a, b]: readonly [Point, Point],
  ring: readonly Point[],
  wall: number,
  overhang: number,
  cell: number,
): Point[] {
  const [c, d] = [ring[wall] as Point, ring[(wall + 1) % ring.length] as Point];
  const more = Math.max(0, Math.max(leastOut, 1.5 * cell) - overhang);
  const length = Math.hypot(d[0] - c[0], d[1] - c[1]) || 1;
  const [nx, ny] =
    overhang > 0
      ? [(a[0] - c[0]) / overhang, (a[1] - c[1]) / overhang]
      : [(d[1] - c[1]) / length, -(d[0] - c[0]) / length];
  return Array.from({ length: alongEave }, (_, k) => {
    const [x, y] = between(a, b, (k + 0.5) / alongEave);
    return [x + nx * more, y + ny * more];
  });
}

function cellAt({ grid }: Pick<Flow, "grid">, [x, y]: Point): number[] {
  const column = Math.floor((x - grid.x0) / grid.cell);
  const row = Math.floor((y - grid.y0) / grid.cell);
  const on = column >= 0 && row >= 0 && column < grid.columns && row < grid.rows;
  return on ? [row * grid.columns + column] : [];
}

/** Each slope side with its peak and volume, and the swale that most of it comes to. */
export function roofSides(
  { walls }: Footprint,
  { runoff }: Drainage["roof"],
  storm: Storm,
  drips: readonly RoofDrip[],
  joining: readonly Joining[],
): RoofSide[] {
  const rain = rainFor(storm, leastTime);
  return drips.map(({ wall, area, outlet }, i) => {
    const most = joining.reduce<Joining | null>(
      (best, one) => ((one.parts[i] ?? 0) > (best?.parts[i] ?? 0) ? one : best),
      null,
    );
    return {
      wall,
      name: walls[wall]?.name ?? "",
      area,
      peak: rain === null ? null : rationalPeak(runoff, rain, area),
      volume: storm.depth === null ? null : runoff * storm.depth * area,
      outlet: outlet && [outlet[0], outlet[1]],
      joins: most?.swale ?? null,
      joining: most?.parts[i] ?? 0,
    };
  });
}

/** While the roof's shape isn't known its water is taken to come down evenly round the walls. */
export function shedAround({ area }: Footprint, { grid }: Flow, inside: Uint8Array): RoofDrip[] {
  const { columns } = grid;
  const cells: number[] = [];
  for (let i = columns + 1; i < inside.length - columns - 1; i++) {
    const beside = inside[i - 1] || inside[i + 1] || inside[i - columns] || inside[i + columns];
    if (!inside[i] && beside) cells.push(i);
  }
  return cells.length > 0 ? [{ wall: 0, area, outlet: null, cells }] : [];
}
