/**
 * A swale that drains a low place, from its deepest spot.
 *
 * Units   metres.
 * Method  Tried as outlets: the nearest ground in each direction that lies low enough for a bed to come straight out there,
 *         then places on the way that the hollow's water takes over its rim. The first at which the bed comes out is taken.
 *         A way across a drive is taken last, and only where a pipe takes it under. Where none comes out, what the last of
 *         them lacks is told as the assistant tells it.
 * Source  First principles.
 */
import type { Project } from "../document/schema";
import { runFrom } from "../drainage";
import { between, distance, nearestOnPolyline, type Point } from "../geometry";
import { groundAt } from "../terrain";
import type { Pond, Results } from "./results";
import { holdsWater, proposeSwale, type SwaleProposal } from "./swale-proposal";

/** The bed begins so far under the deepest spot, m: the least that is a bed. */
const underSpot = 0.1;
/** More fill than this over an outlet buries it, m. */
const buried = 0.05;
/** Outlets lie so far apart on the run at least, m, and so many are tried. */
const apart = 3;
const mostTried = 10;
/** Low ground is looked for in so many directions, and so far, m. */
const directions = 36;
const farthest = 120;

export function swaleOutOf(project: Project, results: Results, pond: Pond): SwaleProposal {
  let last: SwaleProposal = {
    kind: "refused",
    why: "Its water runs nowhere on the ground that is known: shoot more ground beyond its rim.",
  };
  let underDrive: SwaleProposal | null = null;
  const depth = depthUnderGround(results, pond);
  const outlets = [...lowGround(project, results, pond), ...outletsBeyond(results, pond)];
  for (const outlet of outlets.filter((at) => !isFilled(results, at))) {
    const proposal = proposeSwale(project, results, { start: pond.at, outlet, depth });
    const onDrives = proposal.kind === "laid" ? onDrive(project, proposal.route.line) : "off";
    if (onDrives !== "off") {
      if (onDrives === "across" && proposal.kind === "laid" && proposal.route.result.drains)
        underDrive ??= proposal;
      if (last.kind === "refused") last = { kind: "refused", why: dammed };
      continue;
    }
    if (proposal.kind === "laid" && proposal.route.result.drains) return proposal;
    if (proposal.kind === "laid" || last.kind === "refused") last = proposal;
  }
  return project.drainage.pipe.crossing === "pipe" && underDrive ? underDrive : last;
}

/** Whether the plan fills the ground at a place: a bed that came out on the old ground there would end under earth. */
function isFilled({ surface }: Results, [x, y]: Point): boolean {
  if (!surface) return false;
  const { grid, depth } = surface;
  const [i, j] = [Math.floor((x - grid.x0) / grid.cell), Math.floor((y - grid.y0) / grid.cell)];
  if (i < 0 || j < 0 || i >= grid.columns || j >= grid.rows) return false;
  return (depth[j * grid.columns + i] as number) > buried;
}

/** Depth of the bed under the ground as it is, where the hollow may have been dug: round a low floor it mostly is. */
function depthUnderGround({ ground }: Results, { at, waterLevel, depth }: Pond): number {
  const there = ground ? groundAt(ground, at[0], at[1]) : null;
  return Math.max(0, (there?.z ?? waterLevel) - (waterLevel - depth)) + underSpot;
}

const dammed =
  "It could only get out across the drive, which would dam it: let a pipe take swales under drives, or turn the drive.";

/** The low place that still holds water at a spot; null where it drains. */
export function pondAt(results: Results, at: Point): Pond | null {
  return results.water.ponds.find((pond) => holdsWater({ water: { ponds: [pond] } }, at)) ?? null;
}

/** Longer on a drive than this many times its width a line runs along it. */
const acrossUpTo = 2.5;

/** Whether a ditch along the line keeps off the drives, crosses one, or runs along it. */
function onDrive({ grading }: Project, line: readonly Point[]): "off" | "across" | "along" {
  let found: "off" | "across" | "along" = "off";
  for (const drive of grading.drives) {
    if (drive.line.length < 2) continue;
    const on = lengthOn(line, drive.line, drive.width / 2);
    if (on > acrossUpTo * drive.width) return "along";
    if (on > 0) found = "across";
  }
  return found;
}

/** Length of a line within so far of another, m, to a step's length. */
function lengthOn(line: readonly Point[], other: readonly Point[], within: number): number {
  let sum = 0;
  line.slice(1).forEach((b, i) => {
    const a = line[i] as Point;
    const steps = Math.max(1, Math.ceil(distance(a, b) / 0.5));
    const on = Array.from({ length: steps + 1 }, (_, k) => between(a, b, k / steps)).filter(
      ([x, y]) => nearestOnPolyline(other, x, y).distance < within,
    ).length;
    sum += (on * distance(a, b)) / (steps + 1);
  });
  return sum;
}

/** The nearest place in each direction to which a bed can fall straight, the nearest of all first. */
function lowGround(
  { rules }: Project,
  { ground }: Results,
  { at: [x, y], waterLevel, depth: deep }: Pond,
): Point[] {
  if (!ground) return [];
  const bed = waterLevel - deep - underSpot;
  const found: { readonly at: Point; readonly away: number }[] = [];
  for (let k = 0; k < directions; k++) {
    const angle = (2 * Math.PI * k) / directions;
    for (let away = apart; away <= farthest; away++) {
      const at: Point = [x + away * Math.cos(angle), y + away * Math.sin(angle)];
      const there = groundAt(ground, at[0], at[1]);
      if (!there || there.guessed) break;
      if (there.z > bed - rules.leastSwaleFall * away) continue;
      found.push({ at, away });
      break;
    }
  }
  return found
    .sort((a, b) => a.away - b.away)
    .slice(0, mostTried)
    .map(({ at }) => at);
}

/** Places on the run from the rim, spread over all of it, and its end. */
function outletsBeyond(results: Results, { spill }: Pond): Point[] {
  const { flow } = results.water;
  if (!flow) return [];
  const run = runFrom(flow, spill[0], spill[1]);
  const places = Array.from(
    { length: run.length / 2 },
    (_, i): Point => [run[2 * i] as number, run[2 * i + 1] as number],
  ).filter((at) => !holdsWater(results, at));
  const length = places.slice(1).reduce((sum, at, i) => sum + distance(at, places[i] as Point), 0);
  const step = Math.max(apart, length / mostTried);
  const chosen: Point[] = [];
  let since = 0;
  places.forEach((at, i) => {
    since += i === 0 ? 0 : distance(at, places[i - 1] as Point);
    if (since < step && i < places.length - 1) return;
    since = 0;
    chosen.push(at);
  });
  return chosen;
}
