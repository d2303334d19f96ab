/** The building at one floor height: levels, corners, drives and foundation; and the bill for it. For the floor shown, and for floors tried. */
import { fillIsBrought } from "../document/foundationMeasures";
import type { Building, Project } from "../document/schema";
import { type CornerGround, cornerResults, type FoundationLevels, foundationLevels } from "../foundation";
import { signedArea } from "../geometry";
import { cornerName, driveResult, finishHeights, type GradingPlan, type OutsideVolumes } from "../grading";
import { bill, type StoneBed } from "../quantities";
import { strippedEarth } from "./earthwork";
import { foundationAt } from "./foundation";
import type { BillItem, CornerResult, DriveResult, FoundationResult } from "./results";
import type { BuildingSite } from "./site";
import type { Standing } from "./standing";
import type { Words } from "./words";

/** The parts of a document that a floor is reckoned with; the floor itself isn't among them. */
export type Reckoned = Pick<Project, "rules" | "grading" | "materials" | "truck" | "prices" | "work"> & {
  /** Stumps drawn on the plan. */
  readonly stumps: number;
};

/** Stumps to take out. */
export function stumpsOn({ features }: Project["lot"]): number {
  return features.reduce((sum, { kind, points }) => (kind === "stump" ? sum + points.length : sum), 0);
}

/** The parts of a site. `building.floor` isn't read. */
export type ReckonedSite = Pick<BuildingSite, "footprint" | "plan" | "curve" | "spots"> & {
  readonly building: Building;
};

export interface FloorParts {
  readonly levels: FoundationLevels;
  readonly cornerGrounds: readonly CornerGround[];
  readonly corners: readonly CornerResult[];
  readonly drives: readonly DriveResult[];
  readonly foundation: FoundationResult;
}

/** `vehicle`: rolled along the drives to see what touches; null where that isn't asked, for it takes its time. */
export function partsAt(
  site: ReckonedSite,
  standing: Pick<Standing, "corners" | "drives" | "foundation">,
  project: Reckoned,
  floor: number,
  words: Words,
  vehicle: Project["grading"]["vehicle"] | null = project.grading.vehicle,
): FloorParts {
  const { building } = site;
  const levels = foundationLevels(floor, building.topOfWallAboveFloor, building.foundation);
  const grounds = cornerGrounds(standing.corners, floor);
  const corners = cornerResults(levels, grounds);
  const drives = standing.drives.map((profile) =>
    driveResult(profile, floor, {
      steepest: project.rules.steepestDrive,
      vehicle,
    }),
  );
  const foundation = foundationAt(standing.foundation, site, project, floor, corners, drives, words);
  return { levels, cornerGrounds: grounds, corners, drives, foundation };
}

/** What is known of how sure the earth is: its error outside the walls, m3, and the topsoil that test pits met, m. */
export interface EarthSureness {
  readonly error: number;
  readonly topsoilMet: readonly [least: number, most: number] | null;
}

/** What that floor takes, with the ground outside the walls as it was summed on some grid. */
export function billAt(
  site: ReckonedSite,
  { levels, foundation }: FloorParts,
  outside: OutsideVolumes,
  project: Reckoned,
  sureness?: EarthSureness,
): BillItem[] {
  const { building, footprint, plan, curve } = site;
  const { materials, truck, prices, work } = project;
  const earth = strippedEarth(curve, levels, materials.stripDepth, outside);
  const inWalls = Math.min(foundation.wallsInFill, earth.fillInside);
  return bill({
    cut: earth.cut,
    fill: earth.fill - inWalls,
    fillInside: earth.fillInside - inWalls,
    ...sureness,
    disturbedArea: footprint.area + outside.area,
    soilArea: outside.soilArea,
    slabFill: fillIsBrought(building.foundation) ? "sand-gravel" : "earth",
    stumps: project.stumps,
    concrete: foundation.takeOff,
    trench: foundation.dig,
    posts: postsTaken(foundation, building.foundation),
    drives: plan.drives.map(driveStone),
    pads: (plan.pads ?? []).flatMap(padStone),
    materials,
    truck,
    work,
    prices,
    concreteWaste: building.foundation.concreteWaste,
  });
}

function postsTaken(
  { posts }: FoundationResult,
  { posts: { holeDiameter, holeDepth, padThickness } }: Building["foundation"],
) {
  return {
    count: posts.length,
    length: posts.reduce((sum, { length }) => sum + Math.max(0, length - padThickness), 0),
    holes: posts.length * (Math.PI / 4) * holeDiameter ** 2 * holeDepth,
  };
}

function driveStone({ drive, length }: GradingPlan["drives"][number]): StoneBed {
  return {
    id: drive.id,
    name: drive.name,
    area: length * drive.width,
    thickness: drive.gravel,
    top: drive.topLayer,
  };
}

function padStone({ pad, ring }: NonNullable<GradingPlan["pads"]>[number]): StoneBed[] {
  if (pad.gravel === 0) return [];
  return [{ id: pad.id, name: pad.name, area: Math.abs(signedArea(ring)), thickness: pad.gravel }];
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
