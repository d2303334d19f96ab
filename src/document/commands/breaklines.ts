/** Edits of breaklines, and of how far triangles may reach at the edge of the shots. Metres. */
import { type BreaklineKind, breaklineWord, isClosedBreakline } from "../breaklineKinds";
import { type Breakline, breaklineSchema, type Point, type Project, type Survey } from "../schema";
import { command, done, type Edit, nextId, patched, refuse, replaced } from "./command";
import { measure } from "./measure";

function withSurvey(project: Project, change: Partial<Survey>): Project {
  return { ...project, survey: { ...project.survey, ...change } };
}

/** What is wrong with a line's places, in words; null where nothing is. */
function fault({ kind, points }: Pick<Breakline, "kind" | "points">): string | null {
  if (isClosedBreakline(kind) && points.length < 3)
    return `The ${breaklineWord(kind)} goes round an area, so it needs at least three places.`;
  return points.length < 2 ? "A breakline needs at least two places." : null;
}

type Added = Partial<Omit<Breakline, "id">> & Pick<Breakline, "points">;

/** Adds one line, drawn by hand. */
export const addBreakline = command(
  "breakline.add",
  (project, args: Added): Edit => joinBreaklines.run(project, { lines: [args] }),
);

/** Adds lines, as from a file, in one step: all of them or none. */
export const joinBreaklines = command(
  "breakline.join",
  (project, { lines }: { lines: readonly Added[] }): Edit => {
    let list = project.survey.breaklines;
    let made: string | undefined;
    for (const line of lines) {
      made = nextId("b", list);
      const kind = line.kind ?? "ridge";
      const read = breaklineSchema.safeParse({
        ...line,
        kind,
        id: made,
        name: line.name ?? named(kind, list),
      });
      if (!read.success) return refuse("A breakline needs at least two places, each with numbers.");
      const why = fault(read.data);
      if (why) return refuse(why);
      list = [...list, read.data];
    }
    if (made === undefined) return refuse("There is no line to add.");
    const label = lines.length === 1 ? "draw breakline" : `add ${lines.length} breaklines`;
    return done(withSurvey(project, { breaklines: list }), label, { made });
  },
);

function named(kind: BreaklineKind, list: readonly Breakline[]): string {
  const same = list.filter((line) => line.kind === kind).length;
  return same === 0 ? breaklineWord(kind) : `${breaklineWord(kind)} ${same + 1}`;
}

export const changeBreakline = command(
  "breakline.change",
  (project, args: { id: string; patch: Partial<Omit<Breakline, "id">>; what?: string }): Edit => {
    const line = project.survey.breaklines.find(({ id }) => id === args.id);
    if (!line) return refuse("That breakline is gone.");
    const next = patched<Breakline>(breaklineSchema, line, args.patch);
    if (!next.ok) return refuse(next.why);
    const why = fault(next.value);
    if (why) return refuse(why);
    const breaklines = replaced(project.survey.breaklines, args.id, () => next.value);
    return breaklines
      ? done(withSurvey(project, { breaklines }), args.what ?? "change breakline")
      : refuse("That breakline is gone.");
  },
);

/** The height of one of a line's places, as typed; an empty text leaves it to the shots round it. */
export const setBreaklineHeight = command(
  "breakline.setHeight",
  (project, args: { id: string; index: number; text: string }): Edit => {
    const line = project.survey.breaklines.find(({ id }) => id === args.id);
    if (!line?.points[args.index]) return refuse("That place of the breakline is gone.");
    const typed = args.text.trim() === "" ? null : measure(args.text, project, "length");
    if (typed && !typed.ok) return refuse(typed.why);
    const z = typed ? typed.measure.m : null;
    const points = line.points.map((point, i): Breakline["points"][number] =>
      i === args.index ? [point[0], point[1], z] : point,
    );
    return changeBreakline.run(project, {
      id: args.id,
      patch: { points },
      what: "type a breakline's height",
    });
  },
);

/** Puts the line's places elsewhere; as many as before keep their heights, else those that stay where they were do. */
export const setBreaklinePlaces = command(
  "breakline.setPlaces",
  (project, args: { id: string; points: readonly Point[]; what: string }): Edit => {
    const line = project.survey.breaklines.find(({ id }) => id === args.id);
    if (!line) return refuse("That breakline is gone.");
    const before = line.points;
    const heightOf = ([x, y]: Point, i: number) =>
      args.points.length === before.length
        ? (before[i]?.[2] ?? null)
        : (before.find((point) => point[0] === x && point[1] === y)?.[2] ?? null);
    const points = args.points.map((at, i): Breakline["points"][number] => [at[0], at[1], heightOf(at, i)]);
    return changeBreakline.run(project, { id: args.id, patch: { points }, what: args.what });
  },
);

export const removeBreakline = command("breakline.remove", (project, args: { id: string }) =>
  done(
    withSurvey(project, { breaklines: project.survey.breaklines.filter(({ id }) => id !== args.id) }),
    "remove breakline",
  ),
);

/** Longest side of a triangle at the edge of the shots, m; null or 0 lets every triangle be. */
export const setLongestEdge = command(
  "breakline.setLongestEdge",
  (project, { m }: { m: number | null }): Edit => {
    if (m !== null && !(m >= 0 && Number.isFinite(m)))
      return refuse("The longest side can't be less than nothing. Leave it empty for no limit.");
    return done(withSurvey(project, { longestEdge: m || null }), "set the longest side at the edge");
  },
);
