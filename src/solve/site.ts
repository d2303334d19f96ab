/**
 * The stages that don't depend on the floor height, in their order: from readings to a layout.
 *
 * Each is remembered on just the parts of the document it reads, so an edit of one part leaves the rest alone.
 */
import { leansOnBuilding } from "../document/places";
import type { Building, Project, Survey } from "../document/schema";
import { volumeCurve } from "../earthwork";
import {
  type FloorRange,
  type Footprint,
  footprint,
  type GradingPlan,
  gradingReach,
  type Layout,
  type LayoutArrays,
  type LayoutUnderHand,
  layOut,
  layOutUnderHand,
  type Reach,
} from "../grading";
import { levelSurvey } from "../survey";
import { type Ground, groundAt, makeGround, type Tin } from "../terrain";
import { type ContourSet, contourUnit, existingContours, noContours, undrawnContours } from "./contours";
import { gradingPlan, type HeightAt } from "./grading-plan";
import { type GroundPoints, groundPoints, samePoints } from "./ground-points";
import { type GroundSurface, groundSurface, surfaceProblems } from "./ground-surface";
import { type StageMaker, steady } from "./memo";
import { outlineProblem } from "./outline-problem";
import { plotStage } from "./plot";
import { floorRange, siteReach, usualFloorRange } from "./reach";
import type { PlotResult, Problem, SurveyResult } from "./results";
import { type GroundSpots, groundSpots } from "./spots";
import { type Words, wordsFor } from "./words";

/** What is known once there are shots enough for a surface, whatever is built on it. */
export interface Terrain {
  readonly tin: Tin;
  readonly ground: Ground;
  readonly height: HeightAt;
}

/** What is known once a building stands on that ground. */
export interface BuildingSite extends Terrain {
  readonly building: Building;
  readonly footprint: Footprint;
  readonly plan: GradingPlan;
  readonly curve: ReturnType<typeof volumeCurve>;
  readonly spots: GroundSpots;
  /** The floors looked at whatever the floor is, m, and the coarse layout for just those. */
  readonly usual: { readonly range: FloorRange; readonly coarse: () => Layout };
  readonly range: FloorRange;
  readonly reach: Reach;
  /** The full grid; in a drag that moves more than the floor, a small one. */
  readonly layout: Layout;
  readonly isSmall: boolean;
  readonly coarse: () => Layout;
}

export interface Site {
  readonly survey: SurveyResult;
  readonly surface: GroundSurface;
  readonly plot: PlotResult;
  readonly words: Words;
  readonly terrain: Terrain | null;
  readonly contours: ContourSet;
  readonly built: BuildingSite | null;
  readonly problems: readonly Problem[];
}

/** Cells of the coarse grid: for the volume curve and the error estimate. */
const coarseCells = 20_000;

const noCorners: Building["outline"] = [];

/** The full grid; one that is known or else a small one; or one that was made elsewhere (null: the one that is known). */
export type LayoutWish = "fine" | "quick" | { readonly made: MadeLayout | null };

/** A layout, and the reach that it covers, as plain data. */
export interface MadeLayout {
  readonly arrays: LayoutArrays;
  readonly reach: Reach;
}

export interface SiteStages {
  (project: Project, floor: number, wish: LayoutWish): Site;
  /** The same in steps, for a crowd of points: between two of them the window may draw, or stop. */
  inSteps(project: Project, floor: number): Generator<void, Site>;
  /** The surface alone. */
  surface(project: Project): GroundSurface;
  /** What the surface is made of, for another thread; null where the surface is known. */
  surfaceWork(project: Project): SurfaceWork | null;
  /** Takes a surface that was made elsewhere. */
  learnSurface(work: SurfaceWork, surface: GroundSurface): void;
}

/** Arguments of `groundSurface`. */
export type SurfaceWork = Parameters<typeof groundSurface>;

export interface SiteOptions {
  /** The surface, where another thread made it: then no shot is read, and contours of the ground as it is aren't drawn. */
  readonly surface?: () => GroundSurface;
}

export function siteStages(stage: StageMaker, { surface: given }: SiteOptions = {}): SiteStages {
  const words = stage(wordsFor);
  const readsCorners = stage((survey: Survey) => survey.shots.some(({ place }) => leansOnBuilding(place)));
  const survey = stage(levelSurvey);
  const points = stage(groundPoints);
  const samePointsAsBefore = steady<GroundPoints>(samePoints);
  const surface = stage(groundSurface);
  const terrain = terrainStages(stage);
  const contours = stage(existingContours);
  const scale = stage(undrawnContours);
  const outline = stage(footprint);
  const plotted = stage(plotStage);
  const build = buildingStages(stage);

  const cornersOf = ({ building }: Project) => building?.outline ?? noCorners;
  const levelledOf = (project: Project) =>
    survey(
      project.survey,
      readsCorners(project.survey) ? cornersOf(project) : noCorners,
      project.display.length,
    );
  const placedOf = (project: Project) =>
    samePointsAsBefore(points(levelledOf(project).result.points, project.survey.shots));
  const workOf = (project: Project, placed: GroundPoints): SurfaceWork => [
    placed,
    project.survey.breaklines,
    project.survey.longestEdge,
  ];

  const surfaceOf = (project: Project, placed: GroundPoints) =>
    given ? given() : surface(...workOf(project, placed));

  function* inSteps(project: Project, floor: number, wish: LayoutWish): Generator<void, Site> {
    const say = words(project.display);
    const corners = cornersOf(project);
    const levelled = levelledOf(project);
    yield;
    const placed = placedOf(project);
    yield;
    const triangulated = surfaceOf(project, placed);
    yield;
    const shape = project.building ? outline(corners) : null;
    const plot = plotted(
      project.staking,
      project.lot,
      corners,
      project.survey.shots,
      levelled.result.points,
      say,
    );
    const site = terrain(triangulated, project, corners);
    const unit = contourUnit(project.display);
    const drawn = site ? (given ? scale(site.tin, unit) : contours(site.tin, site.ground, unit)) : noContours;
    yield;
    const made =
      site && project.building && shape?.ok
        ? build(project, project.building, shape.footprint, site, say, floor, wish)
        : null;
    return {
      survey: levelled.result,
      surface: triangulated,
      plot: plot.plot,
      words: say,
      terrain: site,
      contours: drawn,
      built: made?.site ?? null,
      problems: [
        ...levelled.problems,
        ...surfaceProblems(placed, triangulated, say),
        ...(shape && !shape.ok ? [outlineProblem(shape.fault, corners)] : []),
        ...plot.problems,
        ...(made?.problems ?? []),
      ],
    };
  }

  const atOnce = (project: Project, floor: number, wish: LayoutWish): Site => {
    const steps = inSteps(project, floor, wish);
    for (;;) {
      const step = steps.next();
      if (step.done) return step.value;
    }
  };
  return Object.assign(atOnce, {
    inSteps: (project: Project, floor: number) => inSteps(project, floor, "fine"),
    surface: (project: Project) => surfaceOf(project, placedOf(project)),
    surfaceWork(project: Project) {
      const work = workOf(project, placedOf(project));
      return surface.knows(...work) ? null : work;
    },
    learnSurface: (work: SurfaceWork, made: GroundSurface) => surface.learn(made, ...work),
  });
}

type TerrainStage = (
  surface: GroundSurface,
  project: Project,
  corners: Building["outline"],
) => Terrain | null;

function terrainStages(stage: StageMaker): TerrainStage {
  const reach = stage(siteReach);
  const ground = stage(
    (tin: Tin, doubtful: Uint8Array, minX: number, minY: number, maxX: number, maxY: number) =>
      makeGround(tin, { minX, minY, maxX, maxY }, doubtful),
  );
  const terrain = stage((tin: Tin, made: Ground): Terrain => ({ tin, ground: made, height: heightOn(made) }));
  return (surface, project, corners) => {
    if (!surface.ok) return null;
    const box = reach(surface.tin, project.lot.outline, corners, project.grading);
    return terrain(surface.tin, ground(surface.tin, surface.doubtful, ...box));
  };
}

/** Height of the ground at a place within its reach. */
function heightOn(ground: Ground): HeightAt {
  return ([x, y]) => {
    const found = groundAt(ground, x, y);
    if (!found) throw new RangeError(`the ground does not reach (${x}, ${y})`);
    return found.z;
  };
}

type BuildStage = (
  project: Project,
  building: Building,
  footprint: Footprint,
  terrain: Terrain,
  words: Words,
  floor: number,
  wish: LayoutWish,
) => { readonly site: BuildingSite; readonly problems: readonly Problem[] };

function buildingStages(stage: StageMaker): BuildStage {
  const planned = stage(
    (
      shape: Footprint,
      doors: Building["doors"],
      topOfWallAboveFloor: number,
      grading: Project["grading"],
      crossing: Project["drainage"]["pipe"]["crossing"],
      height: HeightAt,
      words: Words,
    ) => gradingPlan({ footprint: shape, doors, topOfWallAboveFloor, grading, crossing, height, words }),
  );
  const curve = stage((ground: Ground, shape: Footprint) => volumeCurve(ground, shape.ring));
  const spots = stage(groundSpots);
  const range = stage((low: number, high: number): FloorRange => ({ low, high }));
  const usualRange = stage((low: number, high: number): FloorRange => ({ low, high }));
  const reachOf = (plan: GradingPlan, ground: Ground, floors: FloorRange) =>
    gradingReach(plan, ground, floors);
  const reach = stage(reachOf);
  const usualReach = stage(reachOf);
  const layoutWith =
    (cells?: number) =>
    (plan: GradingPlan, ground: Ground, { bounds }: Reach, floors: FloorRange): Layout =>
      layOut(plan, ground, { bounds, range: floors, ...(cells && { mostCells: cells }) });
  const fine = stage(layoutWith());
  const coarse = stage(layoutWith(coarseCells));
  const usualCoarse = stage(layoutWith(coarseCells));
  let frameBefore: LayoutUnderHand | null = null;
  const underHand = stage((plan: GradingPlan, ground: Ground, floors: FloorRange): LayoutUnderHand => {
    frameBefore = layOutUnderHand(plan, ground, floors, frameBefore);
    return frameBefore;
  });

  /** The reach and the layout that are wished for. */
  function laidOut(plan: GradingPlan, ground: Ground, floors: FloorRange, wish: LayoutWish) {
    const of = [plan, ground, floors] as const;
    const isFineKnown = () => reach.knows(...of) && fine.knows(plan, ground, reach(...of), floors);
    if (wish === "quick" && !isFineKnown()) {
      const { reach: graded, layout } = underHand(...of);
      return { graded, layout, isSmall: true };
    }
    if (typeof wish === "object" && wish.made && !isFineKnown()) {
      reach.learn(wish.made.reach, ...of);
      fine.learn({ ...wish.made.arrays, plan }, plan, ground, wish.made.reach, floors);
    }
    const graded = reach(...of);
    return { graded, layout: fine(plan, ground, graded, floors), isSmall: false };
  }

  return (project, building, shape, terrain, words, floor, wish) => {
    const { ground, height } = terrain;
    const { plan, problems } = planned(
      shape,
      building.doors,
      building.topOfWallAboveFloor,
      project.grading,
      project.drainage.pipe.crossing,
      height,
      words,
    );
    const volumes = curve(ground, shape);
    const found = spots(shape, ground, volumes, height, project.rules.uphillReach);
    const floors = range(...floorRange(found, floor));
    const { graded, layout, isSmall } = laidOut(plan, ground, floors, wish);
    const rough = () => coarse(plan, ground, graded, floors);
    const usual = usualRange(...usualFloorRange(found));
    const isUsual = usual.low === floors.low && usual.high === floors.high;
    const site = {
      ...terrain,
      building,
      footprint: shape,
      plan,
      curve: volumes,
      spots: found,
      range: floors,
      reach: graded,
      layout,
      isSmall,
      coarse: rough,
      usual: {
        range: usual,
        coarse: () => (isUsual ? rough() : usualCoarse(plan, ground, usualReach(plan, ground, usual), usual)),
      },
    };
    return { site, problems };
  };
}
