/** What may lag behind a drag: finished contours, daylight lines, standing water, arrows, the error outside, limits found by trying floors. */

import { earthBelowFloor, fillIsBrought } from "../document/foundationMeasures";
import type { Materials, Project } from "../document/schema";
import type { VolumeCurve } from "../earthwork";
import { daylightLines, type Finished, type Layout } from "../grading";
import type { Ground, Tin } from "../terrain";
import { balance } from "./balance";
import { finishedContours } from "./contours";
import { partsAt, type Reckoned, stumpsOn } from "./floor-parts";
import type { WaterFound } from "./led-away";
import { type FloorLimits, limitsStage, noLimitsYet } from "./limits-stage";
import type { StageMaker } from "./memo";
import { oneStepUp } from "./one-step";
import { refinedOutside } from "./refined-outside";
import type { BalanceResult, Contour, OneStep, Pond, SwaleFlow } from "./results";
import { type RoofDrip, roofDrips } from "./roof-water";
import type { BuildingSite, Site } from "./site";
import type { Standing } from "./standing";
import { swaleFlows } from "./swale-flow";
import { wallCatchments } from "./wall-catchment";
import { bareWater, noWater, pondsAtAnyFloor, type StandingWater, standingWater, waterLayout } from "./water";
import type { Words } from "./words";

const none: readonly RoofDrip[] = [];

/** What is known of the earth before water and limits are. */
export interface TrailingEarth {
  readonly finishedContours: readonly Contour[];
  readonly daylight: readonly Float64Array[];
  /** Error of cut and fill outside the walls, m3. */
  readonly outsideError: number;
  /** Volumes outside the walls that are within that error; null while the layout is under the hand. */
  readonly outside: Finished["outside"] | null;
}

/** Plain data: another thread may work it out. */
export interface Trailing extends StandingWater, TrailingEarth {
  /** Those that stand whatever the floor. */
  readonly steadyPonds: readonly Pond[];
  readonly balance: BalanceResult | null;
  readonly oneStep: readonly OneStep[];
  readonly flows: readonly SwaleFlow[];
  readonly toWalls: readonly number[];
  readonly limits: FloorLimits;
}

const nothingTrails: Trailing = {
  ...noWater,
  steadyPonds: [],
  finishedContours: [],
  daylight: [],
  outsideError: 0,
  outside: null,
  balance: null,
  oneStep: [],
  flows: [],
  toWalls: [],
  limits: noLimitsYet,
};

export interface TrailingStages {
  /** All of it, for a layout and floor that stay, and the water that the stages after this one work on. */
  full(
    site: BuildingSite,
    project: Project,
    finished: Finished,
    contours: Site["contours"],
    standing: Standing,
    words: Words,
  ): { readonly trailing: Trailing; readonly found: WaterFound | null };
  /** The earth on the fine grid, for a layout and floor that stay. */
  earth(site: BuildingSite, project: Project, finished: Finished, contours: Site["contours"]): TrailingEarth;
  /** For a layout that is still under the hand: water and error stay as they were. */
  quick(
    site: BuildingSite,
    finished: Finished,
    contours: Site["contours"],
    before: Trailing | null,
  ): Trailing;
  /** Limits found by trying floors, and cost against the floor. */
  limits(site: BuildingSite, standing: Standing, project: Project, words: Words): FloorLimits;
  /** The rest stays as it was. */
  withEarth(earth: TrailingEarth, before: Trailing | null): Trailing;
  /** Water on a lot without a building. */
  bare(ground: Ground, tin: Tin, project: Project): StandingWater;
}

export function trailingStages(stage: StageMaker): TrailingStages {
  const wide = stage(waterLayout);
  const water = stage(standingWater);
  const steady = stage(pondsAtAnyFloor);
  const untouched = stage(bareWater);
  const contoursOf = stage(finishedContours);
  const daylightOf = stage(daylightLines);
  const refinedOf = stage(refinedOutside);
  const flowsOf = stage(swaleFlows);
  const dripsOf = stage(roofDrips);
  const wallsOf = stage(wallCatchments);
  const limitsOf = limitsStage(stage);
  const balanced = stage(
    (
      coarse: Layout,
      curve: VolumeCurve,
      below: number,
      { stripDepth, respread, shrink }: Materials,
      broughtInside: boolean,
      low: number,
      high: number,
    ) =>
      balance({
        coarse,
        curve,
        earthBelowFloor: below,
        topsoil: { stripDepth, respread },
        broughtInside,
        shrink,
        low,
        high,
      }),
  );
  const lines = (site: BuildingSite, finished: Finished, contours: Site["contours"], exact: boolean) => ({
    finishedContours: contoursOf(site.layout, finished, contours),
    daylight: daylightOf(site.layout, finished.floor, exact ? site.ground : null),
  });
  const earth: TrailingStages["earth"] = (site, project, finished, contours) => {
    const refined = refinedOf(finished, site.layout, site.coarse(), site.ground, project.materials);
    return {
      ...lines(site, finished, contours, true),
      outsideError: refined.error,
      outside: refined.finished.outside,
    };
  };
  return {
    earth,
    limits: limitsOf,
    full(site, project, finished, contours, standing, words) {
      const layout = wide(
        site.plan,
        site.ground,
        site.tin,
        project.lot.outline,
        site.reach.bounds,
        site.range,
      );
      const still = water(layout, finished.floor, project.drainage.flow.method);
      const { roof } = project.drainage;
      const drips = still.flow ? dripsOf(site.footprint, roof, still.flow) : null;
      const swales = still.flow
        ? flowsOf(site.plan, standing.swales, still.flow, project.storm, drips ?? none, roof.runoff)
        : null;
      const trailing = {
        ...earth(site, project, finished, contours),
        ...still,
        steadyPonds: steady(layout),
        toWalls: still.flow ? wallsOf(site.footprint, still.flow, layout.cells.inside) : [],
        flows: swales?.flows ?? [],
        limits: limitsOf(site, standing, project, words),
        oneStep: stepsUp(site, standing, project, finished.floor, words),
        balance: balanced(
          site.usual.coarse(),
          site.curve,
          earthBelowFloor(site.building),
          project.materials,
          fillIsBrought(site.building.foundation),
          site.usual.range.low,
          site.usual.range.high,
        ),
      };
      const { flow } = still;
      if (!flow || !swales) return { trailing, found: null };
      const { joining, uphillCells } = swales;
      return { trailing, found: { wide: layout, flow, drips, joining, uphillCells } };
    },
    quick(site, finished, contours, before) {
      return {
        ...(before ?? nothingTrails),
        ...lines(site, finished, contours, false),
        outside: null,
      };
    },
    withEarth: (known, before) => ({ ...(before ?? nothingTrails), ...known }),
    bare: (ground, tin, project) => untouched(ground, tin, project.lot.outline, project.drainage.flow.method),
  };
}

function stepsUp(
  site: BuildingSite,
  standing: Standing,
  project: Project,
  floor: number,
  words: Words,
): OneStep[] {
  const reckoned: Reckoned = { ...project, stumps: stumpsOn(project.lot) };
  const at = (height: number) => partsAt(site, standing, reckoned, height, words, null);
  return oneStepUp(site.layout, { site, project: reckoned, partsAt: at }, floor);
}
