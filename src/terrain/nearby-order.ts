/**
 * Points and triangles in an order in which those near each other on the plan are near each other in memory: large
 * surfaces are made and walked through several times as fast. Rows of square cells, to and fro.
 */
import type { Mesh } from "./mesh";

/** Points in a cell, about. */
const inCell = 4;

/** Indices of the points (x0, y0, x1, y1, ...) in order of their place. Method: counting sort by cell. */
export function nearbyOrder(units: Float64Array): Uint32Array {
  const count = units.length >> 1;
  const across = Math.ceil(Math.sqrt(count / inCell));
  const cells = cellsOf(units, across);
  const starts = new Uint32Array(across * across + 1);
  for (let i = 0; i < count; i++) {
    const after = (cells[i] as number) + 1;
    starts[after] = (starts[after] as number) + 1;
  }
  for (let c = 0; c < across * across; c++) starts[c + 1] = (starts[c + 1] as number) + (starts[c] as number);
  const order = new Uint32Array(count);
  for (let i = 0; i < count; i++) {
    const cell = cells[i] as number;
    const at = starts[cell] as number;
    starts[cell] = at + 1;
    order[at] = i;
  }
  return order;
}

function cellsOf(units: Float64Array, across: number): Uint32Array {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (let i = 0; i < units.length; i += 2) {
    const x = units[i] as number;
    const y = units[i + 1] as number;
    if (x < minX) minX = x;
    if (x > maxX) maxX = x;
    if (y < minY) minY = y;
    if (y > maxY) maxY = y;
  }
  const perUnit = (across * (1 - 1e-9)) / Math.max(maxX - minX, maxY - minY, 1);
  const cells = new Uint32Array(units.length >> 1);
  for (let i = 0; i < cells.length; i++) {
    const column = Math.floor(((units[2 * i] as number) - minX) * perUnit);
    const row = Math.floor(((units[2 * i + 1] as number) - minY) * perUnit);
    cells[i] = row * across + (row % 2 === 0 ? column : across - 1 - column);
  }
  return cells;
}

/** The same triangles, none of them fixed, numbered in the order of their first corners. Method: counting sort. */
export function byFirstCorner({ units, triangles, halfedges, fixed }: Mesh): Mesh {
  const starts = new Uint32Array((units.length >> 1) + 1);
  for (let e = 0; e < triangles.length; e += 3) {
    const after = (triangles[e] as number) + 1;
    starts[after] = (starts[after] as number) + 1;
  }
  for (let i = 1; i < starts.length; i++) starts[i] = (starts[i] as number) + (starts[i - 1] as number);
  const movedTo = new Uint32Array(triangles.length / 3); // first half-edge of a triangle's new place
  for (let t = 0; t < movedTo.length; t++) {
    const corner = triangles[3 * t] as number;
    const at = starts[corner] as number;
    starts[corner] = at + 1;
    movedTo[t] = 3 * at;
  }
  const moved = { triangles: new Uint32Array(triangles.length), halfedges: new Int32Array(triangles.length) };
  for (let t = 0; t < movedTo.length; t++) {
    const to = movedTo[t] as number;
    for (let k = 0; k < 3; k++) {
      const twin = halfedges[3 * t + k] as number;
      const other = (twin / 3) | 0;
      moved.triangles[to + k] = triangles[3 * t + k] as number;
      moved.halfedges[to + k] = twin < 0 ? -1 : (movedTo[other] as number) + twin - 3 * other;
    }
  }
  return { units, fixed, ...moved };
}
