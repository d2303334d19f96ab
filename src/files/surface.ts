/** Tables of points (and breaklines) → a surface, with what there is to say about it in words. */
import {
  type DroppedPoint,
  type HeightConflict,
  type Tin,
  triangulate,
  triangulateWithLines,
} from "../terrain";
import { type LineTable, type PointTable, readLines, readPoints } from "./points";

export type ReadSurface =
  | { readonly ok: true; readonly tin: Tin; readonly notes: readonly string[] }
  | { readonly ok: false; readonly message: string };

/** A file's name, for messages, and its text. */
export interface Source {
  readonly file: string;
  readonly text: string;
}

/** At most so many messages of one kind; the rest are counted. */
const MESSAGES_SHOWN = 8;

/** The surface of a table of points, with breaklines if a table of them is given. */
export function readSurface(pointSource: Source, lineSource?: Source): ReadSurface {
  const { file } = pointSource;
  const read = readPoints(pointSource.text, file);
  if (!read.ok) return read;
  if (!lineSource) return plainSurface(read.points, file, read.notes);
  const lines = readLines(lineSource.text, lineSource.file);
  if (!lines.ok) return lines;
  return linedSurface(read.points, file, lines, lineSource.file, [...read.notes, ...lines.notes]);
}

function plainSurface(points: PointTable, file: string, notes: readonly string[]): ReadSurface {
  const made = triangulate(points.x, points.y, points.z);
  if (!made.ok) return { ok: false, message: tooLittle(made.reason, points, file) };
  return { ok: true, tin: made.tin, notes: [...notes, ...doubled(made.dropped, points, file)] };
}

function linedSurface(
  points: PointTable,
  file: string,
  { lines, rows }: LineTable,
  linesFile: string,
  notes: readonly string[],
): ReadSurface {
  const made = triangulateWithLines(points.x, points.y, points.z, lines);
  if (!made.ok && made.reason === "no-height") {
    const faults = made.missing.map(
      ([line, corner]) =>
        `${linesFile}, line ${rows[line]?.[corner]}, column z: found nothing, expected a height, ` +
        "for this corner is not within the points and can't take its height from them.",
    );
    return { ok: false, message: shortened(faults).join("\n") };
  }
  if (!made.ok) return { ok: false, message: tooLittle(made.reason, points, file) };
  const said = [...doubled(made.dropped, points, file), ...shortened(made.conflicts.map(conflictInWords))];
  return { ok: true, tin: made.tin, notes: [...notes, ...said] };
}

function tooLittle(reason: "too-few" | "in-line", { lines }: PointTable, file: string): string {
  const found = `${lines.length} ${lines.length === 1 ? "point" : "points"}`;
  if (reason === "too-few") return `${file}: found ${found}, expected at least 3 at different places.`;
  return `${file}: found ${found} that lie in one straight line, expected at least one beside it.`;
}

function doubled(dropped: readonly DroppedPoint[], { lines, z }: PointTable, file: string): string[] {
  return shortened(
    dropped.map(({ index, sameAs }) => {
      const heights =
        z[index] === z[sameAs] ? "" : ` Its height ${z[index]} was left out, ${z[sameAs]} holds.`;
      return `${file}, line ${lines[index]}: this point stands where that of line ${lines[sameAs]} does.${heights}`;
    }),
  );
}

function conflictInWords({ kind, x, y, lines, heights, taken }: HeightConflict): string {
  const place = `at ${rounded(x)}, ${rounded(y)}`;
  const [one, other] = heights.map(rounded);
  if (kind === "corner") {
    return `The line "${lines[0]}" has a corner ${place} with the height ${other}, where ${one} stands already; ${rounded(taken)} holds.`;
  }
  return `The lines "${lines[0]}" and "${lines[1]}" cross ${place} with the heights ${one} and ${other}; ${rounded(taken)} was taken.`;
}

function rounded(value: number): number {
  return Number(value.toFixed(4));
}

function shortened(messages: readonly string[]): string[] {
  const rest = messages.length - MESSAGES_SHOWN;
  if (rest <= 0) return [...messages];
  return [...messages.slice(0, MESSAGES_SHOWN), `… and ${rest} more like these.`];
}
