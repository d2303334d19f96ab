/**
 * Results as plain JSON for scripts: metres, square metres, cubic metres; slopes rise over run.
 *
 * `about` tells of every figure its unit, its rule and how much of it rests on guessed ground (`about/`).
 * Numbers that don't exist are null, never NaN; grids and triangulations are left out. Names that scripts may
 * rely on stand here and nowhere else.
 */
import { earthBelowFloor } from "../document/foundationMeasures";
import type { Project } from "../document/schema";
import { figureSource, soilOf } from "../document/soils";
import { cubicCurve } from "../earthwork";
import { ringsSelfCross, signedArea } from "../geometry";
import { aboveMark } from "../survey";
import { aboutFigures } from "./about";
import type { BandRule, Contour, Results } from "./results";
import { standardSections } from "./standard-sections";
import { allFound } from "./to-look-at";

export function resultsToJson(results: Results, project: Project): Record<string, unknown> {
  const figures = plain(figuresOf(results, project)) as Record<string, unknown>;
  return { ...figures, about: aboutFigures(figures, results) };
}

function figuresOf(results: Results, project: Project): Record<string, unknown> {
  return {
    name: project.name,
    floor: results.floor,
    topOfWall: results.topOfWall,
    points: results.survey.points.map(({ shot, name, kind, at, height, shift, sigma, waiting }) => ({
      shot,
      name,
      kind,
      x: at?.[0] ?? null,
      y: at?.[1] ?? null,
      height,
      aboveMark: aboveMark(height, project.survey.marks),
      shift,
      sigma: sigma ?? null,
      waiting: waiting ?? false,
    })),
    setups: results.survey.setups,
    closings: results.survey.closings,
    plot: results.plot,
    pits: results.pits,
    corners: results.corners,
    earthwork: results.earthwork,
    curve: results.curve,
    curveInside: curveInsideToJson(results, project),
    sensitivity: results.oneStep,
    balance: results.balance,
    guessed: results.guessed,
    trench: results.trench,
    foundation: foundationToJson(results.foundation),
    setout: results.setout,
    drives: results.drives,
    grading: results.grading,
    water: {
      ...withoutFlow(results.water),
      gathered: results.water.gathered.map(({ line, area }) => ({ area, line: pairs(line) })),
      bareEarth: bareEarthToJson(results.water.bareEarth),
      ponds: results.water.ponds.map(({ rings, ...pond }) => ({ ...pond, rings: rings.map(pairs) })),
    },
    band: bandToJson(results.band),
    bill: results.bill,
    materials: materialsToJson(project),
    cost: results.cost,
    costs: results.costs,
    ground: groundToJson(results),
    daylight: results.daylight.map(pairs),
    contours: {
      interval: results.contourInterval,
      existing: results.existingContours.map(contourToJson),
      finished: results.finishedContours.map(contourToJson),
    },
    section: results.section && {
      start: results.section.start,
      end: results.section.end,
      building: results.section.building,
      existing: pairs(results.section.existing),
      finished: pairs(results.section.finished),
    },
    sections: standardSections(project, results),
    problems: allFound(project, results),
  };
}

/** What a band's rule counts in. */
const ruleUnits: Readonly<Record<string, string>> = {
  driveDown: "rise over run",
  steepestDrive: "rise over run",
  landingDown: "rise over run",
  landing: "rise over run",
  costLimit: "money",
};

function withUnit<T extends BandRule | null>(rule: T) {
  return rule && { ...rule, unit: ruleUnits[rule.id] ?? "m" };
}

function bandToJson({ rules, lowRule, highRule, clash, ...band }: Results["band"]) {
  return {
    ...band,
    lowRule: withUnit(lowRule),
    highRule: withUnit(highRule),
    clash: clash && { ...clash, low: withUnit(clash.low), high: withUnit(clash.high) },
    rules: rules.map(withUnit),
  };
}

/** The volume under the floor against its height, written out: knots and coefficients, told by the floor. */
function curveInsideToJson({ ground }: Results, { building }: Project) {
  if (!ground || !building || ringsSelfCross(building.outline)) return null;
  const below = earthBelowFloor(building);
  const up = (height: number | null) => (height === null ? null : height + below);
  return {
    area: Math.abs(signedArea(building.outline)),
    earthBelowFloor: below,
    pieces: cubicCurve(ground, building.outline).map(({ from, to, zero, fill, cut }) => ({
      from: up(from),
      to: up(to),
      zero: zero + below,
      fill,
      cut,
    })),
  };
}

/** The soil's and the stone's figures that the bill counts with, and where each comes from. */
function materialsToJson({ materials }: Project) {
  const { swell, shrink, stoneLoose, weights } = materials;
  const from = (figure: Parameters<typeof figureSource>[1]) => figureSource(materials, figure);
  return {
    soil: soilOf(materials)?.name ?? null,
    swell: { value: swell, source: from("swell") },
    shrink: { value: shrink, source: from("shrink") },
    stoneLoose: { value: stoneLoose, source: from("stoneLoose") },
    earthWeight: { value: weights.earth, source: from("weight") },
    topsoilWeight: { value: weights.topsoil, source: from("topsoil") },
    stoneWeight: { value: weights.stone, source: from("stone") },
  };
}

/** The flow of every cell is for views; what it comes to stands beside it. */
function withoutFlow({ flow, ...water }: Results["water"]) {
  return water;
}

function bareEarthToJson(bare: Results["water"]["bareEarth"]) {
  return (
    bare && {
      ...bare,
      slopes: bare.slopes.map(({ rings, ...slope }) => ({ ...slope, rings: rings.map(pairs) })),
      barrier: bare.barrier.map(pairs),
    }
  );
}

function groundToJson({ ground, surface }: Results) {
  if (!ground) return null;
  return {
    points: ground.measuredPoints,
    triangles: ground.guessed.reduce((sum, guessed) => sum + (guessed ? 0 : 1), 0),
    hull: pairs(ground.hull),
    grid: surface?.grid,
    greatestFill: surface?.greatestFill ?? null,
    greatestCut: surface?.greatestCut ?? null,
  };
}

/** Lists of stations as plain lists. */
function foundationToJson(foundation: Results["foundation"]) {
  if (!foundation) return null;
  return { ...foundation, walls: foundation.walls.map((wall) => listed(wall)) };
}

function listed(wall: object): Record<string, unknown> {
  return Object.fromEntries(
    Object.entries(wall).map(([key, value]) => [
      key,
      ArrayBuffer.isView(value) ? [...(value as Float64Array)] : value,
    ]),
  );
}

function contourToJson({ height, major, lines }: Contour) {
  return { height, major, lines: lines.map(pairs) };
}

function pairs(flat: Float64Array): [number, number][] {
  const points: [number, number][] = [];
  for (let i = 0; i + 1 < flat.length; i += 2) points.push([flat[i] as number, flat[i + 1] as number]);
  return points;
}

/** The same with null for every number that isn't one. */
function plain(value: unknown): unknown {
  if (typeof value === "number") return Number.isFinite(value) ? value : null;
  if (Array.isArray(value)) return value.map(plain);
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, item]) => [key, plain(item)]));
}
