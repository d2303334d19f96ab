import { readPlaces } from "../files/points";
import { readSurface } from "../files/surface";
import { locate, planArea, surfaceArea, type Tin, trianglePlane } from "../terrain";
import { readArgs } from "./args";
import { type Command, InputError, type Io } from "./command";

export const surface: Command = {
  name: "surface",
  usage: "surface POINTS.csv [--lines LINES.csv] [--at Q.csv]",
  about: [
    "Triangulates points of ground and prints the surface as JSON.",
    "",
    "POINTS.csv has the columns name,x,y,z (x east, y north). LINES.csv has line,x,y[,z]: rows with the same line are the",
    "corners of a breakline, which no triangle crosses; a corner without z takes its height from the points. Q.csv has x,y.",
    "",
    "  points, triangles             number of places and of triangles of the surface",
    "  planArea, surfaceArea         seen from above, and along the slopes",
    "  at[{ x, y, z, inside, slope, downhill }]   for each row of Q.csv, in order: z, slope and downhill are null outside;",
    "                                slope is rise over run; downhill the azimuth in degrees from north, null on level ground",
    "",
    "One unit of length in and out. --json is taken too; it prints nothing else.",
  ].join("\n"),
  async run(args, io) {
    const given = readArgs(args, {
      files: ["POINTS.csv"],
      values: { lines: "a file of breaklines", at: "a file of places" },
      flags: ["json"],
    });
    const tin = surfaceFromFiles(io, given.files[0] ?? "", given.value("lines"));
    const places = given.value("at");
    io.out(
      JSON.stringify({ ...sizeOf(tin), at: places === undefined ? [] : answers(tin, io, places) }, null, 2),
    );
    return 0;
  },
};

/** Reads the surface of a file of points (and one of lines), telling what there is to say about it. */
export function surfaceFromFiles(io: Io, pointsFile: string, linesFile?: string): Tin {
  const source = (file: string) => ({ file, text: io.readText(file) });
  const read = readSurface(source(pointsFile), linesFile === undefined ? undefined : source(linesFile));
  if (!read.ok) throw new InputError(read.message);
  for (const note of read.notes) io.say(note);
  return read.tin;
}

function sizeOf(tin: Tin) {
  return {
    points: new Set(tin.triangles).size,
    triangles: tin.triangles.length / 3,
    planArea: planArea(tin),
    surfaceArea: surfaceArea(tin),
  };
}

interface Answer {
  readonly x: number;
  readonly y: number;
  readonly z: number | null;
  readonly inside: boolean;
  readonly slope: number | null;
  readonly downhill: number | null;
}

function answers(tin: Tin, io: Io, file: string): Answer[] {
  const read = readPlaces(io.readText(file), file);
  if (!read.ok) throw new InputError(read.message);
  for (const note of read.notes) io.say(note);
  let last = 0;
  return read.places.map(([x, y]) => {
    const triangle = locate(tin, x, y, last);
    if (triangle < 0) return { x, y, z: null, inside: false, slope: null, downhill: null };
    last = triangle;
    const { z, gx, gy } = trianglePlane(tin, triangle, x, y);
    return { x, y, z, inside: true, slope: Math.hypot(gx, gy), downhill: downhillAzimuth(gx, gy) };
  });
}

/** A slope under this, rise over run, is rounding: a millimetre in a thousand kilometres. */
const LEVEL = 1e-9;

/** Degrees clockwise from north, from 0 to under 360, in which ground of that gradient falls; null where it is level. */
function downhillAzimuth(gx: number, gy: number): number | null {
  if (Math.hypot(gx, gy) < LEVEL) return null;
  const degrees = (Math.atan2(-gx, -gy) * 180) / Math.PI;
  const positive = degrees < 0 ? degrees + 360 : degrees;
  return positive >= 360 ? 0 : positive + 0; // + 0 turns -0 into 0
}
