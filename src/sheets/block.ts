/** A piece of a column: measured first, then drawn. */
import type { Pen } from "./pen";

export interface Block {
  /** For tests and for finding it again. */
  readonly name: string;
  /** Height at a column width, mm, its own margins included. */
  height(width: number, size: number): number;
  draw(pen: Pen, x: number, y: number, width: number, size: number): void;
  /** Parts of at most `room` mm, where the block may be broken; null where it may not. */
  split?(width: number, size: number, room: number): readonly [Block, Block] | null;
}

/** Free paper left and right, and above and below, of a block's content, mm. */
export const paddingX = 4;
export const paddingY = 2.6;
/** Size of a block's heading over its text's. */
export const headingScale = 1.15;
/** Line pitch over text size. */
export const pitch = 1.3;
/** Heading with the space under it, over the text size. */
export const headingPitch = 1.75;
