/** What the page and its reading worker tell each other. */
import type { RasterWish, ReadResult, TableMapping, ThinnedPoints } from "../../files/incoming";

export interface ReadRequest {
  readonly name: string;
  readonly bytes: Uint8Array;
  /** How a table is taken; other kinds of files say it themselves. */
  readonly mapping: TableMapping | null;
  /** Which part of a grid of heights, and how many of them; null: all, thinned as usual. */
  readonly raster: RasterWish | null;
}

/** What was read, and where that is a crowd of points also a thinner one. */
export interface ReadAnswer {
  readonly result: ReadResult;
  readonly thinned: ThinnedPoints | null;
}

export type ReadReply = { readonly share: number } | ReadAnswer;
