/** The stages that follow the floor height: cheap enough for every frame of a drag. */
import { floorBand, floorRules } from "../advice";
import { earthBelowFloor } from "../document/foundationMeasures";
import type { Project } from "../document/schema";
import { wallWater } from "../drainage";
import { type CornerGround, cornerResults, foundationLevels, trenchCorners } from "../foundation";
import {
  cornerName,
  type DriveProfile,
  driveProfile,
  driveResult,
  type Finished,
  finishHeights,
  type Places,
  type Prepared,
  placesAt,
  prepare,
} from "../grading";
import { bill, billCost } from "../quantities";
import { setout } from "../setout";
import { groundAt } from "../terrain";
import { pondNear, type StandingFacts, standingFacts } from "./advice-facts";
import { earthworkResult, strippedEarth, volumeAgainstFloor } from "./earthwork";
import { type FoundationPlaces, foundationAt, foundationPlaces } from "./foundation";
import type { StageMaker } from "./memo";
import type {
  CurvePoint,
  FoundationResult,
  GroundGrid,
  Pond,
  Results,
  SurveyResult,
  SwaleResult,
  WaterResult,
} from "./results";
import { type SectionPlaces, sectionLine, sectionPlaces } from "./section";
import { setoutHeights, setoutReference } from "./setout-heights";
import type { BuildingSite } from "./site";
import { swaleResults, type WallReadings, wallReadings } from "./water";
import type { Words } from "./words";

/** What every floor of a layout shares. */
export interface Standing {
  readonly corners: {
    readonly places: Places;
    readonly prepared: Prepared;
    readonly guessed: readonly boolean[];
  };
  readonly drives: readonly DriveProfile[];
  readonly walls: WallReadings;
  readonly swales: readonly SwaleResult[];
  readonly section: { readonly places: SectionPlaces; readonly prepared: Prepared };
  readonly curve: readonly CurvePoint[];
  readonly facts: StandingFacts;
  readonly foundation: FoundationPlaces;
}

/** Parts of the results that follow the floor. */
export type FloorResults = Pick<
  Results,
  | "floor"
  | "topOfWall"
  | "corners"
  | "surface"
  | "earthwork"
  | "curve"
  | "trench"
  | "foundation"
  | "setout"
  | "drives"
  | "water"
  | "band"
  | "bill"
  | "cost"
  | "section"
>;

/** `carriedCurve`: shown while the layout itself is under the hand. It lags then, as finished contours do. */
export function standingStages(
  stage: StageMaker,
): (site: BuildingSite, project: Project, words: Words, carriedCurve?: readonly CurvePoint[]) => Standing {
  const corners = stage(
    (
      { ring }: BuildingSite["footprint"],
      ground: BuildingSite["ground"],
      height: BuildingSite["height"],
      plan: BuildingSite["plan"],
      range: BuildingSite["range"],
    ) => {
      const places = placesAt(ring, height);
      const guessed = ring.map(([x, y]) => groundAt(ground, x, y)?.guessed ?? true);
      return { places, prepared: prepare(places, plan, range), guessed };
    },
  );
  const drives = stage((plan: BuildingSite["plan"], height: BuildingSite["height"]) =>
    plan.drives.map((line) => driveProfile(line, height)),
  );
  const walls = stage(wallReadings);
  const swales = stage(swaleResults);
  const section = stage(
    (
      footprint: BuildingSite["footprint"],
      ground: BuildingSite["ground"],
      height: BuildingSite["height"],
      plan: BuildingSite["plan"],
      range: BuildingSite["range"],
      reach: BuildingSite["reach"],
    ) => {
      const places = sectionPlaces(footprint, ground, height, reach.bounds);
      return { places, prepared: prepare(places.places, plan, range) };
    },
  );
  const curve = stage(volumeAgainstFloor);
  const footing = stage(foundationPlaces);
  return (site, project, words, carriedCurve) => {
    const { footprint, ground, height, plan, range, reach, building } = site;
    const below = earthBelowFloor(building);
    const curveOf = [site.coarse, site.curve, below, range.low, range.high] as const;
    return {
      corners: corners(footprint, ground, height, plan, range),
      drives: drives(plan, height),
      walls: walls(plan, height, range),
      swales: swales(plan, height, project.rules.leastSwaleFall, words),
      section: section(footprint, ground, height, plan, range, reach),
      curve: carriedCurve && !curve.knows(...curveOf) ? carriedCurve : curve(...curveOf),
      facts: standingFacts(site, project, words),
      foundation: footing(footprint, ground, height, plan, range, project.survey, building.doors),
    };
  };
}

export interface FloorInput {
  readonly site: BuildingSite;
  readonly standing: Standing;
  readonly project: Project;
  readonly survey: SurveyResult;
  readonly words: Words;
  readonly finished: Finished;
  readonly ponds: readonly Pond[];
  readonly flow: WaterResult["flow"];
  readonly flows: WaterResult["flows"];
  readonly toWalls: WaterResult["toWalls"];
  readonly gathered: WaterResult["gathered"];
  readonly outsideError: number;
}

export function floorResults(input: FloorInput): FloorResults {
  const { site, standing, project, survey, words, finished, ponds } = input;
  const { building, plan, curve, footprint } = site;
  const { floor } = finished;
  const levels = foundationLevels(floor, building.topOfWallAboveFloor, building.foundation);
  const cornerHeights = cornerGrounds(standing.corners, floor);
  const corners = cornerResults(levels, cornerHeights);
  const drives = standing.drives.map((profile) =>
    driveResult(profile, floor, {
      steepest: project.rules.steepestDrive,
      vehicle: project.grading.vehicle,
    }),
  );
  const foundation = foundationAt(standing.foundation, site, project, floor, corners, drives, words);
  const earthwork = earthworkResult({
    levels,
    curve,
    finished,
    buildingArea: footprint.area,
    error: input.outsideError,
  });
  const rules = floorRules({
    ...standing.facts,
    rules: project.rules,
    stripDepth: project.materials.stripDepth,
    pondNear: pondNear(ponds, footprint, project.rules.uphillReach, words),
  });
  const items = bill({
    ...strippedEarth(curve, levels, project.materials.stripDepth, finished.outside),
    disturbedArea: earthwork.disturbedArea,
    concrete: foundation.takeOff,
    drives: plan.drives.map(({ drive, length }) => ({
      id: drive.id,
      name: drive.name,
      gravel: length * drive.width * drive.gravel,
    })),
    materials: project.materials,
    truckVolume: project.truck.volume,
    prices: project.prices,
    concreteWaste: building.foundation.concreteWaste,
  });
  return {
    floor,
    topOfWall: levels.topOfWall,
    corners,
    surface: surfaceOf(site, finished),
    earthwork,
    curve: standing.curve,
    trench: trenchCorners(levels, cornerHeights, project.materials.stripDepth, cornerBottoms(foundation)),
    foundation,
    setout: setout(
      setoutReference(project, survey),
      setoutHeights(project, plan, levels, foundation, drives, standing.swales, words),
    ),
    drives,
    water: {
      ponds,
      flow: input.flow,
      flows: input.flows,
      toWalls: input.toWalls,
      gathered: input.gathered,
      walls: wallWater(standing.walls.normals, standing.walls.prepared, floor),
      swales: standing.swales,
    },
    band: floorBand(rules),
    bill: items,
    cost: billCost(items),
    section: sectionLine(standing.section.places, standing.section.prepared, floor),
  };
}

/** The deeper of the two walls' bottoms at each corner. */
function cornerBottoms({ walls }: FoundationResult): number[] {
  return walls.map(({ bottom }, i) => {
    const before = walls[(i + walls.length - 1) % walls.length];
    return Math.min(
      bottom[0] as number,
      before?.bottom[before.bottom.length - 1] ?? Number.POSITIVE_INFINITY,
    );
  });
}

function cornerGrounds({ places, prepared, guessed }: Standing["corners"], floor: number): CornerGround[] {
  const finished = finishHeights(prepared, floor, new Float64Array(guessed.length));
  return guessed.map((guess, i) => ({
    name: cornerName(i),
    x: places.x[i] as number,
    y: places.y[i] as number,
    ground: places.existing[i] as number,
    guessed: guess,
    finished: finished[i] as number,
  }));
}

function surfaceOf({ layout }: BuildingSite, finished: Finished): GroundGrid {
  const { grid, cells, existing, guessed } = layout;
  const { greatestCut, greatestFill } = finished.outside;
  const placed = (found: { depth: number; cell: number } | null) =>
    found && {
      depth: found.depth,
      at: [cells.x[found.cell] as number, cells.y[found.cell] as number] as [number, number],
    };
  return {
    grid,
    existing,
    finished: finished.finished,
    depth: finished.depth,
    guessed,
    inside: cells.inside,
    greatestFill: placed(greatestFill),
    greatestCut: placed(greatestCut),
  };
}
