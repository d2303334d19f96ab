/**
 * Places near a place, found without looking at all of them: a plan may have ten thousand shots.
 *
 * Method  places sorted into square cells, about one to a cell; a search looks at the cells within reach.
 */
import type { SnapPoint } from "./targets";

interface Cells {
  readonly minX: number;
  readonly minY: number;
  readonly size: number;
  readonly columns: number;
  readonly rows: number;
  /** Places of cell i are those from starts[i] up to starts[i + 1] of `order`. */
  readonly starts: Int32Array;
  readonly order: Int32Array;
}

/** Fewer are looked through one by one. */
const few = 64;
/** A list of targets is never changed in place, so its cells are made once. */
const cellsOf = new WeakMap<readonly SnapPoint[], Cells>();

/** The nearest place within reach that is wanted; of two at one place the first of the list. */
export function nearestOf(
  points: readonly SnapPoint[],
  at: readonly [number, number],
  reach: number,
  wanted: (point: SnapPoint) => boolean,
): SnapPoint | null {
  let best = -1;
  let bestDistance = reach;
  const look = (i: number) => {
    const point = points[i] as SnapPoint;
    const d = Math.hypot(point.at[0] - at[0], point.at[1] - at[1]);
    if (d > bestDistance || (d === bestDistance && (best < 0 || i > best)) || !wanted(point)) return;
    best = i;
    bestDistance = d;
  };
  if (points.length < few) for (let i = 0; i < points.length; i++) look(i);
  else lookAround(cellsFor(points), at, reach, look);
  return points[best] ?? null;
}

function lookAround(
  cells: Cells,
  [x, y]: readonly [number, number],
  reach: number,
  look: (i: number) => void,
): void {
  const column = (v: number) => Math.floor((v - cells.minX) / cells.size);
  const row = (v: number) => Math.floor((v - cells.minY) / cells.size);
  const [firstColumn, lastColumn] = [
    Math.max(0, column(x - reach)),
    Math.min(cells.columns - 1, column(x + reach)),
  ];
  const [firstRow, lastRow] = [Math.max(0, row(y - reach)), Math.min(cells.rows - 1, row(y + reach))];
  for (let r = firstRow; r <= lastRow; r++) {
    // The cells of a row lie in one run.
    const from = cells.starts[r * cells.columns + firstColumn] ?? 0;
    const to = firstColumn <= lastColumn ? (cells.starts[r * cells.columns + lastColumn + 1] ?? 0) : from;
    for (let k = from; k < to; k++) look(cells.order[k] as number);
  }
}

function cellsFor(points: readonly SnapPoint[]): Cells {
  const known = cellsOf.get(points);
  if (known) return known;
  const made = sorted(points);
  cellsOf.set(points, made);
  return made;
}

function sorted(points: readonly SnapPoint[]): Cells {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const { at } of points) {
    minX = Math.min(minX, at[0]);
    maxX = Math.max(maxX, at[0]);
    minY = Math.min(minY, at[1]);
    maxY = Math.max(maxY, at[1]);
  }
  const [width, height] = [maxX - minX, maxY - minY];
  const most = Math.ceil(Math.sqrt(points.length)) * 4;
  const size = Math.max(Math.sqrt((width * height) / points.length), width / most, height / most, 1e-6);
  const columns = Math.floor(width / size) + 1;
  const rows = Math.floor(height / size) + 1;
  const cell = ({ at }: SnapPoint) =>
    Math.floor((at[1] - minY) / size) * columns + Math.floor((at[0] - minX) / size);
  const starts = new Int32Array(columns * rows + 1);
  for (const point of points) starts[cell(point) + 1] = (starts[cell(point) + 1] as number) + 1;
  for (let i = 1; i < starts.length; i++) starts[i] = (starts[i] as number) + (starts[i - 1] as number);
  const next = starts.slice();
  const order = new Int32Array(points.length);
  for (const [i, point] of points.entries()) {
    const k = next[cell(point)] as number;
    order[k] = i;
    next[cell(point)] = k + 1;
  }
  return { minX, minY, size, columns, rows, starts, order };
}
