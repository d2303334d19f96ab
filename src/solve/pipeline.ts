/**
 * From a project to everything computed from it. The stages in their order:
 *
 *   readings → levelled points → ground → contours           site.ts
 *   building, drives, swales → layout                        site.ts
 *   corners, stations, normals, section, volume curve        floor.ts, standing
 *   floor → finished ground → earthwork → trench → set-out
 *   → drives → walls → band → bill → section                 floor.ts
 *   finished contours, daylight, ponds, arrows               trailing.ts: may lag behind a drag
 *   cautions                                                 cautions.ts, clearances.ts
 *
 * Each stage is remembered on the document parts it reads. Bad geometry becomes a problem in words and the
 * rest goes on; an exception here is our own mistake.
 */
import { floorBand } from "../advice";
import type { Point, Project } from "../document/schema";
import { type FinishBuffers, finish, type Layout, newBuffers } from "../grading";
import { setout } from "../setout";
import { roundingStep } from "../units";
import { cautions } from "./cautions";
import { clearances } from "./clearances";
import { costOf, leastWithin, throughHere } from "./cost-curve";
import { drainCautions } from "./drain-water";
import { type FloorResults, floorResults } from "./floor";
import { driveProfileCautions, gradingCautions, withFits } from "./grading-cautions";
import { gradingResult } from "./grading-result";
import { nothingGuessed } from "./guessed-shares";
import { heldWidthsStage } from "./held-widths";
import { ledAwayStage, nothingLed } from "./led-away";
import { roundedInto } from "./limit-standing";
import { forgetful, remember } from "./memo";
import { pitsStage } from "./pits";
import type {
  CornerResult,
  CostAgainstFloor,
  CostCurve,
  CurvePoint,
  GradingResult,
  HeightSpan,
  LedAway,
  Problem,
  Results,
  SolveOptions,
  Solver,
  TrenchCorner,
  WallElevation,
} from "./results";
import { setoutReference, withDrain } from "./setout-heights";
import { type Site, siteStages } from "./site";
import { soundLotStage } from "./sound-lot";
import { standingStages } from "./standing";
import { type Trailing, trailingStages } from "./trailing";
import { noWater, type StandingWater } from "./water";

export interface SolverOptions {
  /** False: every stage runs anew each time. For tests of the memory. */
  readonly remember?: boolean;
}

const noCorners: readonly Point[] = [];
const noResults: readonly CornerResult[] = [];
const noTrench: readonly TrenchCorner[] = [];
const noWalls: readonly WallElevation[] = [];

/** The last full solve, for a drag to carry on from. */
interface Settled {
  readonly project: Project;
  readonly layout: Layout;
  readonly floor: number;
  readonly trailing: Trailing;
  readonly led: LedAway;
  readonly curve: readonly CurvePoint[];
  readonly grading: GradingResult;
  readonly problems: readonly Problem[];
}

export function createSolver(options: SolverOptions = {}): Solver {
  const stage = options.remember === false ? forgetful : remember;
  const withSoundLot = soundLotStage(stage);
  const withHeldWidths = heldWidthsStage(stage);
  const soundOf = (given: Project) => {
    const lot = withSoundLot(given);
    const widths = withHeldWidths(lot.project);
    return { project: widths.project, problems: [...lot.problems, ...widths.problems] };
  };
  const siteOf = siteStages(stage);
  const standingOf = standingStages(stage);
  const trailing = trailingStages(stage);
  const finishOf = stage(finish);
  const clearancesOf = stage(clearances);
  const gradingOf = stage(gradingResult);
  const pitsOf = stage(pitsStage);
  const ledOf = ledAwayStage(stage);
  const buffersFor = dragBuffers();
  let settled: Settled | null = null;

  function solve(given: Project, { floor: dragged, detail = "full" }: SolveOptions = {}): Results {
    const { project, problems: typedProblems } = soundOf(given);
    const floor = dragged ?? project.building?.floor ?? 0;
    const dragging = detail === "drag";
    const site = siteOf(project, floor, dragging);
    const { built, terrain, words, survey, contours } = site;
    if (!built) {
      const water = terrain ? trailing.bare(terrain.ground, terrain.tin, project) : noWater;
      const { pits } = pitsOf(
        project.survey,
        noCorners,
        noResults,
        noTrench,
        noWalls,
        project.materials,
        words,
      );
      return {
        ...whole(site, [...typedProblems, ...site.problems]),
        pits,
        ...withoutBuilding(project, site, water),
      };
    }
    const standing = standingOf(built, project, words, dragging ? settled?.curve : undefined);
    const { layout } = built;
    const { materials } = project;
    const finished = dragging
      ? finish(layout, floor, materials, buffersFor(layout))
      : finishOf(layout, floor, materials);
    const carried = dragging && settled?.layout === layout ? settled : null;
    const late =
      carried?.trailing ??
      (dragging
        ? trailing.quick(built, finished, contours, settled?.trailing ?? null)
        : trailing.full(built, project, finished, contours, standing, words));
    const { ponds, outsideError, flow, flows, toWalls, gathered } = late;
    const results = floorResults({
      site: built,
      standing,
      project,
      survey,
      words,
      finished: dragging ? finished : (late.refined ?? finished),
      ponds,
      flow,
      flows,
      toWalls,
      gathered,
      outsideError,
      steadyPonds: late.steadyPonds,
      led: settled?.led ?? nothingLed,
      searched: late.limits.rules,
    });
    const led =
      dragging || !late.found
        ? (settled?.led ?? nothingLed)
        : ledOf(late.found, built.footprint, project, results.foundation, results.trench, floor);
    const water = { ...results.water, ...led };
    const { pits, problems: pitProblems } = pitsOf(
      project.survey,
      built.building.outline,
      results.corners,
      results.trench,
      results.foundation?.walls ?? noWalls,
      project.materials,
      words,
    );
    const grading =
      dragging && settled
        ? settled.grading
        : gradingOf(layout, built.height, project.grading, project.lot, floor);
    const problems = carried?.problems ?? [
      ...typedProblems,
      ...site.problems,
      ...pitProblems,
      ...drainCautions(water.footingDrain, words),
      ...cautions(built, project, { ...results, water }, words),
      ...gradingCautions(grading, layout.plan, project.grading, words),
      ...driveProfileCautions(results.drives, project.rules, words),
      ...withFits(
        clearancesOf(layout, finished, late.daylight, built.height, project.lot, words),
        grading,
        project.lot,
        words,
      ),
    ];
    if (!dragging)
      settled = { project, layout, floor, trailing: late, led, curve: standing.curve, grading, problems };
    return {
      ...whole(site, problems),
      pits,
      ...results,
      water,
      setout: withDrain(results.setout, setoutReference(project, survey), water.footingDrain),
      finishedContours: late.finishedContours,
      daylight: late.daylight,
      arrows: late.arrows,
      balance: late.balance,
      costs: costsAgainstFloor(late.limits.costs, results, floor, project.display),
      grading,
      guessed: standing.guessed,
      lagging: dragging && (carried?.project !== project || carried.floor !== floor),
    };
  }
  /** The stages of the ground are the long ones; what follows finds them remembered. */
  function* solveInSteps(given: Project): Generator<number, Results> {
    const { project } = soundOf(given);
    const steps = siteOf.inSteps(project, project.building?.floor ?? 0);
    for (let done = 1; !steps.next().done; done++) yield done / (GROUND_STEPS + 2);
    yield (GROUND_STEPS + 1) / (GROUND_STEPS + 2);
    return solve(given);
  }
  return { solve, solveInSteps };
}

/** How often the stages of the ground pause: levelled, placed, triangulated, contours. */
const GROUND_STEPS = 4;

/** What doesn't depend on there being a building. */
function whole(site: Site, problems: readonly Problem[]) {
  const { survey, plot, terrain, contours } = site;
  return {
    survey,
    plot,
    ground: terrain?.ground ?? null,
    existingContours: contours.contours,
    contourInterval: contours.interval,
    problems,
  };
}

/** Every later part empty, but water on the bare ground. */
function withoutBuilding(
  project: Project,
  site: Site,
  water: StandingWater,
): FloorResults &
  Pick<
    Results,
    "finishedContours" | "daylight" | "arrows" | "balance" | "costs" | "grading" | "guessed" | "lagging"
  > {
  const { building } = project;
  return {
    floor: building?.floor ?? null,
    topOfWall: building ? building.floor + building.topOfWallAboveFloor : null,
    corners: [],
    surface: null,
    finishedContours: [],
    daylight: [],
    earthwork: null,
    curve: [],
    balance: null,
    costs: null,
    trench: [],
    foundation: null,
    setout: setout(setoutReference(project, site.survey), []),
    drives: [],
    grading: null,
    guessed: nothingGuessed,
    arrows: water.arrows,
    water: {
      ...nothingLed,
      pipes: [],
      ponds: water.ponds,
      walls: [],
      swales: [],
      flows: [],
      toWalls: [],
      gathered: water.gathered,
      flow: water.flow,
    },
    band: floorBand([]),
    bill: [],
    cost: { total: 0, unpriced: [] },
    section: null,
    lagging: false,
  };
}

function costsAgainstFloor(
  curve: CostCurve | null,
  { band, bill }: Pick<Results, "band" | "bill">,
  floor: number,
  { length, rounding }: Project["display"],
): CostAgainstFloor | null {
  if (!curve) return null;
  const here = costOf(floor, bill);
  // The curve's earth outside the walls is on the coarse grid, the bill's on the fine one: it is told through the bill.
  const told = throughHere(curve, here);
  const step = roundingStep(length, rounding);
  const spans = band.spans.map(
    ([low, high]): HeightSpan => [
      low === null ? null : roundedInto(low, "up", step),
      high === null ? null : roundedInto(high, "down", step),
    ],
  );
  return { ...told, leastAllowed: leastWithin(told, spans), here };
}

/** Two pairs of buffers in turn: a frame's results stay as they are until the frame after the next. */
function dragBuffers(): (layout: Layout) => FinishBuffers {
  let made: { readonly layout: Layout; readonly pairs: readonly [FinishBuffers, FinishBuffers] } | null =
    null;
  let turn = 0;
  return (layout) => {
    if (made?.layout !== layout) made = { layout, pairs: [newBuffers(layout), newBuffers(layout)] };
    turn = 1 - turn;
    return made.pairs[turn as 0 | 1];
  };
}
