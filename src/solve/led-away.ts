/** What leads water away beside the ground and the swales, and what is looked at while earth lies bare; it lags behind a drag. */
import { hasStemWall } from "../document/foundationMeasures";
import type { Project } from "../document/schema";
import {
  bareCells,
  type Flow,
  type FlowMethod,
  flowOver,
  footingDrain,
  lineLength,
  siltBarrier,
  steepPieces,
} from "../drainage";
import { containsPoint, type Point } from "../geometry";
import { cornerName, type Footprint, finishHeights, type Layout } from "../grading";
import { pitSpots } from "../survey";
import { drainInWater } from "./drain-water";
import { leavingWater } from "./leaving";
import type { StageMaker } from "./memo";
import type { BareEarth, FootingDrainResult, FoundationResult, LedAway, TrenchCorner } from "./results";
import { type RoofDrip, roofSides, shedAround } from "./roof-water";
import type { Joining } from "./swale-flow";

export const nothingLed: LedAway = { roof: null, footingDrain: null, leaving: [], bareEarth: null };

/** The barrier stands so far off the bare earth, and no piece of it is shorter, m. */
const barrierOff = 1.5;
const shortestBarrier = 3;

/** The ground's water as the trailing stages found it. */
export interface WaterFound {
  readonly wide: Layout;
  readonly flow: Flow;
  readonly drips: readonly RoofDrip[] | null;
  readonly joining: readonly Joining[];
  readonly uphillCells: readonly number[];
}

export function ledAwayStage(
  stage: StageMaker,
): (
  found: WaterFound,
  footprint: Footprint,
  project: Project,
  foundation: FoundationResult | null,
  trench: readonly TrenchCorner[],
  floor: number,
) => LedAway {
  const untouched = stage((wide: Layout, method: FlowMethod) =>
    flowOver({ grid: wide.grid, z: wide.existing, blocked: new Uint8Array(wide.existing.length) }, method),
  );
  const leaving = stage(leavingWater);
  const bare = stage(bareEarth);
  const shed = stage(shedAround);
  return ({ wide, flow, drips, joining, uphillCells }, footprint, project, foundation, trench, floor) => {
    const { drainage, storm, lot } = project;
    const spread = drips ?? shed(footprint, flow, wide.cells.inside);
    return {
      roof: drips && roofSides(footprint, drainage.roof, storm, drips, joining),
      footingDrain: drainResult(footprint, project, foundation, trench, wide, floor),
      leaving: leaving(
        lot.outline,
        untouched(wide, drainage.flow.method),
        flow,
        storm,
        spread,
        drainage.roof.runoff,
        uphillCells,
      ),
      bareEarth: bare(wide, floor, flow, drainage.bareEarth, lot.outline),
    };
  };
}

function heights(wide: Layout, floor: number): Float64Array {
  return finishHeights(wide.prepared, floor, new Float64Array(wide.existing.length));
}

function drainResult(
  { ring }: Footprint,
  { drainage, survey, building }: Project,
  foundation: FoundationResult | null,
  trench: readonly TrenchCorner[],
  wide: Layout,
  floor: number,
): FootingDrainResult | null {
  const { on, fall } = drainage.footingDrain;
  if (!on || !foundation || foundation.kind === "posts" || trench.length === 0) return null;
  const bottom = Math.min(...trench.map((corner) => corner.bottom));
  const ground = { grid: wide.grid, z: heights(wide, floor), blocked: wide.cells.inside };
  const run = footingDrain(ring, bottom, fall, ground);
  const [x, y] = ring[run.lowCorner] as Point;
  const { outlet } = run;
  return {
    length: run.length,
    high: run.high,
    highCorner: cornerName(run.highCorner),
    low: run.low,
    lowCorner: cornerName(run.lowCorner),
    overFooting:
      building && hasStemWall(building.foundation)
        ? Math.max(0, run.high - bottom - building.foundation.footingThickness)
        : 0,
    outlet: outlet && { ...outlet, at: [outlet.at[0], outlet.at[1]], from: [x, y] },
    pits: drainInWater(run, ring, trench, pitSpots(survey, building?.outline ?? []), wide),
    looked: Math.hypot(wide.grid.columns * wide.grid.cell, wide.grid.rows * wide.grid.cell),
  };
}

function bareEarth(
  wide: Layout,
  floor: number,
  flow: Flow,
  { steepness, length }: Project["drainage"]["bareEarth"],
  lot: Project["lot"]["outline"],
): BareEarth {
  const { grid, existing } = wide;
  const ground = { grid, existing, finished: heights(wide, floor), blocked: wide.cells.inside, flow };
  const bare = bareCells(ground);
  // The building's own ground is opened too.
  const opened = bare.map((is, i) => (is || wide.cells.inside[i] ? 1 : 0));
  const barrier = siltBarrier(ground, opened, barrierOff, shortestBarrier);
  return {
    slopes: steepPieces(ground, bare, steepness, length),
    barrier,
    barrierLength: barrier.reduce((sum, line) => sum + lineLength(line), 0),
    barrierBeyond: lot.length < 3 ? 0 : barrier.reduce((sum, line) => sum + lengthBeyond(line, lot), 0),
    disturbed: opened.reduce((sum, is) => sum + is, 0) * grid.cell ** 2,
  };
}

/** The part of a line outside the lot, by its pieces' middles, m. */
function lengthBeyond(line: Float64Array, lot: Project["lot"]["outline"]): number {
  let sum = 0;
  for (let i = 2; i < line.length; i += 2) {
    const [ax, ay, bx, by] = [line[i - 2], line[i - 1], line[i], line[i + 1]] as [
      number,
      number,
      number,
      number,
    ];
    if (!containsPoint(lot, (ax + bx) / 2, (ay + by) / 2)) sum += Math.hypot(bx - ax, by - ay);
  }
  return sum;
}
