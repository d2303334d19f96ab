/**
 * Ground whose water comes to a wall.
 *
 * Units   m2.
 * Method  The cells beside a wall are its target; what drains to them, less they themselves. On a wall whose ground
 *         falls away nothing comes; a hollow's water counts where the hollow spills along the wall.
 * Source  First principles on the flow of `drainage/flow.ts`.
 */
import { catchmentOf, type Flow } from "../drainage";
import { distanceToSegment } from "../geometry";
import type { Footprint } from "../grading";

/** Water of each wall, in the order of the footprint's walls; 0 where none comes. */
export function wallCatchments({ walls }: Footprint, flow: Flow, blocked: Uint8Array): number[] {
  const { grid } = flow;
  const { columns, rows, cell } = grid;
  const targets = walls.map(() => new Uint8Array(columns * rows));
  const own = walls.map(() => 0);
  for (let j = 1; j < rows - 1; j++) {
    for (let i = 1; i < columns - 1; i++) {
      const k = j * columns + i;
      if (blocked[k] || !besideBlocked(k, columns, blocked)) continue;
      const [x, y] = [grid.x0 + (i + 0.5) * cell, grid.y0 + (j + 0.5) * cell];
      let nearest = 0;
      let least = Number.POSITIVE_INFINITY;
      walls.forEach(({ start, end }, wall) => {
        const away = distanceToSegment(start, end, x, y);
        if (away < least) [least, nearest] = [away, wall];
      });
      (targets[nearest] as Uint8Array)[k] = 1;
      own[nearest] = (own[nearest] as number) + 1;
    }
  }
  return targets.map((target, wall) =>
    Math.max(0, catchmentOf(flow, target).area - (own[wall] as number) * cell * cell),
  );
}

function besideBlocked(k: number, columns: number, blocked: Uint8Array): boolean {
  return (
    blocked[k - 1] === 1 || blocked[k + 1] === 1 || blocked[k - columns] === 1 || blocked[k + columns] === 1
  );
}
