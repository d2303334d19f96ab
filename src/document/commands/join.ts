/** Points from a file join the survey: a set-up of their own, read as heights, so that they are told from what was shot. Metres. */
import { type Project, type Shot, setupSchema, shotSchema } from "../schema";
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

function shotsFrom(project: Project, points: readonly JoiningPoint[], setup: string): Shot[] {
  const first = Number(nextId("s", project.survey.shots).slice(1));
  const usual = shotSchema.parse({ id: "s1", setup, reading: null });
  return points.map(({ name, x, y, z }, i) => ({
    ...usual,
    id: `s${first + i}`,
    name,
    reading: z === null || Number.isNaN(z) ? null : { text: `${Number(z.toFixed(9))} m`, m: z },
    place: { kind: "at", x, y },
  }));
}
