/**
 * The stages that don't depend on the floor height, in their order: from readings to a layout.
 *
 * Each is remembered on just the parts of the document it reads, so an edit of one part leaves the rest alone.
 */
import { leansOnBuilding } from "../document/places";
import type { Building, Project, Survey } from "../document/schema";
import { volumeCurve } from "../earthwork";
import type { Bounds } from "../geometry";
import {
  type FloorRange,
  type Footprint,
  footprint,
  type GradingPlan,
  gradingReach,
  type Layout,
  layOut,
} from "../grading";
import { levelSurvey } from "../survey";
import { type Ground, groundAt, makeGround, type Tin } from "../terrain";
import { type ContourSet, contourUnit, existingContours, noContours } from "./contours";
import { gradingPlan, type HeightAt } from "./grading-plan";
import { type GroundPoints, groundPoints, samePoints } from "./ground-points";
import { type GroundSurface, groundSurface, surfaceProblems } from "./ground-surface";
import { type StageMaker, steady } from "./memo";
import { outlineProblem } from "./outline-problem";
import { plotStage } from "./plot";
import { floorRange, siteReach } from "./reach";
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
  readonly range: FloorRange;
  readonly reach: { readonly bounds: Bounds; readonly meets: boolean };
  /** The full grid; in a drag that moves more than the floor, the coarse one. */
  readonly layout: Layout;
  readonly coarse: Layout;
}

export interface Site {
  readonly survey: SurveyResult;
  readonly plot: PlotResult;
  readonly words: Words;
  readonly terrain: Terrain | null;
  readonly contours: ContourSet;
  readonly built: BuildingSite | null;
  readonly problems: readonly Problem[];
}

/** Cells of the coarse grid: for the volume curve, the error estimate and drags that move the layout. */
const coarseCells = 20_000;

const noCorners: Building["outline"] = [];

export interface SiteStages {
  (project: Project, floor: number, quick: boolean): Site;
  /** The same in steps, for a crowd of points: between two of them the window may draw, or stop. */
  inSteps(project: Project, floor: number): Generator<void, Site>;
}

export function siteStages(stage: StageMaker): SiteStages {
  const words = stage(wordsFor);
  const readsCorners = stage((survey: Survey) => survey.shots.some(({ place }) => leansOnBuilding(place)));
  const survey = stage(levelSurvey);
  const points = stage(groundPoints);
  const samePointsAsBefore = steady<GroundPoints>(samePoints);
  const surface = stage(groundSurface);
  const terrain = terrainStages(stage);
  const contours = stage(existingContours);
  const outline = stage(footprint);
  const plotted = stage(plotStage);
  const build = buildingStages(stage);

  function* inSteps(project: Project, floor: number, quick: boolean): Generator<void, Site> {
    const say = words(project.display);
    const corners = project.building?.outline ?? noCorners;
    const levelled = survey(
      project.survey,
      readsCorners(project.survey) ? corners : noCorners,
      project.display.length,
    );
    yield;
    const placed = samePointsAsBefore(points(levelled.result.points, project.survey.shots));
    yield;
    const triangulated = surface(placed, project.survey.breaklines, project.survey.longestEdge);
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
    const drawn = site ? contours(site.tin, site.ground, contourUnit(project.display)) : noContours;
    yield;
    const made =
      site && project.building && shape?.ok
        ? build(project, project.building, shape.footprint, site, say, floor, quick)
        : null;
    return {
      survey: levelled.result,
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

  const atOnce = (project: Project, floor: number, quick: boolean): Site => {
    const steps = inSteps(project, floor, quick);
    for (;;) {
      const step = steps.next();
      if (step.done) return step.value;
    }
  };
  return Object.assign(atOnce, {
    inSteps: (project: Project, floor: number) => inSteps(project, floor, false),
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
  quick: boolean,
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
  const reach = stage(gradingReach);
  const fine = stage(
    (plan: GradingPlan, ground: Ground, bounds: Bounds, floors: FloorRange): Layout =>
      layOut(plan, ground, { bounds, range: floors }),
  );
  const coarse = stage(
    (plan: GradingPlan, ground: Ground, bounds: Bounds, floors: FloorRange): Layout =>
      layOut(plan, ground, { bounds, range: floors, mostCells: coarseCells }),
  );

  return (project, building, shape, terrain, words, floor, quick) => {
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
    const graded = reach(plan, ground, floors);
    const args = [plan, ground, graded.bounds, floors] as const;
    const rough = coarse(...args);
    const layout = quick && !fine.knows(...args) ? rough : fine(...args);
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
      coarse: rough,
    };
    return { site, problems };
  };
}
