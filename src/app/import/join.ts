/** The one step in which a looked-at file joins the plan: its points as heights, its marks as marks, its lines as breaklines. */
import { type BreaklineKind, type Project, surveyEdits } from "../../document";
import type { Incoming, IncomingLine } from "../../files/incoming";
import { runInSteps, runTogether } from "../../store/actions";
import { type LineChoices, linesToJoin } from "./lineGroups";

type JoiningPoint = Parameters<typeof surveyEdits.joinPoints.run>[1]["points"][number];
type JoiningMark = Parameters<typeof surveyEdits.joinMarks.run>[1]["marks"][number];
type JoiningLine = Parameters<typeof surveyEdits.joinBreaklines.run>[1]["lines"][number];

/** As many points as this keep the window busy for longer than a press should. */
const MANY = 20_000;

/** Told while a crowd of points is worked in. */
export interface Joining {
  readonly tell: (share: number) => void;
  readonly isStopped: () => boolean;
}

/** Why nothing joined, or null. `incoming` in metres, where it is to lie. A crowd of points is worked in by steps. */
export async function joinGround(
  name: string,
  incoming: Incoming,
  choices: LineChoices,
  progress: Joining,
): Promise<string | null> {
  const label = `import ${name}`;
  const points = joiningPoints(incoming);
  const edits = joiningEdits(name, incoming, choices);
  if (points.length >= MANY) return runInSteps(label, edits, progress);
  const edit = runTogether(label, edits);
  return edit.ok ? null : edit.why;
}

/** The edits, one after the other, of what joins. */
export function joiningEdits(name: string, incoming: Incoming, choices: LineChoices) {
  const points = joiningPoints(incoming);
  const marks = joiningMarks(incoming);
  const lines = linesToJoin(incoming.lines, choices).map(([line, kind]) => joiningLine(line, kind));
  const from = `Points from ${name}`;
  return [
    ...(marks.length > 0 ? [(project: Project) => surveyEdits.joinMarks.run(project, { marks })] : []),
    ...(points.length > 0
      ? [(project: Project) => surveyEdits.joinPoints.run(project, { points, from })]
      : []),
    ...(lines.length > 0 ? [(project: Project) => surveyEdits.joinBreaklines.run(project, { lines })] : []),
  ];
}

/** A mark is a known height: without one it is left out. */
function joiningMarks({ marks }: Pick<Incoming, "marks">): JoiningMark[] {
  return Array.from(marks.x, (x, i) => {
    const [y, z] = [marks.y[i] as number, marks.z[i] as number];
    return { name: marks.names[i] ?? "", x, y, z };
  }).filter(({ z }) => !Number.isNaN(z));
}

/** The points, and the corners of triangles, each place once. */
export function joiningPoints({ points, faces }: Pick<Incoming, "points" | "faces">): JoiningPoint[] {
  const joining = Array.from(points.x, (x, i): JoiningPoint => {
    const z = points.z[i] as number;
    return { name: points.names[i] ?? "", x, y: points.y[i] as number, z: Number.isNaN(z) ? null : z };
  });
  if (faces.x.length === 0) return joining;
  const taken = new Set(joining.map(({ x, y }) => `${x} ${y}`));
  for (let i = 0; i < faces.x.length; i++) {
    const [x, y, z] = [faces.x[i] as number, faces.y[i] as number, faces.z[i] as number];
    if (taken.has(`${x} ${y}`)) continue;
    taken.add(`${x} ${y}`);
    joining.push({ name: "", x, y, z: Number.isNaN(z) ? null : z });
  }
  return joining;
}

/** A closed line comes back to its first corner. */
export function joiningLine({ name, closed, xyz }: IncomingLine, kind: BreaklineKind): JoiningLine {
  const points: [number, number, number | null][] = [];
  for (let i = 0; i + 2 < xyz.length; i += 3) {
    const z = xyz[i + 2] as number;
    points.push([xyz[i] as number, xyz[i + 1] as number, Number.isNaN(z) ? null : z]);
  }
  const [first] = points;
  const goesRound = kind === "hole" || kind === "edge";
  if (closed && !goesRound && first) points.push([...first]);
  return { kind, points, ...(name === "" ? {} : { name }) };
}
