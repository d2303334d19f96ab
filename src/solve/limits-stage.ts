/** Limits found by trying floors, and cost against the floor: they don't depend on the floor that is set. */
import type { Rule } from "../advice";
import type { Building, Project } from "../document/schema";
import { costCurve, costsOn } from "./cost-curve";
import { type FloorParts, partsAt, type Reckoned, stumpsOn } from "./floor-parts";
import { type StageMaker, steady } from "./memo";
import type { CostCurve } from "./results";
import { searchedLimits } from "./searched-limits";
import type { BuildingSite } from "./site";
import { lotEdge } from "./slope-room";
import type { Standing } from "./standing";
import type { Words } from "./words";

export interface FloorLimits {
  readonly rules: readonly Rule[];
  /** Null while nothing is priced. */
  readonly costs: CostCurve | null;
}

export const noLimitsYet: FloorLimits = { rules: [], costs: null };

type LimitsStage = (site: BuildingSite, standing: Standing, project: Project, words: Words) => FloorLimits;

export function limitsStage(stage: StageMaker): LimitsStage {
  const apart = steady<Building>(sameButFloor);
  const edge = stage(lotEdge);
  const reckoned = stage(
    (
      rules: Project["rules"],
      grading: Project["grading"],
      materials: Project["materials"],
      truck: Project["truck"],
      prices: Project["prices"],
      work: Project["work"],
      stumps: number,
    ): Reckoned => ({ rules, grading, materials, truck, prices, work, stumps }),
  );
  const limits = stage(
    (
      building: Building,
      footprint: BuildingSite["footprint"],
      plan: BuildingSite["plan"],
      curve: BuildingSite["curve"],
      spots: BuildingSite["spots"],
      layout: BuildingSite["layout"],
      coarse: BuildingSite["layout"],
      range: BuildingSite["range"],
      corners: Standing["corners"],
      drives: Standing["drives"],
      walls: Standing["walls"],
      foundation: Standing["foundation"],
      lot: ReturnType<typeof lotEdge>,
      project: Reckoned,
      words: Words,
    ): FloorLimits => {
      const site = { building, footprint, plan, curve, spots };
      const standing = { corners, drives, walls, foundation };
      const parts = onceEach((floor) => partsAt(site, standing, project, floor, words, null));
      const priced = Object.keys(project.prices).length > 0;
      const money = { site, project, partsAt: parts, range };
      return {
        costs: priced ? costCurve(coarse, money) : null,
        rules: searchedLimits({
          site,
          walls,
          project,
          words,
          range,
          lot,
          partsAt: parts,
          cost: priced ? { coarse: costsOn(coarse, money), fine: costsOn(layout, money) } : null,
        }),
      };
    },
  );
  return (site, standing, project, words) =>
    limits(
      apart(site.building),
      site.footprint,
      site.plan,
      site.curve,
      site.spots,
      site.layout,
      site.coarse(),
      site.range,
      standing.corners,
      standing.drives,
      standing.walls,
      standing.foundation,
      edge(project.lot.outline, site.plan, site.height, site.range),
      reckoned(
        project.rules,
        project.grading,
        project.materials,
        project.truck,
        project.prices,
        project.work,
        stumpsOn(project.lot),
      ),
      words,
    );
}

function sameButFloor(before: Building, now: Building): boolean {
  const keys = new Set([...Object.keys(before), ...Object.keys(now)] as (keyof Building)[]);
  keys.delete("floor");
  return [...keys].every((key) => before[key] === now[key]);
}

/** Each floor is reckoned once for all that ask for it. */
function onceEach(work: (floor: number) => FloorParts): (floor: number) => FloorParts {
  const known = new Map<number, FloorParts>();
  return (floor) => {
    const parts = known.get(floor) ?? work(floor);
    known.set(floor, parts);
    return parts;
  };
}
