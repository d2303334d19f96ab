/** Blocks poured into columns, page after page. */
import type { Block } from "./block";
import type { Rect } from "./papers";

export interface Placed {
  readonly block: Block;
  readonly x: number;
  readonly y: number;
  readonly width: number;
}

/**
 * Pours blocks into columns from the top, in order. A block that doesn't fit any more is broken where it may be,
 * or goes to the next column. With `breakWhole` a block is broken also where the next column would hold it whole.
 *
 * Units  mm; `size` is the text size.
 */
export function pour(
  blocks: readonly Block[],
  columns: readonly Rect[],
  size: number,
  breakWhole = false,
): { readonly placed: readonly Placed[]; readonly rest: readonly Block[] } {
  const placed: Placed[] = [];
  const queue = [...blocks];
  for (const column of columns) {
    let y = column.y;
    const end = column.y + column.height;
    for (let block = queue[0]; block; block = queue[0]) {
      const height = block.height(column.width, size);
      if (y + height <= end + 1e-6) {
        placed.push({ block, x: column.x, y, width: column.width });
        queue.shift();
        y += height;
        continue;
      }
      const whole = height <= column.height && !breakWhole;
      const parts = whole ? null : block.split?.(column.width, size, end - y);
      if (!parts) break;
      queue.splice(0, 1, ...parts);
    }
  }
  return { placed, rest: queue };
}

/** Puts each block whole into the first column that has room for it, in order. */
export function firstFit(
  blocks: readonly Block[],
  columns: readonly Rect[],
  size: number,
): { readonly placed: readonly Placed[]; readonly rest: readonly Block[] } {
  const filled = columns.map((column) => ({ column, y: column.y, placed: [] as Placed[] }));
  const rest: Block[] = [];
  for (const block of blocks) {
    const room = filled.find(
      ({ column, y }) => y + block.height(column.width, size) <= column.y + column.height + 1e-6,
    );
    if (!room) {
      rest.push(block);
      continue;
    }
    const { x, width } = room.column;
    room.placed.push({ block, x, y: room.y, width });
    room.y += block.height(width, size);
  }
  return { placed: filled.flatMap(({ placed }) => placed), rest };
}

/**
 * Which blocks go on the first page: taken by importance (their order in `byImportance`) as long as they fit,
 * then poured in reading order; the others are left for further pages.
 */
export function chooseFirst(
  reading: readonly Block[],
  byImportance: readonly string[],
  columns: readonly Rect[],
  size: number,
): { readonly placed: readonly Placed[]; readonly rest: readonly Block[] } {
  let chosen: readonly Block[] = [];
  let placed: readonly Placed[] = [];
  for (const name of byImportance) {
    const wanted = reading.filter((block) => block.name === name || chosen.includes(block));
    const tried = [pour(wanted, columns, size), firstFit(wanted, columns, size)].find(
      ({ rest, placed }) => rest.length === 0 && placed.length === wanted.length,
    );
    if (!tried) continue;
    chosen = wanted;
    placed = tried.placed;
  }
  return { placed, rest: reading.filter((block) => !chosen.includes(block)) };
}
