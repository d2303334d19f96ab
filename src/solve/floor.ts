/** The stages that follow the floor height: cheap enough for every frame of a drag. */
import { floorBand, floorRules, type Rule, switched } from "../advice";
import type { Project } from "../document/schema";
import { wallWater } from "../drainage";
import { trenchCorners } from "../foundation";
import type { Finished } from "../grading";
import { billCost } from "../quantities";
import { setout } from "../setout";
import { pondNear } from "./advice-facts";
import { earthworkResult } from "./earthwork";
import { billAt, partsAt, type Reckoned, stumpsOn } from "./floor-parts";
import { pipesUnderDrives } from "./pipes";
import type {
  FoundationResult,
  GroundGrid,
  LedAway,
  Pond,
  Results,
  SurveyResult,
  WaterResult,
} from "./results";
import { sectionLine } from "./section";
import { setoutHeights, setoutReference } from "./setout-heights";
import type { BuildingSite } from "./site";
import type { Standing } from "./standing";
import { wallVerdicts } from "./wall-verdict";
import type { Words } from "./words";

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
  readonly led: LedAway;
  readonly outsideError: number;
  /** Ponds that stand whatever the floor: the others follow from it and limit nothing. */
  readonly steadyPonds: readonly Pond[];
  /** Limits found by trying floors. */
  readonly searched: readonly Rule[];
}

export function floorResults(input: FloorInput): FloorResults {
  const { site, standing, project, survey, words, finished, ponds } = input;
  const { plan, curve, footprint } = site;
  const { floor } = finished;
  const reckoned: Reckoned = { ...project, stumps: stumpsOn(project.lot) };
  const parts = partsAt(site, standing, reckoned, floor, words);
  const { levels, cornerGrounds, corners, drives, foundation } = parts;
  const earthwork = earthworkResult({
    levels,
    curve,
    finished,
    buildingArea: footprint.area,
    error: input.outsideError,
  });
  const rules = [
    ...floorRules({
      ...standing.facts,
      rules: project.rules,
      stripDepth: project.materials.stripDepth,
      pondNear: pondNear(input.steadyPonds, footprint, project.rules.uphillReach, words),
    }),
    ...input.searched,
  ];
  const items = billAt(site, parts, finished.outside, reckoned, {
    error: input.outsideError,
    topsoilMet: standing.topsoilMet,
  });
  const pipes = pipesUnderDrives(plan, input.flows, project.drainage.pipe, floor);
  return {
    floor,
    topOfWall: levels.topOfWall,
    corners,
    surface: surfaceOf(site, finished),
    earthwork,
    curve: standing.curve,
    trench: trenchCorners(levels, cornerGrounds, project.materials.stripDepth, cornerBottoms(foundation)),
    foundation,
    setout: setout(
      setoutReference(project, survey),
      setoutHeights(project, plan, levels, foundation, drives, standing.swales, pipes, words),
    ),
    drives,
    water: {
      ...input.led,
      pipes,
      ponds,
      flow: input.flow,
      flows: input.flows,
      toWalls: input.toWalls,
      gathered: input.gathered,
      walls: wallVerdicts(
        wallWater(standing.walls.normals, standing.walls.prepared, floor),
        ponds,
        footprint,
        standing.walls.guessed,
      ),
      swales: standing.swales,
    },
    band: floorBand(switched(rules, project.rules)),
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
