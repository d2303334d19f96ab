/** Whose length a figure tells: it stands outside the building, nearer to its own wall than to any other. */
import { between, containsPoint, distanceToSegment, type Point, segmentsMeet } from "../geometry";
import { type DrawContext, type LabelTexts, textBox } from "./context";
import type { Led } from "./leader";
import type { XY } from "./marks";
import type { Wall } from "./walls";

/** Equal distances count as nearer to the own wall, m. */
const hair = 1e-9;

/** Would a reader take a text at this place as told of `own`? */
export function tellsOwnWall(
  label: LabelTexts,
  own: Wall,
  walls: readonly Wall[],
  context: DrawContext,
): boolean {
  const middle = middleOf(label, context);
  if (!middle || isInside(walls, middle)) return false;
  const away = ({ from, to }: Wall) => distanceToSegment(from, to, middle[0], middle[1]);
  const near = away(own);
  return walls.every((wall) => wall === own || away(wall) >= near - hair);
}

/** Does the line from a wall's middle lead out of the building, and to a text that stands outside it? */
export function leadsOutside(
  { texts, end }: Led,
  own: Wall,
  walls: readonly Wall[],
  { turn, metresPerMm, ...context }: DrawContext,
): boolean {
  const middle = middleOf(texts, { ...context, turn, metresPerMm });
  if (!middle || isInside(walls, middle)) return false;
  const from = between(own.from, own.to, 0.5);
  const [c, s] = [Math.cos(turn) * metresPerMm, Math.sin(turn) * metresPerMm];
  const to: Point = [from[0] + end[0] * c + end[1] * s, from[1] + end[1] * c - end[0] * s];
  const out = (to[0] - from[0]) * own.outward[0] + (to[1] - from[1]) * own.outward[1];
  return out > 0 && walls.every((wall) => wall === own || !segmentsMeet(from, to, wall.from, wall.to));
}

function isInside(walls: readonly Wall[], [x, y]: XY): boolean {
  return containsPoint(
    walls.map(({ from }) => from),
    x,
    y,
  );
}

/** On the plan, m. */
function middleOf([text]: LabelTexts, { metresPerMm, turn }: DrawContext): XY | null {
  if (!text) return null;
  const { x, y } = textBox(text, metresPerMm, 0, turn);
  return [x * metresPerMm, y * metresPerMm];
}
