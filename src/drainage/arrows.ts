/**
 * Downhill arrows on a lattice.
 *
 * Units   metres; slope rise over run.
 * Method  See `slope.ts`, over neighbours a quarter of the lattice's step off.
 * Source  First principles.
 */
import type { Arrow } from "../solve/results";
import type { WaterGround } from "./ponds";
import { gradientAt } from "./slope";

/** Arrows across the longer side of the grid: close enough for the space between wall and apron's edge. */
const across = 60;
/** Ground flatter than this has no direction that shots could tell. */
export const flatGround = 0.002;

/** One a lattice place outside the walls; where the ground is flat it points nowhere. */
export function downhillArrows({ grid, z, blocked }: WaterGround): Arrow[] {
  const step = Math.max(1, Math.round(Math.max(grid.columns, grid.rows) / across));
  const reach = Math.max(1, Math.floor(step / 4));
  const arrows: Arrow[] = [];
  for (let row = step >> 1; row < grid.rows; row += step) {
    for (let column = step >> 1; column < grid.columns; column += step) {
      if (blocked[row * grid.columns + column]) continue;
      const [gx, gy] = gradientAt(grid, z, [column, row], reach, blocked);
      const slope = Math.hypot(gx, gy);
      if (!Number.isFinite(slope)) continue;
      const x = grid.x0 + (column + 0.5) * grid.cell;
      const y = grid.y0 + (row + 0.5) * grid.cell;
      const isFlat = slope < flatGround;
      arrows.push({ x, y, dx: isFlat ? 0 : -gx / slope, dy: isFlat ? 0 : -gy / slope, slope });
    }
  }
  return arrows;
}
