import { readCalls } from "../files/calls";
import { closeTraverse, type Traverse } from "../plot";
import { formatDeedBearing } from "../units";
import { readArgs } from "./args";
import { type Command, InputError } from "./command";

export const closure: Command = {
  name: "closure",
  usage: "closure CALLS.csv",
  about: [
    "Closes the courses of a deed and prints misclosure, precision, area and the adjusted courses as JSON.",
    "",
    "CALLS.csv has the columns bearing,distance, a row per course in the deed's order; bearings such as N 26-10-05 E, or",
    "an azimuth in degrees clockwise from north. A curve has radius and turns (left or right) too: its distance is along",
    "the curve, its bearing that of the chord, or nothing where it goes on in the direction of the course before.",
    "",
    "  misclosure           length by which the courses miss their start",
    "  latitude, departure  the same, north and east",
    "  perimeter            sum of the distances",
    "  precision            perimeter / misclosure; null where it closes exactly",
    "  area                 within the adjusted courses",
    "  courses[{ bearing, latitude, departure }]       as written; bearing as an azimuth in degrees",
    "  adjusted[{ bearing, quadrant, distance, latitude, departure, x, y }]   by the compass rule; x (east), y (north) of",
    "                       the end of each course, from the start at 0, 0; of a curve the distance is its chord",
    "",
    "  unit                 m where the lengths are written with units (32' 6 1/2\", 9.75 m): all are turned into metres;",
    "                       null where they are plain numbers: then one unit in and out",
    "",
    "--json is taken too; it prints nothing else.",
  ].join("\n"),
  async run(args, io) {
    const [file = ""] = readArgs(args, { files: ["CALLS.csv"], flags: ["json"] }).files;
    const read = readCalls(io.readText(file), file);
    if (!read.ok) throw new InputError(read.message);
    for (const note of read.notes) io.say(note);
    const closed = closeTraverse(read.calls);
    if (!closed.ok) {
      const line = read.calls[closed.course]?.line ?? (read.calls.at(-1)?.line ?? 1) + 1;
      throw new InputError(`${file}, line ${line}: ${closed.what} ${closed.how}`);
    }
    io.out(JSON.stringify({ unit: read.unit, ...report(closed.traverse) }, null, 2));
    return 0;
  },
};

function report({
  courses,
  adjusted,
  misclosure,
  precision,
  perimeter,
  latitude,
  departure,
  area,
}: Traverse) {
  return {
    misclosure,
    precision,
    perimeter,
    latitude: tidy(latitude),
    departure: tidy(departure),
    area,
    courses: courses.map((course) => ({ ...course, bearing: degrees(course.bearing) })),
    adjusted: adjusted.map((course) => ({
      ...course,
      bearing: degrees(course.bearing),
      quadrant: formatDeedBearing(course.bearing),
      x: tidy(course.x),
      y: tidy(course.y),
    })),
  };
}

function degrees(radians: number): number {
  return (radians * 180) / Math.PI;
}

/** What is left of a sum that should be nothing. */
function tidy(value: number): number {
  return Math.abs(value) < 1e-12 ? 0 : value;
}
