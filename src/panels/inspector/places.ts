/** The places and sides of a thing as the inspector lists them, each with its name. */
import { type Point, type Project, type Thing, thingShape } from "../../document";
import { cornerName } from "../../grading";

export interface NamedPlace {
  readonly name: string;
  readonly at: Point;
}

export interface NamedSide {
  readonly name: string;
  readonly m: number;
}

/** Places that can be typed over; of a door, a window and a picture the middle. */
export function placesOf(project: Project, thing: Thing): NamedPlace[] {
  if (thing.kind === "door" || thing.kind === "window") {
    const [a, b] = thingShape(project, thing)?.points ?? [];
    return a && b ? [{ name: "middle", at: [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2] }] : [];
  }
  if (thing.kind === "underlay") {
    const picture = project.drawing.underlays.find(({ id }) => id === thing.id);
    return picture ? [{ name: "middle", at: picture.at }] : [];
  }
  const points = thingShape(project, thing)?.points ?? [];
  return points.map((at, i) => ({ name: placeName(thing, i, points.length), at }));
}

function placeName(thing: Thing, index: number, count: number): string {
  if (thing.kind === "building") return cornerName(index);
  if (thing.kind === "note") return index === 0 ? "words" : "points to";
  if (thing.kind === "dimension" || thing.kind === "section") return index === 0 ? "from" : "to";
  return count === 1 ? "place" : String(index + 1);
}

/** Sides of the thing in order. */
export function sidesOf(project: Project, thing: Thing): NamedSide[] {
  if (["door", "window", "underlay", "note"].includes(thing.kind)) return [];
  const shape = thingShape(project, thing);
  const n = shape?.points.length ?? 0;
  if (!shape || n < 2) return [];
  const count = shape.closed ? n : n - 1;
  return Array.from({ length: count }, (_, i) => {
    const [a, b] = [shape.points[i] as Point, shape.points[(i + 1) % n] as Point];
    const names = [placeName(thing, i, n), placeName(thing, (i + 1) % n, n)];
    return { name: names.join("–"), m: Math.hypot(b[0] - a[0], b[1] - a[1]) };
  });
}

/** Between corners that aren't neighbours, for rings of four: what is taped to check that it is square. */
export function diagonalsOf(project: Project, thing: Thing): NamedSide[] {
  const shape = thingShape(project, thing);
  const [a, b, c, d] = shape?.points ?? [];
  if (!shape?.closed || shape.points.length !== 4 || !a || !b || !c || !d || thing.kind === "underlay")
    return [];
  const names = [0, 1, 2, 3].map((i) => placeName(thing, i, 4));
  return [
    { name: `${names[0]}–${names[2]}`, m: Math.hypot(c[0] - a[0], c[1] - a[1]) },
    { name: `${names[1]}–${names[3]}`, m: Math.hypot(d[0] - b[0], d[1] - b[1]) },
  ];
}

/** Where places are counted from: the plan's origin, or a mark that has a place. */
export interface Origin {
  readonly id: string;
  readonly name: string;
  readonly at: Point;
}

export function originsOf(project: Project): Origin[] {
  const marks = project.survey.marks.flatMap((mark): Origin[] =>
    mark.at ? [{ id: mark.id, name: mark.name.trim() || "mark", at: mark.at }] : [],
  );
  return [{ id: "plan", name: "the plan's origin", at: [0, 0] }, ...marks];
}

/** How the thing lies: bearing of its first side clockwise from north, radians; null where it has none. */
export function bearingOf(project: Project, thing: Thing): number | null {
  if (thing.kind === "underlay") {
    const picture = project.drawing.underlays.find(({ id }) => id === thing.id);
    return picture ? wrapped(-picture.turn) : null;
  }
  if (["door", "window", "note", "dimension"].includes(thing.kind)) return null;
  const [a, b] = thingShape(project, thing)?.points ?? [];
  if (!a || !b) return null;
  return wrapped(Math.atan2(b[0] - a[0], b[1] - a[1]) - project.lot.north);
}

function wrapped(angle: number): number {
  const full = 2 * Math.PI;
  return ((angle % full) + full) % full;
}
