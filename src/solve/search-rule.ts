/** A rule of the floor found by trying floors: what it is read from, and how it is made of its readings. Metres. */
import type { Rule } from "../advice";
import type { FloorParts, Reckoned, ReckonedSite } from "./floor-parts";
import { type Reading, searched } from "./floor-search";
import type { LotEdge } from "./slope-room";
import type { Standing } from "./standing";
import type { Words } from "./words";

export interface SearchInput {
  readonly site: ReckonedSite;
  readonly walls: Standing["walls"];
  readonly project: Reckoned;
  readonly words: Words;
  /** Floors looked at. */
  readonly range: { readonly low: number; readonly high: number };
  /** Null: no lot is drawn. */
  readonly lot: LotEdge | null;
  readonly partsAt: (floor: number) => FloorParts;
  /** What the priced items come to at a floor, roughly and as closely as the bill; null: nothing is priced. */
  readonly cost: Readonly<Record<"coarse" | "fine", (floor: number) => { readonly total: number }>> | null;
}

export type Head = Pick<Rule, "id" | "kind" | "name" | "value" | "source">;

/** A rule from its readings; the place is the one that decides at its limit. */
export function found(
  head: Head,
  reading: (floor: number) => Reading,
  { range, words }: SearchInput,
  closer?: (floor: number) => number,
): Rule {
  const { low, high } = range;
  const result = searched((floor) => reading(floor).margin, low, high, head.kind, closer);
  const ends = (result.heights ?? []).flat().filter((end) => end !== null);
  const { place, at } = reading(result.height ?? ends[0] ?? (low + high) / 2);
  const where =
    result.atAnyFloor === "kept"
      ? `${place}: kept at every floor looked at, ${words.length(low)} to ${words.length(high)}`
      : place;
  return {
    ...head,
    ...result,
    place: result.atAnyFloor === "broken" ? place : where,
    ...(at ? { at: [at[0], at[1]] as [number, number] } : {}),
  };
}

/** A rule that nothing on this site brings to bear. */
export const silent = (head: Head, place: string): Rule => ({ ...head, height: null, place });

/** The least margin of several. */
export function least(readings: readonly Reading[]): Reading | null {
  return readings.reduce<Reading | null>(
    (worst, one) => (worst && worst.margin <= one.margin ? worst : one),
    null,
  );
}
