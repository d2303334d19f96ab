/**
 * How far the fill under a road end that stands above the ground runs out into the road.
 *
 * Units   metres.
 * Method  From the road end's middle and both its edges straight on past it, the drive's side slope is followed down until
 *         it meets the ground as it is; the farthest is told.
 * Source  First principles.
 */
import type { Point } from "../geometry";
import type { DriveLine, GradingPlan } from "../grading";
import type { FloorResults } from "./floor";
import type { HeightAt } from "./grading-plan";
import type { Problem } from "./results";
import type { Words } from "./words";

/** A road end less above the ground than this is drawing, not fill, m. Our own choice. */
const roadStep = 0.05;
/** Looked at so far past the road end, in steps of this, m. */
const farthest = 30;
const step = 0.1;

export function fillIntoRoad(
  { plan, height }: { readonly plan: GradingPlan; readonly height: HeightAt },
  { drives }: Pick<FloorResults, "drives">,
  words: Words,
): Problem[] {
  return drives.flatMap((drive): Problem[] => {
    const first = drive.stations[0];
    const line = plan.drives.find(({ drive: one }) => one.id === drive.id);
    if (!first || !line) return [];
    const above = first.finished - first.existing;
    if (!(above > roadStep)) return [];
    const slope = line.drive.sideSlope;
    const runs = runsOut(line, first.finished, height);
    const into =
      runs === null
        ? `its fill doesn't meet the ground within ${words.length(farthest)} past it, on into the road and beyond`
        : `its fill runs about ${words.length(runs)} out past it over the ground as it is there, into the road`;
    return [
      {
        code: "drive-fill-into-road",
        severity: "caution",
        where: `${drive.name}, at the road`,
        what: `Its road end stands ${words.length(above)} above the ground as it is, and at ${slope} : 1 ${into}.`,
        how: "Check the road edge's height, and that the drive starts at that edge. If both are right, shoot the road's edge, so that the ground is known there; ask the road's owner before anything is filled there.",
        at: first.at,
        ids: [drive.id],
      },
    ];
  });
}

/** The farthest of the road end's middle and edges; null where one meets no ground. */
function runsOut({ line, drive }: DriveLine, z: number, height: HeightAt): number | null {
  const [[x, y], next] = line as readonly [Point, Point];
  const length = Math.hypot(next[0] - x, next[1] - y);
  const back: Point = [(x - next[0]) / length, (y - next[1]) / length];
  let most = 0;
  for (const side of [-0.5, 0, 0.5]) {
    const from: Point = [x - back[1] * side * drive.width, y + back[0] * side * drive.width];
    const run = meets(
      (out) => z - out / drive.sideSlope - height([from[0] + back[0] * out, from[1] + back[1] * out]),
    );
    if (run === null) return null;
    most = Math.max(most, run);
  }
  return most;
}

/** Where a height over the ground comes to 0, between two steps by its even fall; null: nowhere. */
function meets(over: (out: number) => number): number | null {
  let before = over(0);
  if (!(before > 0)) return 0;
  for (let k = 1; k * step <= farthest + step / 2; k++) {
    const here = over(k * step);
    if (!(here > 0)) return step * (k - 1 + before / (before - here));
    before = here;
  }
  return null;
}
