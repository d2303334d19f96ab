/**
 * Labels beside a scale, moved apart so that none covers another, each as near its own height as can be.
 *
 * Method  labels in order of their wanted places; those that would touch form a block that lies at the mean
 *         of what its members want (the least sum of squared shifts: pooling of neighbours). A bar across the
 *         scale (the floor) parts the labels into those above and those below it.
 * Source  pool-adjacent-violators, as for isotonic regression (Ayer et al., 1955).
 */

export interface Interval {
  readonly from: number;
  readonly to: number;
}

interface Block {
  /** Sum of wanted places, each shifted to the block's first label. */
  sum: number;
  count: number;
}

/** Places for labels of one height between two ends; `wanted` must ascend. */
export function spreadBetween(wanted: readonly number[], height: number, room: Interval): number[] {
  const blocks: Block[] = [];
  for (const [i, place] of wanted.entries()) {
    blocks.push({ sum: place - i * height, count: 1 });
    while (blocks.length > 1) {
      const last = blocks[blocks.length - 1] as Block;
      const before = blocks[blocks.length - 2] as Block;
      if (before.sum / before.count <= last.sum / last.count) break;
      blocks.splice(-2, 2, { sum: before.sum + last.sum, count: before.count + last.count });
    }
  }
  const least = room.from + height / 2;
  const most = room.to - height / 2 - (wanted.length - 1) * height;
  const places: number[] = [];
  for (const { sum, count } of blocks) {
    const start = Math.max(least, Math.min(most, sum / count));
    for (let k = 0; k < count; k++) places.push(start + places.length * height);
  }
  return places;
}

/** As above, round a bar that covers part of the scale. The order of `wanted` is free; places come in it. */
export function spreadRound(
  wanted: readonly number[],
  height: number,
  room: Interval,
  bar: Interval | null,
): number[] {
  const order = wanted.map((_, i) => i).sort((a, b) => (wanted[a] as number) - (wanted[b] as number));
  const places = new Array<number>(wanted.length).fill(0);
  const put = (indices: readonly number[], within: Interval) => {
    const spread = spreadBetween(
      indices.map((i) => wanted[i] as number),
      height,
      within,
    );
    for (const [k, i] of indices.entries()) places[i] = spread[k] as number;
  };
  if (!bar) {
    put(order, room);
    return places;
  }
  const middle = (bar.from + bar.to) / 2;
  const wish = order.filter((i) => (wanted[i] as number) < middle).length;
  // Those that have no room on their own side of the bar stand on the other, next to the bar.
  const above = Math.floor((bar.from - room.from) / height + 1e-9);
  const below = Math.floor((room.to - bar.to) / height + 1e-9);
  const split = Math.min(Math.max(wish, order.length - Math.max(0, below)), Math.max(0, above));
  put(order.slice(0, split), { from: room.from, to: bar.from });
  put(order.slice(split), { from: bar.to, to: room.to });
  return places;
}
