/** The building at one floor height: levels, corners, drives and foundation; and the bill for it. For the floor shown, and for floors tried. */
import type { Building, Project } from "../document/schema";
import { type CornerGround, cornerResults, type FoundationLevels, foundationLevels } from "../foundation";
import { cornerName, driveResult, finishHeights, type OutsideVolumes } from "../grading";
import { bill } from "../quantities";
import { strippedEarth } from "./earthwork";
import { foundationAt } from "./foundation";
import type { BillItem, CornerResult, DriveResult, FoundationResult } from "./results";
import type { BuildingSite } from "./site";
import type { Standing } from "./standing";
import type { Words } from "./words";

/** The parts of a document that a floor is reckoned with; the floor itself isn't among them. */
export type Reckoned = Pick<Project, "rules" | "grading" | "materials" | "truck" | "prices">;

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

export function partsAt(
  site: ReckonedSite,
  standing: Pick<Standing, "corners" | "drives" | "foundation">,
  project: Reckoned,
  floor: number,
  words: Words,
): FloorParts {
  const { building } = site;
  const levels = foundationLevels(floor, building.topOfWallAboveFloor, building.foundation);
  const grounds = cornerGrounds(standing.corners, floor);
  const corners = cornerResults(levels, grounds);
  const drives = standing.drives.map((profile) =>
    driveResult(profile, floor, {
      steepest: project.rules.steepestDrive,
      vehicle: project.grading.vehicle,
    }),
  );
  const foundation = foundationAt(standing.foundation, site, project, floor, corners, drives, words);
  return { levels, cornerGrounds: grounds, corners, drives, foundation };
}

/** What that floor takes, with the ground outside the walls as it was summed on some grid. */
export function billAt(
  { building, footprint, plan, curve }: ReckonedSite,
  { levels, foundation }: FloorParts,
  outside: OutsideVolumes,
  { materials, truck, prices }: Reckoned,
): BillItem[] {
  return bill({
    ...strippedEarth(curve, levels, materials.stripDepth, outside),
    disturbedArea: footprint.area + outside.area,
    concrete: foundation.takeOff,
    drives: plan.drives.map(({ drive, length }) => ({
      id: drive.id,
      name: drive.name,
      gravel: length * drive.width * drive.gravel,
    })),
    materials,
    truckVolume: truck.volume,
    prices,
    concreteWaste: building.foundation.concreteWaste,
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
