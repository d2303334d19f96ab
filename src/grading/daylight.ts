/**
 * Where fill or cut meets the ground as it is.
 *
 * Units   metres.
 * Method  How far the nearest limit lies beyond the ground is followed as a field: positive where an act
 *         changes the ground, negative where it doesn't; its zero line is the daylight line. A line of
 *         finished = existing inside graded ground (from cut to fill) only touches zero and isn't drawn. The grid
 *         finds the line; each of its places is then moved along the field's slope until limit and ground
 *         are at one height there on the triangles themselves, by less than a tenth of a millimetre.
 */
import { type Ground, gridContours, groundAt, locate } from "../terrain";
import type { Layout } from "./layout";
import { noLimits, type Operator } from "./operator";
import { operatorsOf } from "./operators";

/** A place whose limit is this near to the ground is on the line, m. */
const close = 1e-4;
/** Steps of mending a place; where it doesn't come to rest (at kinks of the ground) the grid's place stays. */
const mostSteps = 8;

/** Daylight lines of a layout at a floor height, flat x, y. Without a ground as exact as the grid, which is quicker. */
export function daylightLines(layout: Layout, floor: number, ground: Ground | null = null): Float64Array[] {
  const { inside } = layout.cells;
  const found = gridContours(actField(layout, floor), layout.grid, [0], (i) => inside[i] === 0)[0] ?? [];
  if (!ground) return found;
  const fieldAt = exactField(operatorsOf(layout.plan), ground, floor);
  return found.map((line) => mended(line, fieldAt, layout.grid.cell));
}

function actField(layout: Layout, floor: number): Float64Array {
  const { existing, acts } = layout.prepared;
  const z = Float64Array.from(existing);
  // Places that no act reaches are about as far from one as their neighbours: a cell's worth of slope.
  const field = new Float64Array(z.length).fill(-layout.grid.cell / 3);
  for (const { index, lower, upper, share } of acts) {
    for (let k = 0; k < index.length; k++) {
      const i = index[k] as number;
      const rise = (share[k] as number) * floor;
      const low = (lower[k] as number) + rise;
      const high = (upper[k] as number) + rise;
      const before = z[i] as number;
      field[i] = Math.max(field[i] as number, low - before, before - high);
      z[i] = before < low ? low : Math.min(before, high);
    }
  }
  return field;
}

type Field = (x: number, y: number) => number;

/** The same field at any place, from the acts themselves; NaN beyond the ground. */
function exactField(operators: readonly Operator[], ground: Ground, floor: number): Field {
  const limits = noLimits();
  let from = 0;
  return (x, y) => {
    const triangle = locate(ground.tin, x, y, from);
    const there = triangle < 0 ? null : groundAt(ground, x, y, triangle);
    if (!there) return Number.NaN;
    from = triangle;
    let z = there.z;
    let field = Number.NEGATIVE_INFINITY;
    for (const operator of operators) {
      operator.limitsAt(x, y, there.z, limits);
      const low = limits.lower + limits.share * floor;
      const high = limits.upper + limits.share * floor;
      field = Math.max(field, low - z, z - high);
      z = z < low ? low : Math.min(z, high);
    }
    return field;
  };
}

function mended(line: Float64Array, fieldAt: Field, cell: number): Float64Array {
  const out = Float64Array.from(line);
  for (let i = 0; i + 1 < out.length; i += 2) {
    const place = onLine(out[i] as number, out[i + 1] as number, fieldAt, cell);
    if (!place) continue;
    out[i] = place[0];
    out[i + 1] = place[1];
  }
  return out;
}

/** Newton's steps along the field's slope; null where they leave the cell or don't come to rest. */
function onLine(x0: number, y0: number, fieldAt: Field, cell: number): [number, number] | null {
  const reach = 1e-4;
  let [x, y] = [x0, y0];
  for (let n = 0; n < mostSteps; n++) {
    const value = fieldAt(x, y);
    if (Math.abs(value) < close) return [x, y];
    const gx = (fieldAt(x + reach, y) - fieldAt(x - reach, y)) / (2 * reach);
    const gy = (fieldAt(x, y + reach) - fieldAt(x, y - reach)) / (2 * reach);
    const steep = gx * gx + gy * gy;
    if (!(steep > 1e-6)) return null;
    x -= (value * gx) / steep;
    y -= (value * gy) / steep;
    if (!(Math.hypot(x - x0, y - y0) < 1.5 * cell)) return null;
  }
  return null;
}
