/** Drives: edges, centreline, and the grades written along it with the steepest piece marked. */
import type { Drive, Project } from "../document/schema";
import { thingKey } from "../document/thing";
import { type Point, pointAlong, polylineLength } from "../geometry";
import type { DriveResult, DriveStation, Results } from "../solve/results";
import { routeStations } from "../solve/route-stations";
import { along, capOf, longestName, sizeOf, telling } from "./beside";
import { type DrawContext, type LabelTexts, placeLabel, readable } from "./context";
import { ledPlaces, placeLed } from "./leader";
import type { DrawingMark, MarkLayer } from "./marks";
import { offsetLine } from "./offset";
import { reserveLines } from "./reserve";
import { stationMarks } from "./stations";
import type { StyleName } from "./styles";
import { ellipsize } from "./text-width";
import { gradeText, overAllText } from "./words";
import { isClearOfWorks, isOutside } from "./works";

/** A stretch of drive with one grade. */
export interface GradeRun {
  readonly from: number;
  readonly to: number;
  /** Positive climbs towards the building. */
  readonly grade: number;
  /** The steepest piece in it. */
  readonly steepest: number;
}

/** Grades closer than this read as one. */
const sameGrade = 0.004;
/** A stretch shorter than this on paper, mm, gets no label of its own. */
const shortestRun = 7;
/** Flatter than this is level to a driver. */
const level = 0.002;

/** Joins neighbouring pieces whose grades read as one; the joined grade is rise over the whole run. */
export function gradeRuns(stations: readonly DriveStation[]): readonly GradeRun[] {
  const runs: { from: DriveStation; to: DriveStation; grade: number; steepest: number }[] = [];
  for (const [i, station] of stations.entries()) {
    const next = stations[i + 1];
    if (!next || station.grade === null) continue;
    const last = runs[runs.length - 1];
    if (last && Math.abs(last.grade - station.grade) < sameGrade) {
      last.to = next;
      if (Math.abs(station.grade) > Math.abs(last.steepest)) last.steepest = station.grade;
    } else runs.push({ from: station, to: next, grade: station.grade, steepest: station.grade });
  }
  return runs.map(({ from, to, grade, steepest }) => {
    const run = to.distance - from.distance;
    return {
      from: from.distance,
      to: to.distance,
      grade: run > 0 ? (to.finished - from.finished) / run : grade,
      steepest,
    };
  });
}

/** "climbs 11.1 %", seen on the way to the building. */
export function climbText(grade: number, project: Project): string {
  if (Math.abs(grade) < level) return "level";
  return `${grade > 0 ? "climbs" : "falls"} ${gradeText(grade, project.display)}`;
}

/** The part of a line between two distances, flat x, y. */
export function partOf(line: readonly Point[], from: number, to: number): readonly number[] {
  const points: number[] = [...pointAlong(line, from).at];
  let passed = 0;
  for (const [i, corner] of line.entries()) {
    const before = line[i - 1];
    if (before) passed += Math.hypot(corner[0] - before[0], corner[1] - before[1]);
    if (passed > from && passed < to) points.push(...corner);
  }
  points.push(...pointAlong(line, to).at);
  return points;
}

/** Label places along a stretch: by the middle of its centreline, then nearer its ends, then beside the drive. */
function placesAlong(
  line: readonly Point[],
  run: { readonly from: number; readonly to: number },
  text: string,
  style: StyleName,
  halfWidth: number,
): readonly LabelTexts[] {
  const beside = capOf(style) / 2 + 0.9;
  // A wide drive has room beside its centreline; beside a narrow one it is written outside.
  const within = halfWidth > 2 * beside ? [beside, -beside] : [];
  const offs = [...within, halfWidth + beside, -halfWidth - beside];
  return offs.flatMap((off) =>
    [0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.1, 0.9].map((t) => {
      const { at, direction } = pointAlong(line, run.from + (run.to - run.from) * t);
      return along(at, text, style, readable(Math.atan2(direction[1], direction[0])), off);
    }),
  );
}

function gradeLabels(
  drive: Drive,
  result: DriveResult,
  project: Project,
  context: DrawContext,
): readonly DrawingMark[] {
  const runs = gradeRuns(result.stations);
  const steepest = runs.reduce<GradeRun | null>(
    (best, run) => (best && Math.abs(best.steepest) >= Math.abs(run.steepest) ? best : run),
    null,
  );
  const half = drive.width / 2 / context.metresPerMm;
  return runs.flatMap((run): DrawingMark[] => {
    const mark = run === steepest && Math.abs(run.grade) >= level;
    if (!mark && (run.to - run.from) / context.metresPerMm < shortestRun) return [];
    // The steepest is told as everywhere: that of one piece, not of pieces that read as one.
    const climb = climbText(mark ? run.steepest : run.grade, project);
    const text = mark && runs.length > 1 ? `steepest: ${climb}` : climb;
    const style = mark ? "drive-label" : "drive-grade";
    const places = placesAlong(drive.line, run, text, style, half);
    const label = placeLabel(context, "drives", places);
    const shown = mark && label.length === 0 ? ledGrade(drive, run, [text, climb], project, context) : label;
    const line: DrawingMark = {
      kind: "line",
      points: partOf(drive.line, run.from, run.to),
      style: "drive-steep",
    };
    return mark ? [line, ...shown] : [...shown];
  });
}

/** The steepest grade where it has no room along the drive: at the end of a leader, in full or short. */
function ledGrade(
  { line }: Drive,
  run: GradeRun,
  texts: readonly string[],
  project: Project,
  context: DrawContext,
): readonly DrawingMark[] {
  const { at, direction } = pointAlong(line, (run.from + run.to) / 2);
  const out = Math.atan2(direction[1], direction[0]) + Math.PI / 2;
  const led = texts.flatMap((text) =>
    ledPlaces(at, out, { text, style: "drive-label" }, context, { least: 7.5 }),
  );
  for (const clear of [isClearOfWorks, isOutside]) {
    const allows = (label: LabelTexts) => clear(label, project, context);
    const far = placeLed(context, "drives", at, led, { style: "note-leader", over: "over-lines", allows });
    if (far.length > 0) return far;
  }
  return [];
}

function driveShape(drive: Drive, context: DrawContext): DrawingMark[] {
  const left = offsetLine(drive.line, drive.width / 2).flat();
  const right = offsetLine(drive.line, -drive.width / 2).flat();
  const back = Array.from({ length: right.length / 2 }, (_, i) =>
    right.slice(right.length - 2 * i - 2, right.length - 2 * i),
  ).flat();
  // On paper the cut and fill below must show through.
  const tone: DrawingMark[] =
    context.medium === "screen" ? [{ kind: "area", rings: [[...left, ...back]], style: "drive" }] : [];
  return [
    ...tone,
    { kind: "line", points: left, style: "drive-edge" },
    { kind: "line", points: right, style: "drive-edge" },
    { kind: "line", points: drive.line.flat(), style: "drive-centre" },
  ];
}

function nameLabel(drive: Drive, project: Project, context: DrawContext): LabelTexts {
  const name = ellipsize(drive.name, longestName, sizeOf("drive-grade"));
  const width = overAllText(drive.width, project.display);
  const told = { thing: thingKey({ kind: "drive", id: drive.id }), length: width, rest: name };
  const run = { from: 0, to: polylineLength(drive.line) * 0.6 };
  const half = drive.width / 2 / context.metresPerMm;
  const places = placesAlong(drive.line, run, `${name}, ${width} wide`, "drive-grade", half);
  return placeLabel(context, "drives", telling(told, places));
}

/** On paper the stations of the tables; on screen they would only be in the way. */
function drivePegs(project: Project, results: Results, context: DrawContext): DrawingMark[] {
  if (context.medium === "screen") return [];
  const told = routeStations(project.grading, results.drives, []).drives;
  return project.grading.drives.flatMap(({ id, line, width }) =>
    stationMarks(line, told.get(id) ?? [], width / 2, "drives", context),
  );
}

/** All drives. The grades change with the floor: redrawn on every frame of a floor drag. */
export function drawDrives(project: Project, results: Results, context: DrawContext): MarkLayer {
  context.labels.forget("drives");
  reserveLines(project, results, context);
  const { drives } = project.grading;
  const shapes = drives.flatMap((drive) => driveShape(drive, context));
  // The tables lean on the stations' names: they take their places before the rest.
  const pegs = drivePegs(project, results, context);
  const labels = drives.flatMap((drive) => {
    const result = results.drives.find((one) => one.id === drive.id);
    const grades = result ? gradeLabels(drive, result, project, context) : [];
    return [...grades, ...nameLabel(drive, project, context)];
  });
  return { id: "drives", marks: [...shapes, ...labels, ...pegs] };
}
