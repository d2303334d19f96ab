/** The acts on the ground one by one: their order, how far slopes run, what fights, what walls hold, what would fit. */
import { isArea } from "../document/features";
import type { Grading, Lot } from "../document/schema";
import { distance, type Point, signedArea } from "../geometry";
import {
  apronId,
  cornerName,
  fitByWall,
  fitToLine,
  gradingConflicts,
  inOrder,
  type Layout,
  type NamedLine,
  type PadPlane,
  retainingResults,
  sideReaches,
} from "../grading";
import type { HeightAt } from "./grading-plan";
import type { ActResult, GradingResult, GroundPadResult, OfferedWall } from "./results";
import { crossesDrive } from "./swale-over-drive";

/** A wall that is offered stands this far inside the lot line, m. */
const insideLine = 0.3;

export function gradingResult(
  layout: Layout,
  height: HeightAt,
  grading: Grading,
  lot: Lot,
  floor: number,
): GradingResult {
  const { plan } = layout;
  const order = actsInOrder(grading);
  const names = new Map(order.map(({ id, name }) => [id, name]));
  return {
    order,
    sides: sideReaches(plan, height, floor),
    conflicts: gradingConflicts(layout, floor, (id) => names.get(id) ?? id).filter(
      (conflict) => !(plan.piped && crossesDrive(conflict, plan)),
    ),
    walls: retainingResults(plan, height, floor),
    pads: (plan.pads ?? []).map((pad) => padResult(pad, floor)),
    fits: linesToKeep(lot).flatMap(({ wall, ...line }) =>
      fitToLine(plan, within(layout, height), floor, line).map((fit) =>
        wall && fit.what === "fill" ? fitByWall(fit, wall, plan, height, floor) : fit,
      ),
    ),
  };
}

/** The ground where grading can change it; NaN farther out, where what stands on the lot needs no answer. */
function within({ grid }: Layout, height: HeightAt): HeightAt {
  const { x0, y0, cell, columns, rows } = grid;
  return (at) =>
    at[0] < x0 || at[1] < y0 || at[0] > x0 + columns * cell || at[1] > y0 + rows * cell
      ? Number.NaN
      : height(at);
}

/** Every act of the document in the order in which they shape the ground. */
export function actsInOrder(grading: Grading): ActResult[] {
  const all = (kind: ActResult["kind"], list: readonly { readonly id: string; readonly name: string }[]) =>
    list.map(({ id, name }): ActResult => ({ id, kind, name }));
  return inOrder(
    [
      { id: apronId, kind: "apron", name: "pad and apron" },
      ...all("pad", grading.pads),
      ...all("drive", grading.drives),
      ...all("berm", grading.berms),
      ...all("point", grading.points),
      ...all("swale", grading.swales),
      ...all("wall", grading.walls),
    ],
    grading.order,
  );
}

function padResult({ pad, ring, base, share, gx, gy, middle }: PadPlane, floor: number): GroundPadResult {
  const height = ([x, y]: Point) => base + share * floor + gx * x + gy * y;
  const corners = ring.map(height);
  return {
    id: pad.id,
    name: pad.name,
    use: pad.use,
    area: Math.abs(signedArea(ring)),
    middle: [...middle],
    height: height(middle),
    lowest: Math.min(...corners),
    highest: Math.max(...corners),
  };
}

interface LineToKeep extends NamedLine {
  /** Where a wall may be offered to hold fill back from it. */
  readonly wall?: OfferedWall;
}

/** Lines that slopes are to stop at: the lot's, and what stands on it. */
function linesToKeep({ outline, features }: Lot): LineToKeep[] {
  const sides =
    outline.length < 3
      ? []
      : outline.map((start, i): LineToKeep => {
          const next = (i + 1) % outline.length;
          return {
            name: `lot line ${cornerName(i)}-${cornerName(next)}`,
            points: [start, outline[next] as Point],
            wall: wallInside(start, outline[next] as Point, signedArea(outline) > 0 ? 1 : -1),
          };
        });
  const kept = features.filter(asksToStop).map((feature): NamedLine => {
    const [first] = feature.points;
    const points = isArea(feature) && first ? [...feature.points, first] : feature.points;
    return { name: feature.name || feature.kind.replace("-", " "), points, clear: feature.keepClear };
  });
  return [...sides, ...kept];
}

/** A wall along a lot line, a little to the inside; `turn` is 1 where the lot lies to the left of the line as it runs. */
function wallInside(a: Point, b: Point, turn: 1 | -1): OfferedWall {
  const length = distance(a, b);
  const [nx, ny] = length > 0 ? [(-turn * (b[1] - a[1])) / length, (turn * (b[0] - a[0])) / length] : [0, 0];
  return {
    line: [a, b].map(([x, y]): [number, number] => [x + nx * insideLine, y + ny * insideLine]),
    lowSide: turn > 0 ? "right" : "left",
    inside: insideLine,
  };
}

/** Slopes that end just on a buried line are no help to it: without a clear distance nothing is fitted. */
function asksToStop({ kind, keepClear }: Lot["features"][number]): boolean {
  return kind !== "buried-line" || keepClear > 0;
}

export function lotLineName(line: number, count: number): string {
  return `lot line ${cornerName(line)}-${cornerName((line + 1) % count)}`;
}
