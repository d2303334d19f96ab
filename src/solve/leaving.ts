/**
 * What leaves the lot over each of its lines, before and after.
 *
 * Units   m2, m3/s.
 * Method  The area that drains from cells inside the lot to cells outside it, on the ground as it is and as planned (hollows
 *         filled), told to the nearest lot line. The roof's water comes down where it does; while its shape isn't known,
 *         evenly round the walls. Water of the ground beyond the shots comes in over the edge cells that drain to its swale, on
 *         both grounds. Peaks by the rational formula with the ground's C and the roof's, and the rain of the
 *         shortest storm for both, so that they can be compared.
 * Source  First principles on the flow of `drainage/flow.ts`.
 * Error   A cell along each line. Drives and paving count as the ground about them.
 */
import type { Lot, Storm } from "../document/schema";
import { type Flow, gatheredFrom, leastTime } from "../drainage";
import { between, distanceToSegment, type Point } from "../geometry";
import { centresInside } from "../grading";
import type { LeavingWater } from "./results";
import type { RoofDrip } from "./roof-water";
import { rainFor } from "./storm-rain";

/** More than this much, and this share, counts as more, m2 of ground: the grid is no finer. */
const leastRise = 10;
const leastShare = 0.03;

export function leavingWater(
  lot: Lot["outline"],
  before: Flow,
  after: Flow,
  storm: Storm,
  drips: readonly RoofDrip[],
  roofRunoff: number,
  uphillCells: readonly number[],
): LeavingWater[] {
  if (lot.length < 3) return [];
  const inside = centresInside(after.grid, lot);
  const rain = rainFor(storm, leastTime);
  const own = new Float64Array(inside.length).fill(after.grid.cell ** 2);
  const runoff = own.map((area) => area * storm.runoff);
  for (const i of uphillCells) {
    const area = storm.uphill / uphillCells.length;
    own[i] = (own[i] as number) + area;
    runoff[i] = (runoff[i] as number) + area * (storm.uphillRunoff ?? storm.runoff);
  }
  const roofed = own.slice();
  const shed = runoff.slice();
  for (const { area, cells } of drips) {
    for (const i of cells) {
      roofed[i] = (roofed[i] as number) + area / cells.length;
      shed[i] = (shed[i] as number) + (roofRunoff * area) / cells.length;
    }
  }
  const was = overLines(lot, before, inside, gatheredFrom(before, own));
  const is = overLines(lot, after, inside, gatheredFrom(after, roofed));
  const ranOff = overLines(lot, before, inside, gatheredFrom(before, runoff));
  const runsOff = overLines(lot, after, inside, gatheredFrom(after, shed));
  return lot.map((corner, line) => {
    const [old, now] = [was[line] as number, is[line] as number];
    const [offBefore, off] = [ranOff[line] as number, runsOff[line] as number];
    const more = (off - offBefore) / (storm.runoff || 1);
    return {
      line,
      middle: [...between(corner, lot[(line + 1) % lot.length] as Point, 0.5)] as [number, number],
      before: old,
      after: now,
      peakBefore: rain === null ? null : rain * offBefore,
      peakAfter: rain === null ? null : rain * off,
      growth: old > 0 ? more / old : null,
      rises: more > leastRise && more > leastShare * old,
    };
  });
}

function overLines(lot: Lot["outline"], flow: Flow, inside: Uint8Array, comes: Float64Array): number[] {
  const { grid, first, second, share, order } = flow;
  const sums = lot.map(() => 0);
  const leave = (i: number, to: number, part: number) => {
    if (part <= 0 || (to >= 0 && inside[to])) return;
    const [x, y] = centre(grid, i);
    let [line, least] = [0, Number.POSITIVE_INFINITY];
    lot.forEach((a, k) => {
      const away = distanceToSegment(a, lot[(k + 1) % lot.length] as Point, x, y);
      if (away < least) [line, least] = [k, away];
    });
    sums[line] = (sums[line] as number) + part * (comes[i] as number);
  };
  for (let k = 0; k < order.length; k++) {
    const i = order[k] as number;
    if (!inside[i]) continue;
    const toFirst = share[i] as number;
    leave(i, first[i] as number, toFirst);
    if ((second[i] as number) >= 0) leave(i, second[i] as number, 1 - toFirst);
  }
  return sums;
}

function centre({ x0, y0, cell, columns }: Flow["grid"], i: number): [number, number] {
  return [x0 + ((i % columns) + 0.5) * cell, y0 + (Math.floor(i / columns) + 0.5) * cell];
}
