/** Setback lines inside the lot, each with its distance where there is room. */
import type { Project } from "../document/schema";
import { distance, type Point, pointAlong } from "../geometry";
import type { SetbackLine } from "../plot";
import type { Results } from "../solve/results";
import { along, capOf } from "./beside";
import { type DrawContext, placeLabel, readable } from "./context";
import type { DrawingMark, MarkLayer } from "./marks";
import { reserveLines } from "./reserve";
import { overAllText } from "./words";

const group = "setbacks";

/** The runs of each setback line; hidden lots have none. */
export function drawSetbacks(project: Project, results: Results, context: DrawContext): MarkLayer {
  context.labels.forget(group);
  if (project.lot.outline.length < 3) return { id: "setbacks", marks: [] };
  reserveLines(project, results, context);
  const marks = results.plot.setbacks.flatMap((setback) => setbackMarks(setback, project, context));
  return { id: "setbacks", marks };
}

function setbackMarks(setback: SetbackLine, project: Project, context: DrawContext): DrawingMark[] {
  const lines = setback.runs.map(
    (run): DrawingMark => ({ kind: "line", points: run.flat(), style: "setback" }),
  );
  const longest = setback.runs.reduce<readonly Point[]>(
    (best, run) => (lengthOf(run) > lengthOf(best) ? run : best),
    [],
  );
  if (longest.length < 2) return lines;
  const name = project.lot.setbacks.find(({ line }) => line === setback.line)?.name ?? "";
  const text = `${name === "" ? "" : `${name} `}setback ${overAllText(setback.distance, project.display)}`;
  const off = 1 + capOf("setback-label") / 2;
  const candidates = [0.5, 0.25, 0.75].flatMap((share) => {
    const at = pointAlong(longest, share * lengthOf(longest)).at;
    const angle = readable(angleAt(longest, share));
    return [off, -off].map((side) => along(at, text, "setback-label", angle, side));
  });
  return [...lines, ...placeLabel(context, group, candidates)];
}

function lengthOf(run: readonly Point[]): number {
  return run.slice(1).reduce((sum, at, i) => sum + distance(run[i] as Point, at), 0);
}

function angleAt(run: readonly Point[], share: number): number {
  const whole = lengthOf(run);
  const [a, b] = [share - 0.01, share + 0.01].map((each) => pointAlong(run, each * whole).at);
  return a && b ? Math.atan2(b[1] - a[1], b[0] - a[0]) : 0;
}
