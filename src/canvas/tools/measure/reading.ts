/** What was measured, in words: distance, angle, area, and the fall of the ground as it is and finished. */
import type { Point, Project } from "../../../document";
import { distance, perimeter, polylineLength, signedArea } from "../../../geometry";
import { readPlace } from "../../../solve/read-place";
import type { Results } from "../../../solve/results";
import { formatAngle, formatArea, formatBearing, formatSlope } from "../../../units";
import { bearingOf } from "../aim";
import { lengthWords } from "../liveMarks";
import type { Reading } from "../tool";

type Row = Reading["rows"][number];

export interface Measured {
  readonly points: readonly Point[];
  /** The last place is joined to the first. */
  readonly closed: boolean;
}

/** Flatter than one in two thousand nobody can build or see. */
const flat = 0.0005;

/** Angle between the pieces that meet in the middle place, 0 to π; null where one has no length. */
export function angleAt(before: Point, at: Point, after: Point): number | null {
  const [ax, ay] = [before[0] - at[0], before[1] - at[1]];
  const [bx, by] = [after[0] - at[0], after[1] - at[1]];
  if (Math.hypot(ax, ay) === 0 || Math.hypot(bx, by) === 0) return null;
  return Math.abs(Math.atan2(ax * by - ay * bx, ax * bx + ay * by));
}

/** "falls 1′ 2″ (4.5 %)", "climbs …", "level"; with a word where one of the heights is a guess. */
function fall(down: number, run: number, guessed: boolean, project: Project): string {
  const share = down / run;
  const way = down > 0 ? "falls" : "climbs";
  const slope = formatSlope(Math.abs(share), project.display.slope);
  const words =
    Math.abs(share) < flat ? "level" : `${way} ${lengthWords(Math.abs(down), project)} (${slope})`;
  return guessed ? `${words}, guessed` : words;
}

/** How the ground as it is, and the finished one, run from the first place to the last. */
function fallRows(from: Point, to: Point, project: Project, results: Results): Row[] {
  const run = distance(from, to);
  const floor = project.building?.floor ?? null;
  const [a, b] = [from, to].map((at) => readPlace(results, project, at, floor));
  if (!a || !b || run === 0) return [];
  const guessed = a.guessed || b.guessed;
  const rows: Row[] = [{ name: "ground as it is", value: fall(a.ground - b.ground, run, guessed, project) }];
  if (a.finished !== null && b.finished !== null)
    rows.push({ name: "finished", value: fall(a.finished - b.finished, run, guessed, project) });
  return rows;
}

function ringRows(points: readonly Point[], project: Project): Row[] {
  return [
    { name: "area", value: formatArea(Math.abs(signedArea(points)), project.display.area) },
    { name: "round it", value: lengthWords(perimeter(points), project) },
  ];
}

function lineRows(points: readonly Point[], project: Project, results: Results): Row[] {
  const [before, from, to] = [points.at(-3), points.at(-2) as Point, points.at(-1) as Point];
  const piece = lengthWords(distance(from, to), project);
  const bearing = formatBearing(bearingOf(from, to, project.lot.north));
  const first = points[0] as Point;
  const angle = before ? angleAt(before, from, to) : null;
  return [
    { name: before ? "last piece" : "distance", value: piece },
    { name: "bearing", value: bearing },
    ...(angle === null ? [] : [{ name: "angle", value: formatAngle(angle, 1) }]),
    ...(before ? [{ name: "length in all", value: lengthWords(polylineLength(points), project) }] : []),
    ...fallRows(first, to, project, results),
  ];
}

/** The reading of a line of places or of a ring; null for fewer than two places. */
export function readMeasured(
  { points, closed }: Measured,
  project: Project,
  results: Results,
): Omit<Reading, "act" | "live"> | null {
  if (points.length < 2) return null;
  if (closed) return { title: "Area", rows: ringRows(points, project) };
  const title = points.length > 2 ? "First place to last" : "Between two places";
  return { title, rows: lineRows(points, project, results) };
}
