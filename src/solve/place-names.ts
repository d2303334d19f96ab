/** Names of places, as a person on site would find them. */
import { nearestOnRing, type Point } from "../geometry";
import { cornerName, type Footprint } from "../grading";
import type { Words } from "./words";

/** A place this near to a corner takes its name, m. */
const atCorner = 0.3;

/** "corner A", "wall A-B, 12′ from A", "9′ out from wall A-B, 12′ from A". */
export function placeName({ ring, walls }: Footprint, at: Point, words: Words): string {
  const near = nearestOnRing(ring, at[0], at[1]);
  const wall = walls[near.segment];
  if (!wall) return "the building";
  const along = near.t * wall.length;
  const first = cornerName(near.segment);
  const second = cornerName((near.segment + 1) % ring.length);
  const out = near.distance > atCorner ? `${words.length(near.distance)} from ` : "";
  if (along < atCorner) return `${out}corner ${first}`;
  if (wall.length - along < atCorner) return `${out}corner ${second}`;
  return `${out}wall ${wall.name}, ${words.length(along)} from ${first}`;
}
