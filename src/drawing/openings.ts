/** Doors and windows on their walls: the piece that each takes, and what is written beside it. */
import type { Building, Door } from "../document/schema";
import { thingKey } from "../document/thing";
import { between, distance, type Point } from "../geometry";
import { capOf, longestName, sizeOf, telling } from "./beside";
import { type DrawContext, placeLabel, readable } from "./context";
import type { TextMark } from "./marks";
import type { StyleName } from "./styles";
import { ellipsize } from "./text-width";
import { type Wall, wallsOf } from "./walls";

/** The piece of a wall that an opening takes. */
export interface OpeningPiece {
  readonly wall: Wall;
  readonly a: Point;
  readonly b: Point;
  readonly width: number;
}

/** The piece of wall; null where its wall is gone or has no length. */
export function openingPiece(
  building: Building,
  opening: Pick<Door, "wall" | "offset" | "width">,
): OpeningPiece | null {
  const wall = wallsOf(building.outline).find((one) => one.index === opening.wall);
  if (!wall) return null;
  const near = Math.min(opening.offset, wall.length);
  const [a, b] = [near, Math.min(near + opening.width, wall.length)].map((reach) =>
    between(wall.from, wall.to, reach / wall.length),
  ) as [Point, Point];
  return { wall, a, b, width: distance(a, b) };
}

/** Name and size along the inner side of the wall, where there is room. */
export function openingLabel(
  { wall, a, b }: OpeningPiece,
  { kind, id, name }: { readonly kind: "door" | "window"; readonly id: string; readonly name: string },
  size: string,
  style: StyleName,
  context: DrawContext,
  group: string,
): readonly TextMark[] {
  const angle = readable(Math.atan2(wall.along[1], wall.along[0]));
  // "Up" in the text's own frame may point into the building or out of it.
  const inward = Math.cos(angle) * wall.outward[1] - Math.sin(angle) * wall.outward[0] > 0 ? -1 : 1;
  const short = ellipsize(name, longestName, sizeOf(style), 600);
  const text = `${short} ${size}`;
  const candidates = [2.6, 3.6, 5].map((off): readonly TextMark[] => [
    {
      kind: "text",
      at: between(a, b, 0.5),
      text,
      style,
      angle,
      anchor: "middle",
      shift: [0, inward * off - capOf(style) / 2],
      halo: true,
    },
  ]);
  const told = { thing: thingKey({ kind, id }), length: size, rest: short };
  return placeLabel(context, group, telling(told, candidates));
}
