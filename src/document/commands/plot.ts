/** Edits of the building's taped sides and diagonals, of the lot's deed and its setbacks. */
import { parseDeedBearing } from "../../units";
import {
  type Course,
  courseSchema,
  type Deed,
  deedSchema,
  type Point,
  type Project,
  type Setback,
  setbackSchema,
  type Tape,
  tapeSchema,
} from "../schema";
import { lotAlong } from "../setbackLines";
import { command, done, type Edit, nextId, patched, refuse, replaced } from "./command";
import { measure } from "./measure";

function withTapes(project: Project, tapes: Tape[], label: string, made?: string): Edit {
  return done(
    { ...project, staking: { ...project.staking, tapes } },
    label,
    made === undefined ? {} : { made },
  );
}

/** A side or diagonal as taped between two corners of the building; a second one of the same two replaces nothing. */
export const addTape = command(
  "staking.addTape",
  (project, args: { from: number; to: number; text: string; held?: Tape["held"] }): Edit => {
    const corners = project.building?.outline.length ?? 0;
    if (args.from === args.to || args.from >= corners || args.to >= corners)
      return refuse("Choose two different corners of the building.");
    const length = measure(args.text, project, "length");
    if (!length.ok) return refuse(length.why);
    if (!(length.measure.m > 0)) return refuse("Type what the tape read: more than nothing.");
    const id = nextId("t", project.staking.tapes);
    const tape = tapeSchema.parse({ ...args, id, length: length.measure });
    return withTapes(project, [...project.staking.tapes, tape], "type a taped length", id);
  },
);

export const changeTape = command(
  "staking.changeTape",
  (project, args: { id: string; text?: string; held?: Tape["held"] }): Edit => {
    const length = args.text === undefined ? null : measure(args.text, project, "length");
    if (length && !length.ok) return refuse(length.why);
    if (length && !(length.measure.m > 0)) return refuse("Type what the tape read: more than nothing.");
    const tapes = replaced(project.staking.tapes, args.id, (tape) => ({
      ...tape,
      ...(length ? { length: length.measure } : {}),
      ...(args.held === undefined ? {} : { held: args.held }),
    }));
    return tapes ? withTapes(project, tapes, "change a taped length") : refuse("That measure is gone.");
  },
);

export const removeTape = command("staking.removeTape", (project, args: { id: string }) =>
  withTapes(
    project,
    project.staking.tapes.filter(({ id }) => id !== args.id),
    "remove a taped length",
  ),
);

/** What is typed for one course of a deed. */
export interface CourseEntry {
  readonly bearing: string;
  readonly distance: string;
  readonly radius?: string;
  readonly turns?: "left" | "right";
}

function readCourse(project: Project, id: string, entry: CourseEntry): Course | string {
  const bearing = parseDeedBearing(entry.bearing);
  if (!bearing.ok) return bearing.message;
  const distance = measure(entry.distance, project, "length");
  if (!distance.ok) return distance.why;
  const typed = entry.radius?.trim() ?? "";
  const radius = typed === "" ? null : measure(typed, project, "length");
  if (radius && !radius.ok) return radius.why;
  const curve = radius ? { radius: radius.measure, turns: entry.turns ?? "right" } : null;
  return courseSchema.parse({
    id,
    bearing: { text: entry.bearing.trim(), radians: bearing.radians },
    distance: distance.measure,
    curve,
  });
}

function withDeed(project: Project, deed: Deed | null, label: string, made?: string): Edit {
  return done({ ...project, lot: { ...project.lot, deed } }, label, made === undefined ? {} : { made });
}

const noDeed = deedSchema.parse({});

export const addCourse = command("deed.addCourse", (project, args: CourseEntry): Edit => {
  const deed = project.lot.deed ?? noDeed;
  const id = nextId("k", deed.courses);
  const course = readCourse(project, id, args);
  if (typeof course === "string") return refuse(course);
  return withDeed(project, { ...deed, courses: [...deed.courses, course] }, "type a course of the deed", id);
});

export const changeCourse = command(
  "deed.changeCourse",
  (project, args: CourseEntry & { id: string }): Edit => {
    const deed = project.lot.deed ?? noDeed;
    const course = readCourse(project, args.id, args);
    if (typeof course === "string") return refuse(course);
    const courses = replaced(deed.courses, args.id, () => course);
    return courses
      ? withDeed(project, { ...deed, courses }, "change a course of the deed")
      : refuse("That course is gone.");
  },
);

export const removeCourse = command("deed.removeCourse", (project, args: { id: string }) => {
  const deed = project.lot.deed ?? noDeed;
  const courses = deed.courses.filter(({ id }) => id !== args.id);
  return withDeed(project, { ...deed, courses }, "remove a course of the deed");
});

/** Where the deed begins, how its north lies, whether its misclosure is spread. */
export const changeDeed = command(
  "deed.change",
  (project, args: { patch: Partial<Omit<Deed, "courses">> }): Edit => {
    const next = patched<Deed>(deedSchema, project.lot.deed ?? noDeed, args.patch);
    return next.ok ? withDeed(project, next.value, "change how the deed lies") : refuse(next.why);
  },
);

/** Draws the lot as the deed has it; the corners come from the closed courses. */
export const drawDeed = command("deed.draw", (project, args: { outline: readonly Point[] }) =>
  args.outline.length < 3
    ? refuse("A lot needs at least three courses.")
    : done({ ...project, lot: lotAlong(project.lot, args.outline) }, "draw the lot from its deed"),
);

/** How far from one piece of lot line nothing may be built; an empty text or nothing takes it away. */
export const setSetback = command(
  "lot.setSetback",
  (project, args: { line: number; text: string; name?: string }): Edit => {
    if (args.line >= project.lot.outline.length) return refuse("That piece of lot line isn't there.");
    const others = project.lot.setbacks.filter(({ line }) => line !== args.line);
    const typed = args.text.trim() === "" ? null : measure(args.text, project, "length");
    if (typed && !typed.ok) return refuse(typed.why);
    if (typed && typed.measure.m < 0)
      return refuse("A setback is measured into the lot: type one that isn't negative.");
    const own: Setback[] = typed
      ? [setbackSchema.parse({ line: args.line, distance: typed.measure, name: args.name ?? "" })]
      : [];
    const setbacks = [...others, ...own].sort((a, b) => a.line - b.line);
    return done({ ...project, lot: { ...project.lot, setbacks } }, "type a setback");
  },
);
