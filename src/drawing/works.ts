/** Off the works: a text that stands on a drive or inside the walls would be taken for theirs, and they strike it. */
import type { Project } from "../document/schema";
import { containsPoint, distanceToSegment, type Point } from "../geometry";
import { type DrawContext, type LabelTexts, textBox } from "./context";
import type { TextMark } from "./marks";

/** Do the texts stand off the drives and the building? Judged along their middle lines. */
export function isClearOfWorks(texts: LabelTexts, project: Project, context: DrawContext): boolean {
  return isClearOfDrives(texts, project, context) && isOutside(texts, project, context);
}

/** Do the texts stand outside the building? */
export function isOutside(texts: LabelTexts, { building }: Project, context: DrawContext): boolean {
  const outline = building?.outline ?? [];
  return everyPlace(texts, context, ([x, y]) => !containsPoint(outline, x, y));
}

/** Do the texts stand off the drives? */
export function isClearOfDrives(texts: LabelTexts, { grading }: Project, context: DrawContext): boolean {
  return everyPlace(texts, context, ([x, y]) =>
    grading.drives.every(({ line, width }) => distanceToLine(line, x, y) > width / 2),
  );
}

function everyPlace(
  texts: readonly TextMark[],
  { metresPerMm, turn }: DrawContext,
  holds: (at: Point) => boolean,
): boolean {
  return texts.every((text) => {
    const { x, y, width, angle } = textBox(text, metresPerMm, 0, turn);
    return [-0.5, -0.25, 0, 0.25, 0.5].every((share) => {
      const along = share * width;
      return holds([
        (x + along * Math.cos(angle)) * metresPerMm,
        (y + along * Math.sin(angle)) * metresPerMm,
      ]);
    });
  });
}

function distanceToLine(line: readonly Point[], x: number, y: number): number {
  return Math.min(...line.slice(1).map((to, i) => distanceToSegment(line[i] as Point, to, x, y)));
}
