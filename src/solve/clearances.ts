/**
 * Where graded ground comes too near to something: the lot line, a well, a buried line, a tree to keep.
 *
 * Units   metres.
 * Method  Work ends at the daylight lines, which are exact, and at retaining walls; cells of the grid say where there is work
 *         at all. Of places that are equally far past a line the middle one is told.
 * Source  First principles.
 */
import type { Lot } from "../document/schema";
import {
  between,
  containsPoint,
  cornerDistances,
  crossingShares,
  distanceToSegment,
  nearestOnPolyline,
  nearestOnRing,
  type Point,
  pointAlong,
} from "../geometry";
import type { Finished, GradingPlan, Layout } from "../grading";
import { lineSetbacks } from "../plot";
import type { HeightAt } from "./grading-plan";
import { nearFeatures } from "./near-features";
import type { Problem } from "./results";
import { withShapes } from "./who-comes-near";
import type { Words } from "./words";

/** Changes smaller than this are not work, m. */
const change = 0.01;
/** Grading past a line by less than this is drawing, not work, m. */
const pastLine = 0.01;
/** Ground beside the road end of a drive that belongs to the crossing, m. */
const roadShoulder = 1.5;
/** Places along retaining walls, m apart. */
const alongWall = 0.25;
/** An end of work has work within a cell and this much of slope, m. */
const slopeToWork = 0.15;
/** Places this nearly as far are as far, m. */
const asFar = 0.002;
const surveyor = "Only a licensed surveyor settles where the line is.";

export function clearances(
  layout: Layout,
  finished: Finished,
  daylight: readonly Float64Array[],
  height: HeightAt,
  lot: Lot,
  words: Words,
): Problem[] {
  const work = { ...workOf(layout, finished), daylight };
  const { plan } = layout;
  return [
    ...(lot.outline.length >= 3 ? pastLot(work, lot.outline, plan.drives, words) : []).map((problem) =>
      withShapes(problem, plan, height, finished.floor, surveyor),
    ),
    ...pastSetbacks(work, lot, plan.drives, words),
    ...nearFeatures(layout, finished, daylight, height, lot.features, words),
  ];
}

interface Work {
  /** Cells outside the walls where the ground changes. */
  readonly cells: readonly Point[];
  /** Places of retaining walls, which may end it. */
  readonly walls: readonly Point[];
  readonly daylight: readonly Float64Array[];
  /** No end of work is farther from a cell of it, m. */
  readonly cellReach: number;
}

function workOf({ prepared, cells, grid, plan }: Layout, { depth }: Finished): Omit<Work, "daylight"> {
  const worked: Point[] = [];
  for (const i of prepared.touched) {
    if (cells.weight[i] === 0 || Math.abs(depth[i] as number) < change) continue;
    worked.push([cells.x[i] as number, cells.y[i] as number]);
  }
  return { cells: worked, walls: wallPlaces(plan), cellReach: 1.5 * grid.cell + slopeToWork };
}

function wallPlaces({ walls = [] }: GradingPlan): Point[] {
  return walls.flatMap(({ line }) => {
    const length = cornerDistances(line)[line.length - 1] ?? 0;
    const pieces = Math.max(1, Math.ceil(length / alongWall));
    return Array.from({ length: pieces + 1 }, (_, i) => pointAlong(line, (length * i) / pieces).at);
  });
}

interface Past {
  /** How far past the line, m. */
  readonly by: number;
  readonly at: Point;
  /** Piece of the line that it is nearest to. */
  readonly piece: number;
}

/** The place farthest past a line; `pastBy`: how far a place is past it, null where it doesn't count. */
function farthestPast(
  work: Work,
  pastBy: (at: Point) => Omit<Past, "at"> | null,
  crossings: readonly Past[] = [],
): Past | null {
  const found = (at: Point): Past[] => {
    const past = pastBy(at);
    return past && past.by > pastLine ? [{ ...past, at }] : [];
  };
  const ends = [...work.daylight.flatMap(placesOf), ...work.walls].flatMap(found);
  const past = [
    ...work.cells.flatMap(found),
    ...[...ends, ...crossings].filter(({ at }) => isWork(work, at)),
  ];
  const most = past.reduce<Past | null>((far, one) => (far === null || one.by > far.by ? one : far), null);
  return (
    most &&
    middleOf(
      past.filter(({ by, piece }) => piece === most.piece && by > most.by - asFar),
      most,
    )
  );
}

function placesOf(line: Float64Array): Point[] {
  return Array.from(
    { length: line.length >> 1 },
    (_, i): Point => [line[2 * i] as number, line[2 * i + 1] as number],
  );
}

/** A daylight line about changes too small to be work ends nothing. */
function isWork({ cells, cellReach }: Work, [x, y]: Point): boolean {
  return cells.some(([cx, cy]) => Math.abs(cx - x) < cellReach && Math.abs(cy - y) < cellReach);
}

/** The farthest distance, told at the middle of those places that are as far. */
function middleOf(as: readonly Past[], most: Past): Past {
  const mean = (axis: 0 | 1) => as.reduce((sum, { at }) => sum + at[axis], 0) / as.length;
  const [x, y] = [mean(0), mean(1)];
  const off = ({ at }: Past) => Math.hypot(at[0] - x, at[1] - y);
  return { ...as.reduce((near, one) => (off(one) < off(near) ? one : near), most), by: most.by };
}

function pastLot(
  work: Work,
  outline: readonly Point[],
  drives: GradingPlan["drives"],
  words: Words,
): Problem[] {
  const past = farthestPast(work, ([x, y]) => {
    if (containsPoint(outline, x, y) || atRoad(drives, x, y)) return null;
    const { distance, segment } = nearestOnRing(outline, x, y);
    return { by: distance, piece: segment };
  });
  if (!past) return [];
  return [
    {
      code: "grading-past-lot",
      severity: "caution",
      where: "the lot line",
      what: `Cut or fill reaches ${words.length(past.by)} past it.`,
      how: `Take steeper side slopes, a lower floor, a retaining wall, or move the building. ${surveyor}`,
      at: [past.at[0], past.at[1]],
    },
  ];
}

/** Work in a strip where nothing may be built: mostly allowed for earth, but worth asking. */
function pastSetbacks(work: Work, lot: Lot, drives: GradingPlan["drives"], words: Words): Problem[] {
  return lineSetbacks(lot).flatMap(({ line, distance: wide }): Problem[] => {
    const start = lot.outline[line];
    const end = lot.outline[(line + 1) % lot.outline.length];
    if (!start || !end || lot.outline.length < 3) return [];
    const counts = (x: number, y: number) => !onDrives(drives, x, y);
    const past = farthestPast(
      work,
      ([x, y]) => {
        if (!containsPoint(lot.outline, x, y) || !counts(x, y)) return null;
        return { by: wide - distanceToSegment(start, end, x, y), piece: line };
      },
      crossingsOf(work.daylight, start, end)
        .filter(([x, y]) => counts(x, y))
        .map((at) => ({ by: wide, at, piece: line })),
    );
    if (!past) return [];
    return [
      {
        code: "grading-past-setback",
        severity: "note",
        where: `the setback from lot line ${line + 1}`,
        what: `Cut or fill reaches ${words.length(past.by)} into it.`,
        how: "Earth is often allowed there where a building isn't; ask the building office.",
        at: [past.at[0], past.at[1]],
      },
    ];
  });
}

/** Where the ends of work cross a piece of the lot line: there it takes up all of the setback. */
function crossingsOf(daylight: readonly Float64Array[], start: Point, end: Point): Point[] {
  return daylight.map(placesOf).flatMap((places) =>
    places.slice(1).flatMap((to, i): Point[] => {
      const shares = crossingShares(places[i] as Point, to, start, end);
      if (!shares?.every((share) => share >= 0 && share <= 1)) return [];
      return [between(start, end, shares[1])];
    }),
  );
}

function onDrives(drives: GradingPlan["drives"], x: number, y: number): boolean {
  return drives.some(
    ({ line, drive }) =>
      nearestOnPolyline(line, x, y).distance <= drive.width / 2 + drive.shoulder.width + roadShoulder,
  );
}

/** Where a drive meets the road it has to cross the lot line; its shoulders run out beside it. */
function atRoad(drives: GradingPlan["drives"], x: number, y: number): boolean {
  return drives.some(({ line, drive }) => {
    const [road] = line;
    return road !== undefined && Math.hypot(x - road[0], y - road[1]) <= drive.width / 2 + roadShoulder;
  });
}
