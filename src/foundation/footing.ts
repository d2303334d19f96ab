/**
 * Where the footing's bottom lies along each wall: level, in steps, or with the ground for posts.
 *
 * Units   metres.
 * Method  Level: top of wall − wall height − footing thickness. Steps: `steps.ts`, so that the bottom reaches the depth into
 *         undisturbed ground, the frost cover that the user counts, and firm ground where test pits tell of it. Posts: so far
 *         below undisturbed ground, each by itself.
 * Source  First principles.
 */
import { bottomBelowTop } from "../document/foundationMeasures";
import type { Foundation } from "../document/schema";
import type { FootingPiece } from "../solve/results";
import type { FootedLine, WallLine } from "./lines";
import { type StepPiece, stepPieces } from "./steps";

export interface FootingDemand {
  readonly topOfWall: number;
  /** Topsoil strip. */
  readonly strip: number;
  /** Depth into undisturbed ground. */
  readonly intoUndisturbed: number;
  readonly foundation: Foundation;
}

/** Whether this foundation steps its footing. */
export function stepsDown({ kind, steps }: Foundation): boolean {
  return steps.on && (kind === "stem-wall" || kind === "crawl-space");
}

export function footedLines(lines: readonly WallLine[], demand: FootingDemand): FootedLine[] {
  const grounds = lines.map((line) => withGround(line, demand.strip));
  const { foundation, topOfWall } = demand;
  const below = bottomBelowTop(foundation);
  if (below === null)
    return grounds.map((line) => ({
      ...line,
      bottom: line.undisturbed.map((height) => height - foundation.posts.holeDepth),
      pieces: [],
    }));
  const level = topOfWall - below;
  if (!stepsDown(foundation)) return grounds.map((line) => levelLine(line, level, demand));
  return steppedLines(grounds, level, demand);
}

type Grounded = WallLine & Pick<FootedLine, "stripped" | "undisturbed">;

function withGround(line: WallLine, strip: number): Grounded {
  const stripped = line.existing.map((height) => height - strip);
  const undisturbed = stripped.map((height, i) =>
    Math.min(height, line.finished[i] as number, line.firm?.[i] ?? Number.POSITIVE_INFINITY),
  );
  return { ...line, stripped, undisturbed };
}

function levelLine(line: Grounded, bottom: number, demand: FootingDemand): FootedLine {
  return {
    ...line,
    bottom: new Float64Array(line.distance.length).fill(bottom),
    pieces: [piece(0, line.length, 0, bottom, demand)],
  };
}

function steppedLines(lines: readonly Grounded[], level: number, demand: FootingDemand): FootedLine[] {
  const at: number[] = [];
  const asked: number[] = [];
  let start = 0;
  const starts = lines.map((line) => {
    const from = start;
    for (let i = 0; i < line.distance.length; i++) {
      at.push(from + (line.distance[i] as number));
      asked.push(askedBottom(line, i, demand));
    }
    start += line.length;
    return from;
  });
  const { rise, leastRun } = demand.foundation.steps;
  const all = stepPieces({ round: start, at, asked }, level, { rise, leastRun });
  return lines.map((line, i) => steppedLine(line, starts[i] as number, all, level, demand));
}

/** The bottom may not lie above this. */
function askedBottom(line: Grounded, i: number, { foundation, intoUndisturbed }: FootingDemand): number {
  const undisturbed = line.undisturbed[i] as number;
  const bearing = undisturbed - intoUndisturbed;
  if (foundation.frostDepth === null) return bearing;
  const finished = line.finished[i] as number;
  const counts =
    foundation.frostFrom === "finished" ? finished : Math.min(line.existing[i] as number, finished);
  return Math.min(bearing, counts - foundation.frostDepth);
}

function steppedLine(
  line: Grounded,
  start: number,
  all: readonly StepPiece[],
  level: number,
  demand: FootingDemand,
): FootedLine {
  const { rise } = demand.foundation.steps;
  const own = all.flatMap(({ from, to, level: down }) => {
    const [a, b] = [Math.max(0, from - start), Math.min(line.length, to - start)];
    return b - a > 1e-9 ? [piece(a, b, down, level - down * rise, demand)] : [];
  });
  const bottom = line.distance.map((offset) => bottomAt(own, offset));
  return { ...line, bottom, pieces: own };
}

/** At a step the lower of the two. */
function bottomAt(pieces: readonly FootingPiece[], offset: number): number {
  let lowest = Number.POSITIVE_INFINITY;
  for (const { from, to, bottom } of pieces)
    if (offset >= from - 1e-9 && offset <= to + 1e-9) lowest = Math.min(lowest, bottom);
  return lowest;
}

function piece(
  from: number,
  to: number,
  level: number,
  bottom: number,
  { topOfWall, foundation }: FootingDemand,
): FootingPiece {
  const thickness = foundation.kind === "thickened-edge" ? 0 : foundation.footingThickness;
  const top = foundation.kind === "thickened-edge" ? topOfWall : bottom + thickness;
  return { from, to, level, bottom, top, wallHeight: topOfWall - top };
}
