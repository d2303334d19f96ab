/** Levelled shots → the points of the ground, and the ground they make. */
import type { Shot } from "../document/schema";
import { liesOnGround } from "../survey";
import type { DroppedPoint } from "../terrain";
import type { LevelledPoint, Problem } from "./results";
import type { Words } from "./words";

export interface GroundPoints {
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly z: Float64Array;
  readonly shots: readonly LevelledPoint[];
}

/** Shots that lie on the ground and have both a place and a height. */
export function groundPoints(points: readonly LevelledPoint[], shots: readonly Shot[]): GroundPoints {
  const rowOf = rowsInStep(shots);
  const used = points.filter((point) => {
    const row = rowOf(point.shot);
    if (point.at === null || point.height === null || !row) return false;
    return Number.isFinite(point.height) && liesOnGround(row);
  });
  return {
    x: Float64Array.from(used, ({ at }) => at?.[0] ?? Number.NaN),
    y: Float64Array.from(used, ({ at }) => at?.[1] ?? Number.NaN),
    z: Float64Array.from(used, ({ height }) => height ?? Number.NaN),
    shots: used,
  };
}

/** The points come in the order of the shots, without those set aside: each is found a step beyond the one before. */
function rowsInStep(shots: readonly Shot[]): (id: string) => Shot | undefined {
  let next = 0;
  let byId: Map<string, Shot> | null = null;
  return (id) => {
    while (shots[next]?.aside) next++;
    const row = shots[next];
    if (row?.id === id) {
      next++;
      return row;
    }
    byId ??= new Map(shots.map((shot) => [shot.id, shot]));
    return byId.get(id);
  };
}

export function samePoints(a: GroundPoints, b: GroundPoints): boolean {
  return (
    sameNumbers(a.x, b.x) &&
    sameNumbers(a.y, b.y) &&
    sameNumbers(a.z, b.z) &&
    a.shots.every((shot, i) => shot.shot === b.shots[i]?.shot && shot.name === b.shots[i]?.name)
  );
}

function sameNumbers(a: Float64Array, b: Float64Array): boolean {
  return a.length === b.length && a.every((value, i) => value === b[i]);
}

/** What the person should know about two points at one place. */
export function doubledShots(
  points: GroundPoints,
  dropped: readonly DroppedPoint[],
  words: Words,
): Problem[] {
  return dropped.flatMap(({ index, sameAs }) => {
    const one = points.shots[sameAs];
    const other = points.shots[index];
    if (!one || !other?.at) return [];
    // A mark read again from another set-up is the same point, not a slip.
    if (one.kind === "mark" && other.kind === "mark") return [];
    const apart = (points.z[index] ?? 0) - (points.z[sameAs] ?? 0);
    return [
      {
        code: "shots-at-one-place",
        severity: "caution" as const,
        where: `shots ${named(one)} and ${named(other)}`,
        what: `They stand at one place with heights ${words.length(Math.abs(apart))} apart; ${named(one)} is used.`,
        how: `Move one of them, or set ${named(other)} aside.`,
        at: other.at,
        ids: [one.shot, other.shot],
      },
    ];
  });
}

/** Why there is no surface: too few points, or all in line. */
export function noSurface(reason: "too-few" | "in-line", count: number): Problem {
  if (reason === "in-line") {
    return {
      code: "ground-in-line",
      severity: "error",
      where: "the ground shots",
      what: "All placed shots lie in one line, so they don't make a surface.",
      how: "Shoot at least one spot to the side of the line.",
    };
  }
  return {
    code: "ground-too-few",
    severity: "error",
    where: "the ground shots",
    what: `Only ${count === 1 ? "one shot has" : `${count} shots have`} both a place and a height; a surface needs three.`,
    how: "Give more shots a place on the plan and a reading.",
  };
}

function named({ name, shot }: LevelledPoint): string {
  return `“${name || shot}”`;
}
