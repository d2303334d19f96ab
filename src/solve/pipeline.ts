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
import { type FinishBuffers, finish, type Layout, newBuffers, type Reach } from "../grading";
import { setout } from "../setout";
import { roundingStep } from "../units";
import { cautions } from "./cautions";
import { clearances } from "./clearances";
import { costOf, leastWithin, throughHere } from "./cost-curve";
import { drainCautions } from "./drain-water";
import { type FloorResults, floorResults } from "./floor";
import { driveProfileCautions, gradingCautions, withFits } from "./grading-cautions";
import { actsInOrder, gradingResult } from "./grading-result";
import { nothingGuessed } from "./guessed-shares";
import { heldWidthsStage } from "./held-widths";
import type { Late, LateEarth, LateOfBuilding } from "./late";
import { ledAwayStage, nothingLed } from "./led-away";
import { roundedInto } from "./limit-standing";
import { forgetful, remember } from "./memo";
import { pitsStage } from "./pits";
import type {
  CornerResult,
  CostAgainstFloor,
  CostCurve,
  HeightSpan,
  Problem,
  Results,
  TrenchCorner,
  WallElevation,
} from "./results";
import { setoutReference, withDrain } from "./setout-heights";
import { type MadeLayout, type Site, type SiteOptions, siteStages } from "./site";
import type { SolveOptions, Solver } from "./solver";
import { soundGradingStage } from "./sound-grading";
import { soundLotStage } from "./sound-lot";
import { standingStages } from "./standing";
import { trailingStages } from "./trailing";
import { noWater, type StandingWater } from "./water";

export interface SolverOptions extends SiteOptions {
  /** False: every stage runs anew each time. For tests of the memory. */
  readonly remember?: boolean;
}

const noCorners: readonly Point[] = [];
const noResults: readonly CornerResult[] = [];
const noTrench: readonly TrenchCorner[] = [];
const noWalls: readonly WallElevation[] = [];

/** The last full solve, for a drag to carry on from. */
interface Settled extends Omit<LateOfBuilding, "kind" | "layout"> {
  readonly given: Project;
  readonly project: Project;
  readonly layout: Layout;
  readonly reach: Reach;
  readonly floor: number;
  readonly problems: readonly Problem[];
}

export function createSolver(options: SolverOptions = {}): Solver {
  const stage = options.remember === false ? forgetful : remember;
  const withSoundLot = soundLotStage(stage);
  const withSoundGrading = soundGradingStage(stage);
  const withHeldWidths = heldWidthsStage(stage);
  const soundOf = (given: Project) => {
    const lot = withSoundLot(given);
    const grading = withSoundGrading(lot.project);
    const widths = withHeldWidths(grading.project);
    const problems = [...lot.problems, ...grading.problems, ...widths.problems];
    return { project: widths.project, problems };
  };
  const siteOf = siteStages(stage, options);
  const standingOf = standingStages(stage);
  const trailing = trailingStages(stage);
  const finishOf = stage(finish);
  const clearancesOf = stage(clearances);
  const gradingOf = stage(gradingResult);
  const orderOf = stage(actsInOrder);
  const pitsOf = stage(pitsStage);
  const ledOf = ledAwayStage(stage);
  const buffersFor = dragBuffers();
  let settled: Settled | null = null;
  let bareWater: StandingWater | null = null;

  /** On bare ground water is all that takes long: it lags behind a drag. */
  function waterOnBare({ terrain }: Site, project: Project, dragging: boolean, late?: Late): StandingWater {
    if (!terrain) return noWater;
    if (dragging) return bareWater ?? noWater;
    bareWater =
      (late?.kind === "bare" ? late.water : null) ?? trailing.bare(terrain.ground, terrain.tin, project);
    return bareWater;
  }

  function solvedBare(
    site: Site,
    project: Project,
    typedProblems: readonly Problem[],
    dragging: boolean,
    late?: Late,
  ): Results {
    const water = waterOnBare(site, project, dragging, late);
    const { survey, materials } = project;
    const { pits } = pitsOf(survey, noCorners, noResults, noTrench, noWalls, materials, site.words);
    return {
      ...whole(site, [...typedProblems, ...site.problems]),
      pits,
      ...withoutBuilding(project, site, water),
      lagging: dragging && site.terrain !== null,
      earthLags: false,
    };
  }

  function solve(given: Project, { floor: dragged, detail = "full", late }: SolveOptions = {}): Results {
    const { project, problems: typedProblems } = soundOf(given);
    const floor = dragged ?? project.building?.floor ?? 0;
    const dragging = detail !== "full";
    const again = !dragging && settled?.given === given && settled.floor === floor ? settled : null;
    const ready = (late?.kind === "built" ? late : null) ?? (again && { ...again, layout: null });
    const earth = late?.kind === "earth" && !ready ? late : null;
    const made = ready ?? earth;
    const site = siteOf(project, floor, dragging ? "quick" : made ? { made: made.layout } : "fine");
    const { built, words, survey, contours } = site;
    if (!built) return solvedBare(site, project, typedProblems, dragging, late);
    const carriedCurve = made?.curve ?? (dragging ? settled?.curve : undefined);
    const standing = standingOf(built, project, words, carriedCurve);
    const { layout } = built;
    const { materials } = project;
    const finished = dragging
      ? finish(layout, floor, materials, buffersFor(layout))
      : finishOf(layout, floor, materials);
    const carried = dragging && settled?.layout === layout ? settled : null;
    const lagged = ready?.trailing ?? carried?.trailing;
    const lags = dragging || earth !== null;
    const full = lagged || lags ? null : trailing.full(built, project, finished, contours, standing, words);
    const before = settled?.trailing ?? null;
    const known =
      lagged ??
      full?.trailing ??
      (earth ? trailing.withEarth(earth.earth, before) : trailing.quick(built, finished, contours, before));
    const trail =
      detail === "band" ? { ...known, limits: trailing.limits(built, standing, project, words) } : known;
    const results = floorResults({
      site: built,
      standing,
      project,
      survey,
      words,
      finished: trail.outside && !dragging ? { ...finished, outside: trail.outside } : finished,
      ponds: trail.ponds,
      flow: trail.flow,
      flows: trail.flows,
      toWalls: trail.toWalls,
      gathered: trail.gathered,
      outsideError: trail.outsideError,
      steadyPonds: trail.steadyPonds,
      led: settled?.led ?? nothingLed,
      searched: trail.limits.rules,
    });
    const led =
      ready?.led ??
      (full?.found
        ? ledOf(full.found, built.footprint, project, results.foundation, results.trench, floor)
        : (settled?.led ?? nothingLed));
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
    const judged = ready ?? (lags ? settled : null);
    const grading = judged
      ? { ...judged.grading, order: orderOf(project.grading) }
      : gradingOf(layout, built.height, project.grading, project.lot, floor);
    const near =
      judged?.near ?? clearancesOf(layout, finished, trail.daylight, built.height, project.lot, words);
    const problems = carried?.problems ?? [
      ...typedProblems,
      ...site.problems,
      ...pitProblems,
      ...drainCautions(water.footingDrain, words),
      ...cautions(built, project, { ...results, water }, words),
      ...gradingCautions(grading, layout.plan, project.grading, project.lot.north, words),
      ...driveProfileCautions(results.drives, project.rules, words),
      ...withFits(near, grading, project.grading, words),
    ];
    if (!lags) {
      const { curve } = standing;
      settled = {
        given,
        project,
        layout,
        reach: built.reach,
        floor,
        trailing: trail,
        led,
        curve,
        grading,
        near,
        problems,
      };
    }
    return {
      ...whole(site, problems),
      pits,
      ...results,
      water,
      setout: withDrain(results.setout, setoutReference(project, survey), water.footingDrain),
      finishedContours: trail.finishedContours,
      daylight: trail.daylight,
      arrows: trail.arrows,
      balance: trail.balance,
      oneStep: trail.oneStep,
      costs: costsAgainstFloor(trail.limits.costs, results, floor, project.display),
      grading,
      guessed: standing.guessed,
      lagging: lags && (carried?.project !== project || carried.floor !== floor),
      earthLags: built.isSmall,
    };
  }

  /** The earth of a plan with a building, before the rest is worked out; null where there is none. */
  function lateEarth(given: Project): LateEarth | null {
    const { project } = soundOf(given);
    const floor = project.building?.floor ?? 0;
    const { built, words, contours } = siteOf(project, floor, "fine");
    if (!built) return null;
    const { layout, reach } = built;
    return {
      kind: "earth",
      earth: trailing.earth(built, project, finishOf(layout, floor, project.materials), contours),
      curve: standingOf(built, project, words).curve,
      layout: asMade(layout, reach),
    };
  }

  function late(project: Project): Late {
    const { floor } = solve(project);
    if (settled?.given !== project || settled.floor !== floor) return { kind: "bare", water: bareWater };
    const { trailing: trail, led, curve, grading, near, layout, reach } = settled;
    return { kind: "built", trailing: trail, led, curve, grading, near, layout: asMade(layout, reach) };
  }

  /** The stages of the ground are the long ones; what follows finds them remembered. */
  function* solveInSteps(given: Project): Generator<number, Results> {
    const { project } = soundOf(given);
    const steps = siteOf.inSteps(project, project.building?.floor ?? 0);
    for (let done = 1; !steps.next().done; done++) yield done / (GROUND_STEPS + 2);
    yield (GROUND_STEPS + 1) / (GROUND_STEPS + 2);
    return solve(given);
  }
  return {
    solve,
    solveInSteps,
    isSettled: (given) => settled?.given === given && settled.floor === (given.building?.floor ?? 0),
    hasSettled: () => settled !== null || bareWater !== null,
    lateEarth,
    late,
    surface: (given) => siteOf.surface(soundOf(given).project),
    surfaceWork: (given) => siteOf.surfaceWork(soundOf(given).project),
    learnSurface: siteOf.learnSurface,
    forgetSettled() {
      settled = null;
      bareWater = null;
    },
  };
}

function asMade({ plan: _, ...arrays }: Layout, reach: Reach): MadeLayout {
  return { arrays, reach };
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
    | "finishedContours"
    | "daylight"
    | "arrows"
    | "balance"
    | "oneStep"
    | "costs"
    | "grading"
    | "guessed"
    | "lagging"
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
    oneStep: [],
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
