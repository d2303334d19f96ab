/** The facts that the floor's rules ask for, gathered from the stages before. */

import type { AdviceFacts, Spot } from "../advice";
import type { Project, Rules } from "../document/schema";
import { nearestOnRing, type Point, pointAlong } from "../geometry";
import {
  bedHeight,
  type DriveLine,
  endOfRun,
  type Footprint,
  floorForGrade,
  type GradingPlan,
} from "../grading";
import { placeName } from "./place-names";
import type { Pond } from "./results";
import type { BuildingSite } from "./site";
import { type BareSpot, higher, lower } from "./spots";
import type { Words } from "./words";

/** Steps along a swale's bed, m. */
const swaleStep = 0.5;

/** What the rules need of the layout; it doesn't depend on the floor. */
export type StandingFacts = Omit<AdviceFacts, "rules" | "stripDepth" | "pondNear">;

export function standingFacts(site: BuildingSite, project: Project, words: Words): StandingFacts {
  const { footprint, plan, spots, building } = site;
  const { apron } = project.grading;
  const left = spots.walls.filter((_, i) => plan.pad.leave[i] === 1);
  const named = (spot: BareSpot) => ({ ...spot, place: placeName(footprint, spot.at, words) });
  return {
    topOfWallAboveFloor: building.topOfWallAboveFloor,
    foundation: building.foundation,
    apron,
    uphill: named(spots.uphill),
    lowestAtWalls: named(lower(spots.walls.map(({ lowest }) => lowest))),
    highestAtWalls: named(higher(spots.walls.map(({ highest }) => highest))),
    lowestInside: named(spots.lowestInside),
    lowestLeft: left.length > 0 ? named(lower(left.map(({ lowest }) => lowest))) : null,
    drives: driveLimits(plan, project.rules),
    swaleNear: swaleNear(plan, footprint, project.rules.uphillReach, words),
    length: words.length,
  };
}

function driveLimits(plan: GradingPlan, { steepestDrive, breakAtDoor }: Rules): AdviceFacts["drives"] {
  return plan.drives.flatMap((line) => {
    const climbing = floorForGrade(line, steepestDrive);
    const falling = floorForGrade(line, -steepestDrive);
    if (climbing === null || falling === null) return [];
    return [
      {
        name: line.drive.name,
        climbing,
        falling,
        breaks: breaks(line, breakAtDoor),
        at: line.line[0] as Point,
      },
    ];
  });
}

function breaks(line: DriveLine, most: number): AdviceFacts["drives"][number]["breaks"] {
  const end = endOfRun(line);
  if (end.curved) return null;
  const up = floorForGrade(line, end.grade + most);
  const down = floorForGrade(line, end.grade - most);
  return up === null || down === null ? null : { where: end.where, up, down };
}

/** The highest bed of any swale that comes near the walls. */
function swaleNear(plan: GradingPlan, footprint: Footprint, reach: number, words: Words): Spot | null {
  let best: Spot | null = null;
  for (const line of plan.swales) {
    const steps = Math.min(2000, Math.ceil(line.length / swaleStep));
    for (let k = 0; k <= steps; k++) {
      const distance = (line.length * k) / steps;
      const height = bedHeight(line, distance);
      if (best && height <= best.height) continue;
      const { at } = pointAlong(line.line, distance);
      if (nearestOnRing(footprint.ring, at[0], at[1]).distance > reach) continue;
      best = { height, at, place: `${line.swale.name}, ${placeName(footprint, at, words)}` };
    }
  }
  return best;
}

/** The highest water that stands within a reach of the walls. */
export function pondNear(
  ponds: readonly Pond[],
  footprint: Footprint,
  reach: number,
  words: Words,
): Spot | null {
  let best: Spot | null = null;
  for (const pond of ponds) {
    if (best && pond.waterLevel <= best.height) continue;
    const at = shoreNear(pond, footprint, reach);
    if (at) best = { height: pond.waterLevel, at, place: `water ${placeName(footprint, at, words)}` };
  }
  return best;
}

/** The place of a pond's edge nearest to the walls, if that is within the reach. */
export function shoreNear(pond: Pond, footprint: Footprint, reach: number): Point | null {
  let nearest = reach;
  let found: Point | null = null;
  for (const ring of pond.rings) {
    for (let i = 0; i + 1 < ring.length; i += 2) {
      const [x, y] = [ring[i] as number, ring[i + 1] as number];
      const { distance } = nearestOnRing(footprint.ring, x, y);
      if (distance > nearest) continue;
      nearest = distance;
      found = [x, y];
    }
  }
  return found;
}
