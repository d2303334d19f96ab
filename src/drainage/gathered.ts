/** Ways along which water gathers: from where enough ground drains to a cell, downhill until they join or leave. */
import type { Gathered } from "../solve/results";
import type { Flow } from "./flow";

/** `least`: area that must drain to a cell before a way begins there, m2. Shorter ones than `shortest` m are left out. */
export function gatheredWays(flow: Flow, least: number, shortest: number): Gathered[] {
  const { grid, area, order, first, second, share } = flow;
  const next = (i: number) => ((share[i] as number) >= 0.5 ? first[i] : second[i]) as number;
  const isFed = new Uint8Array(area.length);
  for (let k = 0; k < order.length; k++) {
    const i = order[k] as number;
    if ((area[i] as number) < least) continue;
    const on = next(i);
    if (on >= 0) isFed[on] = 1;
  }
  const taken = new Uint8Array(area.length);
  const ways: Gathered[] = [];
  for (let k = 0; k < order.length; k++) {
    const start = order[k] as number;
    if (isFed[start] || (area[start] as number) < least) continue;
    const cells: number[] = [];
    for (let i = start; i >= 0; i = next(i)) {
      cells.push(i);
      if (taken[i]) break;
      taken[i] = 1;
    }
    if (cells.length * grid.cell < shortest) continue;
    const line = Float64Array.from(
      cells.flatMap((i) => [
        grid.x0 + ((i % grid.columns) + 0.5) * grid.cell,
        grid.y0 + (Math.floor(i / grid.columns) + 0.5) * grid.cell,
      ]),
    );
    ways.push({ line: smoothed(line), area: area[cells.at(-1) as number] as number });
  }
  return ways.sort((a, b) => b.area - a.area);
}

/** Each inner place at the mean of itself and its neighbours, twice: the grid's stairs are no bends of the water. */
export function smoothed(line: Float64Array): Float64Array {
  let now = line;
  for (let pass = 0; pass < 2; pass++) {
    const before = now;
    now = before.map((value, k) =>
      k < 2 || k >= before.length - 2
        ? value
        : ((before[k - 2] as number) + 2 * value + (before[k + 2] as number)) / 4,
    );
  }
  return now;
}
