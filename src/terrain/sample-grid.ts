/** The ground read at the centres of a grid. */
import type { Grid } from "./grid";
import type { Ground } from "./ground";
import { locate } from "./locate";
import { trianglePlane } from "./plane";

/** Heights at cell centres, m; where the ground does not reach: NaN, and marked as guessed. */
export interface GridSample {
  readonly z: Float64Array;
  /** 1 where guessed. */
  readonly guessed: Uint8Array;
}

/** Samples the ground at every cell centre. Method: rows to and fro, each search starting at the last answer. */
export function sampleGrid(ground: Ground, grid: Grid): GridSample {
  const { columns, rows, cell, x0, y0 } = grid;
  const z = new Float64Array(columns * rows);
  const guessed = new Uint8Array(columns * rows);
  let plane = { z: Number.NaN, gx: Number.NaN, gy: Number.NaN };
  let planeX = 0;
  let planeY = 0;
  let planeOf = -1;
  let last = 0;
  for (let j = 0; j < rows; j++) {
    const y = y0 + (j + 0.5) * cell;
    for (let k = 0; k < columns; k++) {
      const i = j % 2 === 0 ? k : columns - 1 - k;
      const x = x0 + (i + 0.5) * cell;
      const triangle = locate(ground.tin, x, y, last);
      const at = j * columns + i;
      if (triangle < 0) {
        z[at] = Number.NaN;
        guessed[at] = 1;
        continue;
      }
      last = triangle;
      if (triangle !== planeOf) {
        plane = trianglePlane(ground.tin, triangle, x, y);
        planeOf = triangle;
        planeX = x;
        planeY = y;
      }
      z[at] = plane.z + plane.gx * (x - planeX) + plane.gy * (y - planeY);
      guessed[at] = ground.guessed[triangle] as number;
    }
  }
  return { z, guessed };
}
