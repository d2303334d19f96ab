/**
 * What would keep water from a wall: changes of the plan that are tried, one by one.
 *
 * Units   metres.
 * Method  A swale out of the hollow whose water stands there, the ground round the walls as the rule wants it, and a higher
 *         floor, found by halving. Each plan is solved anew; only what makes this wall pass and no other fail is told.
 * Source  First principles.
 */
import { addSwale, changeApron } from "../document/commands/site";
import type { Project } from "../document/schema";
import { createSolver } from "./pipeline";
import { swaleOutOf } from "./pond-swale";
import type { Results, WallWater } from "./results";
import type { Solver } from "./solver";
import { wordsFor } from "./words";

export interface WallMend {
  readonly id: "swale" | "apron" | "floor";
  /** "Raise the floor by 0.120 m". */
  readonly what: string;
  readonly project: Project;
}

/** The floor is tried up to so much higher, and found as exactly as this, m. */
const mostRaise = 1.2;
const exactly = 0.01;
/** What the rule asks of earth: 6 in within 10 ft. */
const ruledFall = 0.05;
const ruledWidth = 3.048;

/** Of the wall with this index; none where nothing of this helps. */
export function wallMends(project: Project, wall: number, solver: Solver = createSolver()): WallMend[] {
  return [...wallMendsInTurn(project, wall, solver)].filter((mend) => mend !== null);
}

/** The same one by one; null: a good moment to let others work. */
export function* wallMendsInTurn(
  project: Project,
  wall: number,
  solver: Solver = createSolver(),
): Generator<WallMend | null, void> {
  const before = solver.solve(project);
  const passes = (changed: Project) => isBetter(before, solver.solve(changed), wall);
  yield null;
  for (const mend of [bySwale(project, before, wall), byApron(project, wall)]) {
    yield mend && passes(mend.project) ? mend : null;
  }
  yield* byFloor(project, passes);
}

function isBetter(before: Results, after: Results, wall: number): boolean {
  return after.water.walls.every(
    (each, i) => each.passes || (each.wall !== wall && before.water.walls[i]?.passes === false),
  );
}

function bySwale(project: Project, results: Results, wall: number): WallMend | null {
  const standing = results.water.walls.find((each) => each.wall === wall)?.standing;
  const pond = standing && results.water.ponds.find((each) => holds(each.rings, standing.at));
  const proposal = pond ? swaleOutOf(project, results, pond) : null;
  if (proposal?.kind !== "laid" || !proposal.route.result.drains) return null;
  const { line, depth, leastFall, result } = proposal.route;
  const edit = addSwale.run(project, { line, shape: { depth, leastFall } });
  const { length } = wordsFor(project.display);
  return edit.ok
    ? {
        id: "swale",
        what: `Lead the water off by a swale ${length(result.length)} long`,
        project: edit.project,
      }
    : null;
}

function holds(rings: readonly Float64Array[], [x, y]: NonNullable<WallWater["standing"]>["at"]): boolean {
  return rings.some((ring) => ring.some((value, i) => i % 2 === 0 && value === x && ring[i + 1] === y));
}

function byApron(project: Project, wall: number): WallMend | null {
  const { apron } = project.grading;
  const sides = apron.sides.filter((side) => side.wall !== wall);
  const edit = changeApron.run(project, {
    patch: {
      fall: Math.max(apron.fall, ruledFall),
      width: Math.max(apron.width, ruledWidth),
      leave: apron.leave.filter((other) => other !== wall),
      sides,
    },
  });
  const { length, slope } = wordsFor(project.display);
  return edit.ok
    ? {
        id: "apron",
        what: `Let the ground fall ${slope(Math.max(apron.fall, ruledFall))} over ${length(Math.max(apron.width, ruledWidth))} from it`,
        project: edit.project,
      }
    : null;
}

/** The least raise that does it, by halving. */
function* byFloor(project: Project, passes: (changed: Project) => boolean): Generator<WallMend | null, void> {
  const { building } = project;
  if (!building) return;
  const raised = (by: number): Project => ({
    ...project,
    building: { ...building, floor: building.floor + by },
  });
  let [fails, works] = [0, 0.05];
  while (!passes(raised(works))) {
    if (works >= mostRaise) return;
    [fails, works] = [works, Math.min(mostRaise, 2 * works)];
    yield null;
  }
  while (works - fails > exactly) {
    const half = (fails + works) / 2;
    if (passes(raised(half))) works = half;
    else fails = half;
    yield null;
  }
  const { length } = wordsFor(project.display);
  yield { id: "floor", what: `Raise the floor by ${length(works)}`, project: raised(works) };
}
