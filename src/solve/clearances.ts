/** Where graded ground comes too near to something: the lot line, a well, a buried line, a tree to keep. */
import type { Lot } from "../document/schema";
import { containsPoint, distanceToSegment, nearestOnPolyline, nearestOnRing, type Point } from "../geometry";
import type { Finished, GradingPlan, Layout } from "../grading";
import { lineSetbacks } from "../plot";
import type { HeightAt } from "./grading-plan";
import { nearFeatures } from "./near-features";
import type { Problem } from "./results";
import type { Words } from "./words";

/** Changes smaller than this are not work, m. */
const change = 0.01;
/** Grading past the lot line by less than this is drawing, not work, m. */
const pastLine = 0.05;
/** Ground beside the road end of a drive that belongs to the crossing, m. */
const roadShoulder = 1.5;

export function clearances(
  layout: Layout,
  finished: Finished,
  daylight: readonly Float64Array[],
  height: HeightAt,
  lot: Lot,
  words: Words,
): Problem[] {
  const worked = workedPlaces(layout, finished);
  return [
    ...(lot.outline.length >= 3 ? pastLot(worked, lot.outline, layout.plan.drives, words) : []),
    ...pastSetbacks(worked, lot, layout.plan.drives, words),
    ...nearFeatures(layout, finished, daylight, height, lot.features, words),
  ];
}

/** Places where the ground changes, flat x, y; of the cells outside the walls. */
function workedPlaces({ prepared, cells }: Layout, { depth }: Finished): number[] {
  const places: number[] = [];
  for (const i of prepared.touched) {
    if (cells.weight[i] === 0 || Math.abs(depth[i] as number) < change) continue;
    places.push(cells.x[i] as number, cells.y[i] as number);
  }
  return places;
}

function pastLot(
  worked: readonly number[],
  outline: readonly Point[],
  drives: GradingPlan["drives"],
  words: Words,
): Problem[] {
  let farthest = pastLine;
  let at: [number, number] | null = null;
  for (let k = 0; k + 1 < worked.length; k += 2) {
    const [x, y] = [worked[k] as number, worked[k + 1] as number];
    if (containsPoint(outline, x, y)) continue;
    const { distance } = nearestOnRing(outline, x, y);
    if (distance <= farthest || atRoad(drives, x, y)) continue;
    farthest = distance;
    at = [x, y];
  }
  if (!at) return [];
  return [
    {
      code: "grading-past-lot",
      severity: "caution",
      where: "the lot line",
      what: `Cut or fill reaches ${words.length(farthest)} past it.`,
      how: "Take steeper side slopes, a lower floor, a retaining wall, or move the building. Only a licensed surveyor settles where the line is.",
      at,
    },
  ];
}

/** Work in a strip where nothing may be built: mostly allowed for earth, but worth asking. */
function pastSetbacks(
  worked: readonly number[],
  lot: Lot,
  drives: GradingPlan["drives"],
  words: Words,
): Problem[] {
  return lineSetbacks(lot).flatMap(({ line, distance: wide }): Problem[] => {
    const start = lot.outline[line];
    const end = lot.outline[(line + 1) % lot.outline.length];
    if (!start || !end || lot.outline.length < 3) return [];
    let nearest = wide - pastLine;
    let at: [number, number] | null = null;
    for (let k = 0; k + 1 < worked.length; k += 2) {
      const [x, y] = [worked[k] as number, worked[k + 1] as number];
      const apart = distanceToSegment(start, end, x, y);
      if (apart >= nearest || !containsPoint(lot.outline, x, y) || onDrives(drives, x, y)) continue;
      nearest = apart;
      at = [x, y];
    }
    if (!at) return [];
    return [
      {
        code: "grading-past-setback",
        severity: "note",
        where: `the setback from lot line ${line + 1}`,
        what: `Cut or fill reaches ${words.length(wide - nearest)} into it.`,
        how: "Earth is often allowed there where a building isn't; ask the building office.",
        at,
      },
    ];
  });
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
