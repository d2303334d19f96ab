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
        for (const { at } of shownShots(results, context)) if (at) shots.cross(at);
      },
    },
  ];
}

interface Taker {
  readonly group: string;
  readonly line: (points: readonly number[], width: number, firm?: boolean) => void;
  /** A symbol's place: texts keep off it. */
  readonly sign: (at: XY, size: number) => void;
  /** A shot's cross. On the screen it gives way to a text that has no other place; on paper it is as a thin line. */
  readonly cross: (at: XY) => void;
}

function takerInto(group: string, { labels, metresPerMm, turn, medium }: DrawContext): Taker {
  // Squares stand as texts do: on a turned plan a square along the plan's axes would reach into its own text.
  const [c, s] = [Math.cos(-turn) / 2, Math.sin(-turn) / 2];
  const square = ([x, y]: XY, size: number) => ({
    x: x / metresPerMm,
    y: y / metresPerMm,
    width: size,
    height: size,
    angle: -turn,
  });
  return {
    group,
    line: (points, width, firm = false) => labels.takeLine(group, onPaper(points, metresPerMm), width, firm),
    sign: (at, size) => labels.take(group, square(at, size), "sign"),
    cross: (at) => {
      const { x, y } = square(at, shotCross);
      const [dx, dy] = [c * shotCross, s * shotCross];
      if (medium === "paper") labels.takeLine(group, [x - dx, y - dy, x + dx, y + dy], shotCross);
      else labels.take(group, square(at, shotCross), "cross");
    },
  };
}

function takeBuildingAndDrives({ building, grading }: Project, { line, sign }: Taker): void {
  if (building) line(closed(building.outline), 0.9, true);
  for (const corner of building?.outline ?? []) sign(corner, cornerRing);
  for (const drive of grading.drives) {
    line(drive.line.flat(), 0.2);
    for (const side of [1, -1]) line(offsetLine(drive.line, (side * drive.width) / 2).flat(), 0.3);
  }
  for (const swale of grading.swales) line(swale.line.flat(), swaleChevron);
}

function takeLot({ lot, survey }: Project, { plot }: Results, { line, sign }: Taker): void {
  line(closed(lot.outline), 0.5, true);
  for (const feature of lot.features) {
    const [first] = feature.points;
    if (feature.points.length === 1 && first) sign(first, featureSymbol);
    else line(feature.points.flat(), 0.4);
    // Round a tree or a tank the line may run through its own name, which is longer than its reach on paper.
    if (feature.points.length > 1) for (const { points } of keepClearLines(feature)) line(points, 0.2);
  }
  for (const mark of survey.marks) if (mark.at) sign(mark.at, markTriangle);
  for (const { runs } of plot.setbacks) for (const run of runs) line(run.flat(), 0.2);
}
