/**
 * The finished ground of a layout at one floor height, and what it takes outside the walls.
 *
 * Units   metres, m2, m3 in the ground.
 * Sign    depth = finished − existing: positive is fill, negative is cut.
 * Method  One clamp a cell; volumes are sums of depth × area outside the walls, which is exact where the
 *         depth is linear over a cell. The same cells give the volumes after the topsoil has been stripped
 *         and down to the underside of a drive's stone or of the topsoil that goes back.
 */
import type { Layout } from "./layout";
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
  return { floor, finished, depth, outside: sumOutside(layout, finished, topsoil) };
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

/** Volumes outside the walls from finished heights. */
export function sumOutside(layout: Layout, finished: Float64Array, topsoil: Topsoil): OutsideVolumes {
  const { existing, guessed, cells, prepared } = layout;
  const { touched, stone } = prepared;
  const sum = { cut: 0, fill: 0, area: 0, guessed: 0, strippedCut: 0, strippedFill: 0, soilArea: 0 };
  const { stripDepth, respread } = topsoil;
  let deepest = -disturbed;
  let highest = disturbed;
  let cutCell = -1;
  let fillCell = -1;
  for (let k = 0; k < touched.length; k++) {
    const i = touched[k] as number;
    const weight = cells.weight[i] as number;
    if (weight === 0) continue;
    const depth = (finished[i] as number) - (existing[i] as number);
    const under = stone[k] as number;
    const volume = depth * weight;
    if (depth > 0) sum.fill += volume;
    else sum.cut -= volume;
    if (guessed[i]) sum.guessed += Math.abs(volume);
    if (depth > highest) {
      highest = depth;
      fillCell = i;
    } else if (depth < deepest) {
      deepest = depth;
      cutCell = i;
    }
    if (under === 0 && depth < disturbed && depth > -disturbed) continue;
    sum.area += weight;
    if (under === 0) sum.soilArea += weight;
    const earth = (depth + stripDepth - (under > 0 ? under : respread)) * weight;
    if (earth > 0) sum.strippedFill += earth;
    else sum.strippedCut -= earth;
  }
  return {
    ...sum,
    greatestCut: cutCell < 0 ? null : { depth: deepest, cell: cutCell },
    greatestFill: fillCell < 0 ? null : { depth: highest, cell: fillCell },
  };
}
