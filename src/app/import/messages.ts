/** What the page and its reading worker tell each other. */
import type { ReadResult, TableMapping } from "../../files/incoming";

export interface ReadRequest {
  readonly name: string;
  readonly bytes: Uint8Array;
  /** How a table is taken; other kinds of files say it themselves. */
  readonly mapping: TableMapping | null;
}

export type ReadReply = { readonly share: number } | { readonly result: ReadResult };
