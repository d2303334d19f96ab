/** Lines and symbols that texts keep off, taken before the first text of a drawing is placed. */
import type { Project } from "../document/schema";
import type { Point } from "../geometry";
import type { Results } from "../solve/results";
import { type DrawContext, onPaper } from "./context";
import { shownShots } from "./crowd";
import { keepClearLines } from "./keep-clear";
import type { Labels } from "./labels";
import type { XY } from "./marks";
import { offsetLine } from "./offset";
import { cornerRing, featureSymbol, markTriangle, shotCross, swaleChevron } from "./sizes";

/** A share of the lines that changes together, with what it is taken from. */
interface Share {
  readonly group: string;
  readonly from: readonly unknown[];
  readonly take: () => void;
}

/** What each share of a drawing's lines was taken from, so that it is taken again only when that has changed. */
const takenFrom = new WeakMap<Labels, Map<string, readonly unknown[]>>();

const closed = (outline: readonly Point[]): number[] => [...outline.flat(), ...(outline[0] ?? [])];

/** Takes walls, corners, lot lines, setbacks, drive edges, swales, features with what is kept clear of them, marks and shots. Cheap when nothing has changed. */
export function reserveLines(project: Project, results: Results, context: DrawContext): void {
  const before = takenFrom.get(context.labels) ?? new Map<string, readonly unknown[]>();
  takenFrom.set(context.labels, before);
  for (const { group, from, take } of shares(project, results, context)) {
    const last = before.get(group);
    if (last && from.every((part, i) => part === last[i])) continue;
    before.set(group, from);
    context.labels.forget(group);
    take();
  }
}

/** A hand that drags the building leaves lot and shots, which may be thousands, as they are taken. */
function shares(project: Project, results: Results, context: DrawContext): Share[] {
  const { lot, building, grading, survey } = project;
  const lines = takerInto("lines", context);
  const own = takerInto("lines of the building and the ground", context);
  const shots = takerInto("lines of shots", context);
  return [
    {
      group: lines.group,
      from: [lot, survey.marks, results.plot],
      take: () => takeLot(project, results, lines),
    },
    {
      group: own.group,
      from: [building?.outline, grading.drives, grading.swales],
      take: () => takeBuildingAndDrives(project, own),
    },
    {
      group: shots.group,
      from: [results.survey],
      take: () => {
        for (const { at } of shownShots(results, context)) if (at) shots.spot(at, shotCross);
      },
    },
  ];
}

interface Taker {
  readonly group: string;
  readonly line: (points: readonly number[], width: number, firm?: boolean) => void;
  /** A symbol's place, as a line: texts rather go elsewhere, but a text that must be shown may cross it. */
  readonly spot: (at: XY, size: number, firm?: boolean) => void;
}

function takerInto(group: string, { labels, metresPerMm, turn }: DrawContext): Taker {
  // Squares stand as texts do: on a turned plan a square along the plan's axes would reach into its own text.
  const [c, s] = [Math.cos(-turn) / 2, Math.sin(-turn) / 2];
  return {
    group,
    line: (points, width, firm = false) => labels.takeLine(group, onPaper(points, metresPerMm), width, firm),
    spot: (at, size, firm = false) => {
      const [x, y] = [at[0] / metresPerMm, at[1] / metresPerMm];
      labels.takeLine(group, [x - c * size, y - s * size, x + c * size, y + s * size], size, firm);
    },
  };
}

function takeBuildingAndDrives({ building, grading }: Project, { line, spot }: Taker): void {
  if (building) line(closed(building.outline), 0.9, true);
  for (const corner of building?.outline ?? []) spot(corner, cornerRing, true);
  for (const drive of grading.drives) {
    line(drive.line.flat(), 0.2);
    for (const side of [1, -1]) line(offsetLine(drive.line, (side * drive.width) / 2).flat(), 0.3);
  }
  for (const swale of grading.swales) line(swale.line.flat(), swaleChevron);
}

function takeLot({ lot, survey }: Project, { plot }: Results, { line, spot }: Taker): void {
  line(closed(lot.outline), 0.5, true);
  for (const feature of lot.features) {
    const [first] = feature.points;
    if (feature.points.length === 1 && first) spot(first, featureSymbol);
    else line(feature.points.flat(), 0.4);
    // Round a tree or a tank the line may run through its own name, which is longer than its reach on paper.
    if (feature.points.length > 1) for (const { points } of keepClearLines(feature)) line(points, 0.2);
  }
  for (const mark of survey.marks) if (mark.at) spot(mark.at, markTriangle);
  for (const { runs } of plot.setbacks) for (const run of runs) line(run.flat(), 0.2);
}
