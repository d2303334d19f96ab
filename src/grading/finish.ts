/**
 * The finished ground of a layout at one floor height, and what it takes outside the walls.
 *
 * Units   metres, m2, m3 in the ground.
 * Sign    depth = finished − existing: positive is fill, negative is cut.
 * Method  One clamp a cell; volumes are sums of depth × area outside the walls, which is exact where the
 *         depth is linear over a cell. The same cells give the volumes after the topsoil has been stripped
 *         and down to the underside of a drive's stone or of the topsoil that goes back.
 */
import type { Layout, OutsideCells } from "./layout";
import { finishHeights } from "./operators";

/** Buffers to write into, made by `newBuffers`; two pairs in turn keep a drag from making rubbish. */
export interface FinishBuffers {
  readonly finished: Float64Array;
  readonly depth: Float32Array;
}

/** Topsoil that comes off first and goes back on top at the end where there is no stone, m. */
export interface Topsoil {
  readonly stripDepth: number;
  readonly respread: number;
}

export interface OutsideVolumes {
  readonly cut: number;
  readonly fill: number;
  /** Ground disturbed outside the walls, m2. */
  readonly area: number;
  /** The part of cut + fill in cells whose ground is a guess. */
  readonly guessed: number;
  /** Earth to move once the topsoil is off, to the underside of the stone or of the topsoil that goes back. */
  readonly strippedCut: number;
  readonly strippedFill: number;
  /** The part of the area that ends as soil, not under stone, m2. */
  readonly soilArea: number;
  /** Depths keep their sign: the greatest cut is negative. */
  readonly greatestCut: { readonly depth: number; readonly cell: number } | null;
  readonly greatestFill: { readonly depth: number; readonly cell: number } | null;
}

export interface Finished extends FinishBuffers {
  readonly floor: number;
  readonly outside: OutsideVolumes;
}

/** A depth that counts as disturbed ground, m. */
const disturbed = 1e-3;

/** Depth is 0 where no act reaches and NaN inside the walls, at every floor: that is written here, once. */
export function newBuffers({ existing, cells }: Layout): FinishBuffers {
  const depth = new Float32Array(existing.length);
  for (let i = 0; i < depth.length; i++) if (cells.inside[i]) depth[i] = Number.NaN;
  return { finished: new Float64Array(existing.length), depth };
}

/** Finished ground in every cell. Cells inside the walls keep the existing height and have a depth of NaN. */
export function finish(
  layout: Layout,
  floor: number,
  topsoil: Topsoil,
  buffers: FinishBuffers = newBuffers(layout),
): Finished {
  const { finished, depth } = buffers;
  finishHeights(layout.prepared, floor, finished);
  writeDepth(layout, finished, depth);
  return { floor, finished, depth, outside: sumOutside(layout, floor, finished, topsoil) };
}

function writeDepth(
  { existing, prepared, cells }: Layout,
  finished: Float64Array,
  depth: Float32Array,
): void {
  const { touched } = prepared;
  for (let k = 0; k < touched.length; k++) {
    const i = touched[k] as number;
    if (!cells.inside[i]) depth[i] = (finished[i] as number) - (existing[i] as number);
  }
}

/**
 * Cells summed at a time. One long loop is compiled while it runs, and then makes a number on the heap for every cell;
 * a function that is called often is compiled whole.
 */
const block = 2048;

/** Volumes outside the walls, from the floor and the finished heights of the grid's cells at it. */
export function sumOutside(
  { outside, parts }: Layout,
  floor: number,
  finished: Float64Array,
  topsoil: Topsoil,
): OutsideVolumes {
  const sums = new Float64Array(7);
  const greatest = { cut: -disturbed, cutCell: -1, fill: disturbed, fillCell: -1 };
  const add = (cells: OutsideCells, heights: Float64Array) => {
    const count = cells.index.length;
    for (let from = 0; from < count; from += block)
      addCells(cells, heights, topsoil, from, Math.min(count, from + block), sums, greatest);
  };
  add(outside, finished);
  const { prepared } = parts;
  add(parts.outside, finishHeights(prepared, floor, new Float64Array(prepared.existing.length)));
  const [cut, fill, area, guessed, strippedCut, strippedFill, soilArea] = sums as unknown as Seven;
  return {
    cut,
    fill,
    area,
    guessed,
    strippedCut,
    strippedFill,
    soilArea,
    greatestCut: greatest.cutCell < 0 ? null : { depth: greatest.cut, cell: greatest.cutCell },
    greatestFill: greatest.fillCell < 0 ? null : { depth: greatest.fill, cell: greatest.fillCell },
  };
}

type Seven = [number, number, number, number, number, number, number];

function addCells(
  { index, cell, existing, weight: weights, stone, guessed }: OutsideCells,
  finished: Float64Array,
  { stripDepth, respread }: Topsoil,
  from: number,
  to: number,
  sums: Float64Array,
  greatest: { cut: number; cutCell: number; fill: number; fillCell: number },
): void {
  let cut = 0;
  let fill = 0;
  let area = 0;
  let inDoubt = 0;
  let strippedCut = 0;
  let strippedFill = 0;
  let soilArea = 0;
  for (let k = from; k < to; k++) {
    const weight = weights[k] as number;
    const depth = (finished[index[k] as number] as number) - (existing[k] as number);
    const under = stone[k] as number;
    const volume = depth * weight;
    if (depth > 0) fill += volume;
    else cut -= volume;
    if (guessed[k]) inDoubt += Math.abs(volume);
    if (depth > greatest.fill) {
      greatest.fill = depth;
      greatest.fillCell = cell[k] as number;
    } else if (depth < greatest.cut) {
      greatest.cut = depth;
      greatest.cutCell = cell[k] as number;
    }
    if (under === 0 && depth < disturbed && depth > -disturbed) continue;
    area += weight;
    if (under === 0) soilArea += weight;
    const earth = (depth + stripDepth - (under > 0 ? under : respread)) * weight;
    if (earth > 0) strippedFill += earth;
    else strippedCut -= earth;
  }
  const added = [cut, fill, area, inDoubt, strippedCut, strippedFill, soilArea];
  for (let n = 0; n < added.length; n++) sums[n] = (sums[n] as number) + (added[n] as number);
}
