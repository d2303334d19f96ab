/** Ruled paper for what is found and decided on site, where a column has room left. */
import { type Block, headingPitch, headingScale, paddingX, paddingY } from "./block";
import type { Placed } from "./flow";
import { inks } from "./inks";
import type { Rect } from "./papers";

/** Line pitch for handwriting, mm. */
const linePitch = 8;
/** Fewer lines than this aren't worth a heading. */
const fewestLines = 3;

/** Fills a height with lines to write on. */
function siteNotes(height: number): Block {
  return {
    name: "site notes",
    height: () => height,
    draw(pen, x, y, width, size) {
      const headSize = size * headingScale;
      const look = { size: headSize, weight: 600, colour: inks.ink } as const;
      pen.text("Notes on site", x + paddingX, y + paddingY + headSize * 0.8, look);
      const rule = { colour: inks.rule, width: 0.12 };
      const last = y + height - paddingY;
      for (let line = y + paddingY + headingPitch * size + linePitch; line <= last; line += linePitch) {
        pen.line([x + paddingX, line, x + width - paddingX, line], rule);
      }
    },
  };
}

/** The blocks of a page with lines to write on in the column that has most room left, where that is worth it. */
export function withSiteNotes(
  placed: readonly Placed[],
  columns: readonly Rect[],
  size: number,
): readonly Placed[] {
  const spares = columns.map((column) => {
    const bottoms = placed
      .filter(({ x, y }) => x === column.x && y >= column.y && y < column.y + column.height)
      .map(({ block, y, width }) => y + block.height(width, size));
    const y = Math.max(column.y, ...bottoms);
    return { column, y, height: column.y + column.height - y };
  });
  const widest = spares.reduce((most, one) => (one.height > most.height ? one : most));
  const least = 2 * paddingY + headingPitch * size + fewestLines * linePitch;
  if (widest.height < least) return placed;
  const { column, y, height } = widest;
  const notes = { block: siteNotes(height), x: column.x, y, width: column.width };
  const isOver = (one: Placed) => one.x === column.x && one.y < y;
  return [...placed.filter((one) => !isOver(one)), ...placed.filter(isOver), notes];
}
