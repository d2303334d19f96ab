import { readTapes } from "../files/tapes";
import {
  cornerAngles,
  type Misread,
  misreadTape,
  misreadWords,
  outOfSquare,
  type Squared,
  type SquaringFault,
  squareUp,
  type TapedLength,
} from "../plot";
import { readArgs } from "./args";
import { type Command, InputError } from "./command";
import { jsonText } from "./json";

export const square: Command = {
  name: "square",
  usage: "square SIDES.csv",
  about: [
    "Finds the corners of a building from taped sides and diagonals, and what to move; prints JSON.",
    "",
    "SIDES.csv has the columns from,to,distance: a row per side or diagonal between two corners; level lengths.",
    "",
    "  corners[{ name, x, y }]    round the building; the first measure runs from 0, 0 along the x axis",
    "  residuals[{ from, to, distance, adjusted, residual }]   residual = distance - adjusted, by least squares",
    "  redundancy                 measures beyond those needed; 0: nothing checks them",
    "  standardError              of one measure; null without redundancy",
    "  outOfSquare                the farthest that a corner must move for right angles, holding the first side; null",
    "                             where the corners are far from right angles",
    "  moves[{ corner, distance, parts[{ corner, distance }] }]   towards (+) or away from (-) the neighbours",
    "  angles[{ corner, degrees, off }]   inside angle, and how far from a right one",
    "  diagonals[{ from, to, length }]    as adjusted; of four corners both, else none",
    "  misread{ from, to, by, among }     a tape that contradicts the others as only a misread one does, null where none",
    "                       does: then all else is by the others without it, and empty where it can't be told which",
    "",
    "  unit                 m where the lengths are written with units (32' 6 1/2\", 9.75 m): all are turned into metres;",
    "                       null where they are plain numbers: then one unit in and out",
    "",
    "Ends with 1 where a tape is misread. --json is taken too; it prints nothing else.",
  ].join("\n"),
  async run(args, io) {
    const [file = ""] = readArgs(args, { files: ["SIDES.csv"], flags: ["json"] }).files;
    const read = readTapes(io.readText(file), file);
    if (!read.ok) throw new InputError(read.message);
    for (const note of read.notes) io.say(note);
    const bad = misreadTape(read.tapes);
    if (bad !== null) {
      const { what, how } = misreadWords(bad, read.tapes, telling(read.unit));
      const line = read.lines[bad.suspect?.tape ?? -1];
      io.say(`${line === undefined ? file : `${file}, line ${line}`}: ${what} ${how}`);
      io.out(jsonText({ unit: read.unit, ...withoutMisread(bad, read.tapes) }));
      return 1;
    }
    const found = squareUp(read.tapes);
    if (!found.ok) throw new InputError(`${placeOf(found, file, read.lines)}: ${found.what} ${found.how}`);
    io.out(jsonText({ unit: read.unit, ...report(found.squared), misread: null }));
    return 0;
  },
};

/** File, line and column where a fault is about one measure; else the file. */
function placeOf({ tape, part }: SquaringFault, file: string, lines: readonly number[]): string {
  const line = tape === undefined ? undefined : lines[tape];
  return line === undefined ? file : `${file}, line ${line}, column ${part ?? "distance"}`;
}

function telling(unit: "m" | null) {
  const digits = (distance: number) => String(Number(distance.toFixed(3)));
  return {
    length: (distance: number) => digits(distance) + (unit === null ? "" : " m"),
    metres: unit === "m",
  };
}

/** No moves for all tapes together; what the others say without the misread one, where it is known which. */
function withoutMisread({ suspect, among }: Misread, tapes: readonly TapedLength[]) {
  const names = among.map((i) => ({ from: tapes[i]?.from, to: tapes[i]?.to }));
  const left = suspect === null ? null : tapes[suspect.tape];
  const misread =
    suspect === null || !left
      ? { from: null, to: null, by: null, among: names }
      : { from: left.from, to: left.to, by: suspect.by, among: names };
  if (suspect === null)
    return {
      corners: [],
      residuals: [],
      redundancy: null,
      standardError: null,
      outOfSquare: null,
      moves: [],
      misread,
    };
  return { ...report(suspect.without), misread };
}

function report(squared: Squared) {
  const { corners, residuals, redundancy, standardError } = squared;
  const out = outOfSquare(corners);
  return {
    corners,
    residuals,
    redundancy,
    standardError,
    outOfSquare: out?.most ?? null,
    moves: out?.moves ?? [],
    angles: cornerAngles(corners).map(({ corner, angle, off }) => ({
      corner,
      degrees: degrees(angle),
      off: degrees(off),
    })),
    diagonals: diagonals(corners),
  };
}

function diagonals(corners: Squared["corners"]) {
  const [a, b, c, d] = corners;
  if (!a || !b || !c || !d || corners.length !== 4) return [];
  return [
    { from: a.name, to: c.name, length: Math.hypot(c.x - a.x, c.y - a.y) },
    { from: b.name, to: d.name, length: Math.hypot(d.x - b.x, d.y - b.y) },
  ];
}

function degrees(radians: number): number {
  return (radians * 180) / Math.PI;
}
