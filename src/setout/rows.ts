/**
 * Heights to set out from one mark, as readings to look for.
 *
 * Units   metres.
 * Sign    A reading goes down from the beam: reading = beam − height, so a bigger reading is lower.
 * Source  First principles.
 */
import type { SetoutResult, SetoutRow } from "../solve/results";

export interface SetoutHeight {
  readonly what: string;
  readonly where: string;
  readonly height: number;
}

export interface SetoutReference {
  readonly mark: { readonly name: string; readonly height: number } | null;
  /** Height of today's beam, null until a reading on the mark is known. */
  readonly beam: number | null;
}

export function setout(reference: SetoutReference, heights: readonly SetoutHeight[]): SetoutResult {
  const { mark, beam } = reference;
  const rows = heights.map(
    (row): SetoutRow => ({
      ...row,
      fromMark: mark ? row.height - mark.height : null,
      reading: beam === null ? null : beam - row.height,
    }),
  );
  return { mark: mark?.name ?? null, markHeight: mark?.height ?? null, beam, rows };
}
