/**
 * Where fill or cut meets the ground as it is.
 *
 * Units   metres.
 * Method  How far the nearest limit lies beyond the ground is followed as a field: positive where an act
 *         changes the ground, negative where it doesn't; its zero line is the daylight line. A line of
 *         finished = existing inside graded ground (from cut to fill) only touches zero and isn't drawn.
 */
import { gridContours } from "../terrain";
import type { Layout } from "./layout";

/** Daylight lines of a layout at a floor height, flat x, y. */
export function daylightLines(layout: Layout, floor: number): Float64Array[] {
  const { inside } = layout.cells;
  return gridContours(actField(layout, floor), layout.grid, [0], (i) => inside[i] === 0)[0] ?? [];
}

function actField(layout: Layout, floor: number): Float64Array {
  const { existing, pad, drives, swales } = layout.prepared;
  const z = Float64Array.from(existing);
  // Places that no act reaches are about as far from one as their neighbours: a cell's worth of slope.
  const field = new Float64Array(z.length).fill(-layout.grid.cell / 3);
  const pass = (i: number, low: number, high: number) => {
    const before = z[i] as number;
    field[i] = Math.max(field[i] as number, low - before, before - high);
    z[i] = Math.min(Math.max(before, low), high);
  };
  pad.index.forEach((i, k) => {
    pass(i, floor + (pad.lower[k] as number), floor + (pad.upper[k] as number));
  });
  for (const { index, base, share, spread } of drives) {
    index.forEach((i, k) => {
      const height = (base[k] as number) + (share[k] as number) * floor;
      pass(i, height - (spread[k] as number), height + (spread[k] as number));
    });
  }
  for (const { index, upper } of swales) {
    index.forEach((i, k) => {
      pass(i, Number.NEGATIVE_INFINITY, upper[k] as number);
    });
  }
  return field;
}
