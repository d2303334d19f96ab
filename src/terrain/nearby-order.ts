/**
 * Triangles numbered so that those near each other on the plan are near each other in memory: a walk through a large
 * surface then finds its next triangle at hand. Rows of square cells, to and fro.
 */
import type { Mesh } from "./mesh";

/** A surface of fewer triangles is at hand as a whole. */
const small = 50_000;
/** Triangles in a cell, about. */
const inCell = 8;

/** The same triangles in order of their place; a small surface is left as it is. */
export function inNearbyOrder(
  part: Pick<Mesh, "triangles" | "halfedges">,
  x: Float64Array,
  y: Float64Array,
): Pick<Mesh, "triangles" | "halfedges"> {
  const { triangles, halfedges } = part;
  const count = triangles.length / 3;
  if (count < small) return part;
  const movedTo = newNumbers(triangles, x, y);
  const moved = { triangles: new Uint32Array(3 * count), halfedges: new Int32Array(3 * count) };
  for (let t = 0; t < count; t++) {
    const to = 3 * (movedTo[t] as number);
    for (let k = 0; k < 3; k++) {
      const twin = halfedges[3 * t + k] as number;
      moved.triangles[to + k] = triangles[3 * t + k] as number;
      const other = (twin / 3) | 0;
      moved.halfedges[to + k] = twin < 0 ? -1 : 3 * (movedTo[other] as number) + twin - 3 * other;
    }
  }
  return moved;
}

/** For each triangle its new number, by the cell of its first corner. Method: counting sort. */
function newNumbers(triangles: Uint32Array, x: Float64Array, y: Float64Array): Uint32Array {
  const count = triangles.length / 3;
  const across = Math.ceil(Math.sqrt(count / inCell));
  const cells = cellsOf(x, y, across);
  const starts = new Uint32Array(across * across + 1);
  for (let e = 0; e < triangles.length; e += 3) {
    const cell = cells[triangles[e] as number] as number;
    starts[cell + 1] = (starts[cell + 1] as number) + 1;
  }
  for (let cell = 0; cell < across * across; cell++)
    starts[cell + 1] = (starts[cell + 1] as number) + (starts[cell] as number);
  const numbers = new Uint32Array(count);
  for (let t = 0; t < count; t++) {
    const cell = cells[triangles[3 * t] as number] as number;
    const number = starts[cell] as number;
    starts[cell] = number + 1;
    numbers[t] = number;
  }
  return numbers;
}

function cellsOf(x: Float64Array, y: Float64Array, across: number): Uint32Array {
  const [west, east] = ends(x);
  const [south, north] = ends(y);
  const perMetre = (across * (1 - 1e-9)) / Math.max(east - west, north - south);
  const cells = new Uint32Array(x.length);
  for (let i = 0; i < x.length; i++) {
    const column = Math.floor(((x[i] as number) - west) * perMetre);
    const row = Math.floor(((y[i] as number) - south) * perMetre);
    cells[i] = row * across + (row % 2 === 0 ? column : across - 1 - column);
  }
  return cells;
}

function ends(values: Float64Array): [number, number] {
  let low = Infinity;
  let high = -Infinity;
  for (const value of values) {
    if (value < low) low = value;
    if (value > high) high = value;
  }
  return [low, high];
}
