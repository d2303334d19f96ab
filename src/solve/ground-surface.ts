/** Points of ground and breaklines → the surface, the triangles of it that are a guess, and what to say about it. */
import { breaklineWord, isClosedBreakline } from "../document/breaklineKinds";
import type { Breakline, Survey } from "../document/schema";
import type { Point } from "../geometry";
import {
  doubtfulTriangles,
  type HeightConflict,
  type LinedTriangulation,
  type Breakline as SurfaceLine,
  type Tin,
  type Triangulation,
  triangulate,
  triangulateWithLines,
} from "../terrain";
import { doubledShots, type GroundPoints, noSurface } from "./ground-points";
import type { Problem } from "./results";
import type { Words } from "./words";

export type GroundSurface =
  | {
      readonly ok: true;
      readonly tin: Tin;
      /** 1 for a triangle between the points that is a guess. */
      readonly doubtful: Uint8Array;
      readonly dropped: Extract<Triangulation, { ok: true }>["dropped"];
      readonly conflicts: readonly HeightConflict[];
      /** Lines with places beyond the shots for which there is no height. */
      readonly cut: readonly Breakline[];
    }
  | { readonly ok: false; readonly reason: "too-few" | "in-line" };

/** A line is cut off this far inside the shots' rim, m, so that its end has a height. */
const within = 1e-3;

export function groundSurface(
  points: GroundPoints,
  breaklines: Survey["breaklines"],
  longestEdge: Survey["longestEdge"],
): GroundSurface {
  const bare = triangulate(points.x, points.y, points.z);
  const fitted = breaklines.map((line) => fittedLines(line, bare.ok ? hullOf(bare.tin) : []));
  const lines = fitted.flatMap(({ lines: parts }) => parts);
  const made: LinedTriangulation | Triangulation =
    lines.length === 0 ? bare : triangulateWithLines(points.x, points.y, points.z, lines);
  if (!made.ok) return { ok: false, reason: made.reason === "no-height" ? "too-few" : made.reason };
  const rings = (kind: Breakline["kind"]) =>
    breaklines
      .filter((line) => line.kind === kind && line.points.length >= 3)
      .map((line) => line.points.map(([x, y]): Point => [x, y]));
  const doubtful = doubtfulTriangles(made.tin, { holes: rings("hole"), edges: rings("edge"), longestEdge });
  const cut = breaklines.filter((_, i) => fitted[i]?.cut);
  return {
    ok: true,
    tin: made.tin,
    doubtful,
    dropped: made.dropped,
    conflicts: lines.length > 0 && "conflicts" in made ? (made.conflicts as readonly HeightConflict[]) : [],
    cut,
  };
}

/** A line's name for a message: its own, or the kind's. */
export function lineName({ name, kind }: Pick<Breakline, "name" | "kind">): string {
  return name.trim() || breaklineWord(kind);
}

function hullOf({ x, y, hull }: Tin): Point[] {
  return Array.from(hull, (i): Point => [x[i] as number, y[i] as number]);
}

type Corner = Breakline["points"][number];

/** The line as the surface takes it: without what has no height because it lies beyond the shots. */
function fittedLines(line: Breakline, hull: readonly Point[]): { lines: SurfaceLine[]; cut: boolean } {
  const corners = isClosedBreakline(line.kind) ? [...line.points, line.points[0] as Corner] : line.points;
  const runs: Corner[][] = [];
  let cut = false;
  for (let i = 1; i < corners.length; i++) {
    const [from, to] = [corners[i - 1] as Corner, corners[i] as Corner];
    const share = shareWithin(hull, from, to);
    if (!share) {
      cut = true;
      continue;
    }
    if (share[0] > 0 || share[1] < 1) cut = true;
    const last = runs.at(-1);
    const joins = i > 1 && last !== undefined && share[0] === 0 && last.at(-1) === from;
    const run = joins ? last : [share[0] === 0 ? from : between(from, to, share[0])];
    run.push(share[1] === 1 ? to : between(from, to, share[1]));
    if (!joins) runs.push(run);
  }
  const name = lineName(line);
  const column = (run: Corner[], k: 0 | 1) => run.map((corner) => corner[k]);
  return {
    lines: runs.map((run) => ({ name, x: column(run, 0), y: column(run, 1), z: run.map(([, , z]) => z) })),
    cut,
  };
}

function between([ax, ay]: Corner, [bx, by]: Corner, share: number): Corner {
  return [ax + share * (bx - ax), ay + share * (by - ay), null];
}

/** Which part of a piece of line can have heights: all where its ends have their own, else what lies within the hull. */
function shareWithin(hull: readonly Point[], from: Corner, to: Corner): [number, number] | null {
  if (from[2] !== null && to[2] !== null) return [0, 1];
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  if (length === 0 || hull.length < 3) return null;
  let [low, high] = [0, 1];
  for (let i = 0; i < hull.length; i++) {
    const a = hull[i] as Point;
    const b = hull[(i + 1) % hull.length] as Point;
    const side = Math.hypot(b[0] - a[0], b[1] - a[1]);
    const inward = ([x, y]: Corner) => ((b[0] - a[0]) * (y - a[1]) - (b[1] - a[1]) * (x - a[0])) / side;
    // An end with a height of its own may lie on the rim or beyond it: it makes the surface there.
    const [start, end] = [inward(from), inward(to)];
    if (start <= 0 && end <= 0 && (start < 0 || end < 0)) return null;
    if (start < 0) low = Math.max(low, (start - within) / (start - end));
    else if (end < 0) high = Math.min(high, (start - within) / (start - end));
  }
  if (from[2] !== null && low > 0) return null;
  if (to[2] !== null && high < 1) return null;
  return high > low ? [low, high] : null;
}

/** What the person should know about the points and lines of ground. */
export function surfaceProblems(points: GroundPoints, surface: GroundSurface, words: Words): Problem[] {
  if (!surface.ok) return points.shots.length === 0 ? [] : [noSurface(surface.reason, points.shots.length)];
  return [
    ...doubledShots(points, surface.dropped, words),
    ...surface.conflicts.map((conflict) => conflictProblem(conflict, words)),
    ...surface.cut.map(cutProblem),
  ];
}

function conflictProblem({ kind, x, y, lines, heights, taken }: HeightConflict, words: Words): Problem {
  const [one, other] = [words.length(heights[0]), words.length(heights[1])];
  const names = lines.map((line) => `“${line}”`).join(" and ");
  const common = {
    code: "breaklines-disagree",
    severity: "caution" as const,
    at: [x, y] as [number, number],
  };
  if (kind === "crossing")
    return {
      ...common,
      where: `the breaklines ${names}`,
      what: `Where they cross, one is at ${one} and the other at ${other}; ${words.length(taken)} is used.`,
      how: "Correct the heights of one of them, or end it where they meet.",
    };
  return {
    ...common,
    where: `the breakline ${names}`,
    what: `One of its places is at ${other}, but the ground there is at ${one}, from a shot or another line; ${words.length(taken)} is used.`,
    how: "Correct the height of that place, or leave it empty: then the shots say it.",
  };
}

function cutProblem(line: Breakline): Problem {
  const [x, y] = line.points.find(([, , z]) => z === null) ?? (line.points[0] as Corner);
  return {
    code: "breakline-beyond-shots",
    severity: "note",
    where: `the breakline “${lineName(line)}”`,
    what: "Part of it lies beyond the outermost shots, where it has no height; that part bends nothing.",
    how: "Type heights for its places there, or take shots out there.",
    at: [x, y],
    ids: [line.id],
  };
}
