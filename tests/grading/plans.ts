/** Grading plans and grounds for tests, without a project. */
import type { Point } from "../../src/geometry";
import { type Footprint, footprint, type GradingPlan, type PadRule } from "../../src/grading";
import { type Ground, makeGround, triangulate } from "../../src/terrain";

export function shape(ring: readonly Point[]): Footprint {
  const made = footprint(ring);
  if (!made.ok) throw new Error(`not a footprint: ${made.fault.why}`);
  return made.footprint;
}

export function rectangle(length: number, width: number, turn = 0, cx = 0, cy = 0): Point[] {
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  const corners: Point[] = [
    [-length / 2, -width / 2],
    [length / 2, -width / 2],
    [length / 2, width / 2],
    [-length / 2, width / 2],
  ];
  return corners.map(([x, y]): Point => [cx + c * x - s * y, cy + s * x + c * y]);
}

export function planFor(
  ring: readonly Point[],
  pad: Partial<PadRule> = {},
  rest: Partial<GradingPlan> = {},
): GradingPlan {
  const made = shape(ring);
  return {
    footprint: made,
    pad: {
      edgeAboveFloor: 0,
      fall: 0.05,
      width: 3,
      fillSlope: 3,
      cutSlope: 2,
      leave: new Uint8Array(made.walls.length),
      ...pad,
    },
    drives: [],
    swales: [],
    ...rest,
  };
}

/** Ground through four far corners of a plane. */
export function planeGround(z: number, gx = 0, gy = 0, reach = 400): Ground {
  const x = [-reach, reach, reach, -reach];
  const y = [-reach, -reach, reach, reach];
  const made = triangulate(
    x,
    y,
    x.map((east, i) => z + gx * east + gy * (y[i] ?? 0)),
  );
  if (!made.ok) throw new Error("four corners make a surface");
  return makeGround(made.tin, { minX: -reach, minY: -reach, maxX: reach, maxY: reach });
}
