/**
 * Lot lines from a deed: courses of bearing and distance, and curves of radius and length, closed and adjusted.
 *
 * Units   any one unit of length; bearings in radians clockwise from north. x east, y north.
 * Sign    latitude north positive, departure east positive. The misclosure is what the courses miss their start by.
 * Method  latitude = distance x cos bearing, departure = distance x sin bearing; a curve counts as its chord,
 *         2 R sin(length / 2R), and its segment is added to the area. Compass rule: each course takes its share of the
 *         misclosure in proportion to its length. Area by coordinates of the adjusted corners.
 * Source  the usual school methods (Bowditch for the compass rule; the shoelace rule).
 * Errors  a course that can't be drawn is named, in words; nothing throws.
 */
import { type Point, signedArea } from "../geometry";

export interface DeedCall {
  /** Of the line, or of the chord; null for a curve that begins in the direction in which the course before ended. */
  readonly bearing: number | null;
  /** Of the line, or along the curve. */
  readonly distance: number;
  readonly curve: { readonly radius: number; readonly turns: "left" | "right" } | null;
}

export interface AdjustedCourse {
  readonly bearing: number;
  readonly distance: number;
  readonly latitude: number;
  readonly departure: number;
  /** Where the course ends, from its start at (0, 0). */
  readonly x: number;
  readonly y: number;
}

export interface Traverse {
  /** As written: latitude and departure of each course (of the chord, for a curve). */
  readonly courses: readonly {
    readonly latitude: number;
    readonly departure: number;
    readonly bearing: number;
  }[];
  readonly perimeter: number;
  /** Sums: where the courses end, from where they began. */
  readonly latitude: number;
  readonly departure: number;
  readonly misclosure: number;
  /** perimeter / misclosure; null where it closes exactly. */
  readonly precision: number | null;
  /** Within the adjusted courses and their curves. */
  readonly area: number;
  /** By the compass rule; they close. */
  readonly adjusted: readonly AdjustedCourse[];
}

export type TraverseResult =
  | { readonly ok: true; readonly traverse: Traverse }
  | { readonly ok: false; readonly course: number; readonly what: string; readonly how: string };

/** A misclosure below this share of the perimeter is rounding. */
const ROUNDING = 1e-12;
const TURN = 2 * Math.PI;

export function closeTraverse(calls: readonly DeedCall[]): TraverseResult {
  if (calls.length < 3) {
    return {
      ok: false,
      course: calls.length,
      what: `Only ${calls.length} ${calls.length === 1 ? "course is" : "courses are"} given, which enclose nothing.`,
      how: "Type all courses of the deed in their order, at least three.",
    };
  }
  const chords: Chord[] = [];
  for (const [i, call] of calls.entries()) {
    const chord = chordOf(call, chords.at(-1));
    if (typeof chord === "string") {
      return {
        ok: false,
        course: i,
        what: chord,
        how: "Look at the deed again; a curve has radius, length and the side it turns to.",
      };
    }
    chords.push(chord);
  }
  return { ok: true, traverse: close(calls, chords) };
}

interface Chord {
  readonly bearing: number;
  readonly length: number;
  /** Direction in which the course ends. */
  readonly out: number;
  /** Area between chord and curve, positive where the curve lies to the left of the chord. */
  readonly bulgeLeft: number;
}

function chordOf({ bearing, distance, curve }: DeedCall, before: Chord | undefined): Chord | string {
  if (!(distance > 0) || !Number.isFinite(distance)) return "Its distance is no length.";
  if (curve === null) {
    if (bearing === null) return "It has no bearing.";
    return { bearing, length: distance, out: bearing, bulgeLeft: 0 };
  }
  const { radius, turns } = curve;
  if (!(radius > 0) || !Number.isFinite(radius)) return "Its radius is no length.";
  const angle = distance / radius;
  if (angle >= TURN) return "Its curve is longer than a full circle of that radius.";
  const side = turns === "right" ? 1 : -1;
  if (bearing === null && before === undefined)
    return "It is a curve without a chord bearing, and nothing goes before it.";
  const chordBearing = bearing ?? (before?.out ?? 0) + (side * angle) / 2;
  return {
    bearing: chordBearing,
    length: 2 * radius * Math.sin(angle / 2),
    out: chordBearing + (side * angle) / 2,
    bulgeLeft: (side * radius * radius * (angle - Math.sin(angle))) / 2,
  };
}

function close(calls: readonly DeedCall[], chords: readonly Chord[]): Traverse {
  const courses = chords.map(({ bearing, length }) => ({
    bearing: wholeTurn(bearing),
    latitude: length * Math.cos(bearing),
    departure: length * Math.sin(bearing),
  }));
  const perimeter = calls.reduce((sum, { distance }) => sum + distance, 0);
  const latitude = courses.reduce((sum, course) => sum + course.latitude, 0);
  const departure = courses.reduce((sum, course) => sum + course.departure, 0);
  const missed = Math.hypot(latitude, departure);
  const misclosure = missed < ROUNDING * perimeter ? 0 : missed;
  const adjusted = compassRule(calls, courses, { latitude, departure, perimeter });
  const ring = adjusted.map(({ x, y }): Point => [x, y]);
  const turned = signedArea(ring);
  // Counter-clockwise the inside is to the left, so a curve to the left of its chord takes area away.
  const bulges = chords.reduce((sum, { bulgeLeft }) => sum + bulgeLeft, 0);
  return {
    courses,
    perimeter,
    latitude,
    departure,
    misclosure,
    precision: misclosure === 0 ? null : perimeter / misclosure,
    area: Math.abs(turned - bulges),
    adjusted,
  };
}

function compassRule(
  calls: readonly DeedCall[],
  courses: Traverse["courses"],
  sums: { readonly latitude: number; readonly departure: number; readonly perimeter: number },
): AdjustedCourse[] {
  let [x, y] = [0, 0];
  return courses.map((course, i) => {
    const share = (calls[i]?.distance ?? 0) / sums.perimeter;
    const latitude = course.latitude - share * sums.latitude;
    const departure = course.departure - share * sums.departure;
    x += departure;
    y += latitude;
    return {
      bearing: wholeTurn(Math.atan2(departure, latitude)),
      distance: Math.hypot(latitude, departure),
      latitude,
      departure,
      x,
      y,
    };
  });
}

function wholeTurn(radians: number): number {
  return ((radians % TURN) + TURN) % TURN;
}

/** Arcs are drawn in steps of at most this, radians. */
const ARC_STEP = (5 * Math.PI) / 180;

/** Where a deed lies on the plan. */
export interface DeedLie {
  readonly start: Point;
  /** How far the deed's north lies clockwise of the plan's y axis. */
  readonly turn: number;
  /** By the compass rule, or as written: then the last course may not come back to the start. */
  readonly adjust: boolean;
}

/** Each course on the plan: where it begins, then the places along its curve, arcs as short chords. */
export function traverseLines(
  calls: readonly DeedCall[],
  traverse: Traverse,
  { start, turn, adjust }: DeedLie,
): Point[][] {
  let here: Point = start;
  return calls.map(({ curve, distance }, i) => {
    const course = (adjust ? traverse.adjusted : traverse.courses)[i];
    if (course === undefined) return [];
    const bearing = Math.atan2(course.departure, course.latitude) + turn;
    const length = Math.hypot(course.latitude, course.departure);
    const arc = curve === null ? [] : arcPoints(here, bearing, length, distance / curve.radius, curve.turns);
    const line = [here, ...arc];
    here = [here[0] + length * Math.sin(bearing), here[1] + length * Math.cos(bearing)];
    return line;
  });
}

/** The lot's corners on the plan, arcs as short chords. */
export function traverseOutline(calls: readonly DeedCall[], traverse: Traverse, lie: DeedLie): Point[] {
  return traverseLines(calls, traverse, lie).flat();
}

/** The places between the ends of an arc over a chord. */
function arcPoints(
  from: Point,
  bearing: number,
  chord: number,
  angle: number,
  turns: "left" | "right",
): Point[] {
  const steps = Math.ceil(angle / ARC_STEP);
  const radius = chord / (2 * Math.sin(angle / 2));
  const side = turns === "right" ? 1 : -1;
  return Array.from({ length: Math.max(0, steps - 1) }, (_, k): Point => {
    const part = (angle * (k + 1)) / steps;
    const direction = bearing - (side * (angle - part)) / 2;
    const length = 2 * radius * Math.sin(part / 2);
    return [from[0] + length * Math.sin(direction), from[1] + length * Math.cos(direction)];
  });
}
