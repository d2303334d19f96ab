/** Points from a file join the survey: a set-up of their own, read as heights, so that they are told from what was shot. Metres. */
import { type Mark, type Project, type Shot, setupSchema, shotSchema } from "../schema";
import { command, done, type Edit, nextId, refuse } from "./command";

export interface JoiningPoint {
  readonly name: string;
  readonly x: number;
  readonly y: number;
  /** NaN or null: the point has no height; it joins, but makes no ground. */
  readonly z: number | null;
}

/** Adds points in one step; `from` names where they come from ("Points from lot.csv"). `made` is the set-up's id. */
export const joinPoints = command(
  "survey.joinPoints",
  (project, { points, from }: { points: readonly JoiningPoint[]; from: string }): Edit => {
    if (points.length === 0) return refuse("There is no point to add.");
    const odd = points.find(({ x, y, z }) => !Number.isFinite(x + y) || z === Infinity || z === -Infinity);
    if (odd) return refuse(`The point ${odd.name || "without a name"} has no place that can be used.`);
    const setup = setupSchema.parse({
      id: nextId("u", project.survey.setups),
      name: from.trim() || "Points from a file",
      assumedBeam: { text: "0 m", m: 0 },
      rod: { kind: "direct", reads: "up" },
    });
    const shots = [...project.survey.shots, ...shotsFrom(project, points, setup.id)];
    const survey = { ...project.survey, setups: [...project.survey.setups, setup], shots };
    const label = points.length === 1 ? "add a point from a file" : `add ${points.length} points from a file`;
    return done({ ...project, survey }, label, { made: setup.id });
  },
);

/** Adds known heights that aren't ground as marks, in one step. One that the plan has already, of that name, place and height, isn't doubled. */
export const joinMarks = command(
  "survey.joinMarks",
  (project, { marks }: { marks: readonly (JoiningPoint & { readonly z: number })[] }): Edit => {
    const odd = marks.find(({ x, y, z }) => !Number.isFinite(x + y + z));
    if (odd)
      return refuse(`The mark ${odd.name || "without a name"} has no place and height that can be used.`);
    const list: Mark[] = [...project.survey.marks];
    for (const { name, x, y, z } of marks) {
      const known = list.some(
        ({ name: other, at, height }) =>
          other === name && at !== null && Math.hypot(at[0] - x, at[1] - y, height.m - z) < SAME,
      );
      if (known) continue;
      const id = nextId("m", list);
      list.push({ id, name: name.trim() || "Mark", at: [x, y], height: metres(z), note: "" });
    }
    const label = marks.length === 1 ? "add a mark from a file" : `add ${marks.length} marks from a file`;
    return done({ ...project, survey: { ...project.survey, marks: list } }, label);
  },
);

/** Nearer than this it is the same mark, m. */
const SAME = 1e-6;

/** A height in metres as it is kept: with its text. */
function metres(m: number) {
  return { text: `${Number(m.toFixed(9))} m`, m };
}

function shotsFrom(project: Project, points: readonly JoiningPoint[], setup: string): Shot[] {
  const first = Number(nextId("s", project.survey.shots).slice(1));
  const usual = shotSchema.parse({ id: "s1", setup, reading: null });
  return points.map(({ name, x, y, z }, i) => ({
    ...usual,
    id: `s${first + i}`,
    name,
    reading: z === null || Number.isNaN(z) ? null : metres(z),
    place: { kind: "at", x, y },
  }));
}
