/** Walls on a ground that is given as a function, without surveying it: for tests of the foundation alone. */
import {
  type Building,
  buildingSchema,
  type Foundation,
  foundationSchema,
  gradingSchema,
} from "../../src/document/schema";
import { foundationResult, type WallLine } from "../../src/foundation";
import type { Point } from "../../src/geometry";
import { cornerName, footprint } from "../../src/grading";
import type { DriveResult, ElevationOpening, FoundationResult } from "../../src/solve/results";

export const inch = 0.0254;
export const foot = 0.3048;

export interface SiteOptions {
  readonly floor: number;
  readonly strip?: number;
  readonly intoUndisturbed?: number;
  /** Wall showing above the finished ground; null: the ground stays as it is. */
  readonly showing?: number | null;
  readonly topOfWallAboveFloor?: number;
  readonly foundation?: Partial<Foundation>;
  readonly doors?: Building["doors"];
  readonly drives?: readonly DriveResult[];
  readonly firm?: (at: Point) => number;
  readonly step?: number;
  readonly sidingLap?: number;
  /** Places of the first wall where a drive's earth lies. */
  readonly driven?: (at: Point) => boolean;
  /** In the first wall. */
  readonly openings?: readonly ElevationOpening[];
}

/** A square from A at 0, 0, clockwise. */
export function flat(side: number): Point[] {
  return [
    [0, 0],
    [side, 0],
    [side, -side],
    [0, -side],
  ];
}

export function plane(level: number, gx = 0, gy = 0): (at: Point) => number {
  return ([x, y]) => level + gx * x + gy * y;
}

export function atFloor(options: SiteOptions): FoundationResult {
  return onGround(flat(10), plane(0), options);
}

export function onGround(
  outline: readonly Point[],
  height: (at: Point) => number,
  options: SiteOptions,
): FoundationResult {
  const { floor, strip = 0.1524, showing = 0.1524, topOfWallAboveFloor = 0 } = options;
  const shape = footprint(outline);
  if (!shape.ok) throw new Error("the outline of a test must be sound");
  const lines = shape.footprint.walls.map((wall, i): WallLine => {
    const count = Math.max(1, Math.ceil(wall.length / (options.step ?? 0.25)));
    const distance = Float64Array.from({ length: count + 1 }, (_, k) => (wall.length * k) / count);
    const points = Array.from(
      distance,
      (d): Point => [wall.start[0] + wall.along[0] * d, wall.start[1] + wall.along[1] * d],
    );
    const existing = Float64Array.from(points, height);
    const finished =
      showing === null ? existing : new Float64Array(count + 1).fill(floor + topOfWallAboveFloor - showing);
    return {
      wall: i,
      name: wall.name,
      start: wall.start,
      along: wall.along,
      length: wall.length,
      distance,
      existing,
      finished,
      guessed: new Uint8Array(count + 1),
      driven: Uint8Array.from(points, (at) => (i === 0 && options.driven?.(at) ? 1 : 0)),
      firm: options.firm ? Float64Array.from(points, options.firm) : null,
      rock: null,
      water: null,
      openings: i === 0 ? (options.openings ?? []) : [],
    };
  });
  const grounds = outline.map(height);
  const lowest = Math.min(...grounds);
  const building = buildingSchema.parse({
    outline,
    floor,
    topOfWallAboveFloor,
    foundation: { ...foundationSchema.parse({}), ...options.foundation },
    doors: options.doors ?? [],
  });
  const named = (at: Point) => {
    const i = outline.findIndex(([x, y]) => Math.hypot(x - at[0], y - at[1]) < 1e-6);
    return i < 0 ? "wall" : `corner ${cornerName(i)}`;
  };
  return foundationResult({
    building,
    floor,
    lines,
    strip,
    intoUndisturbed: options.intoUndisturbed ?? 0.3048,
    shrink: 0.9,
    swell: 1.25,
    sidingLap: options.sidingLap ?? 0,
    corners: outline.map((_, i) => ({ name: cornerName(i), ground: grounds[i] as number })),
    lowestInside: { height: lowest, at: outline[grounds.indexOf(lowest)] as Point },
    highestInside: Math.max(...grounds),
    apron: gradingSchema.parse({}).apron,
    drives: [],
    driveResults: options.drives ?? [],
    place: named,
  });
}
