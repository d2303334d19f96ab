/**
 * Options side by side: each kept option solved as if it were the plan, and told in the figures by which
 * people choose.
 *
 * Units  metres, whole loads, slopes rise over run.
 */
import type { Option, Project } from "../document/schema";
import { cornerName } from "../grading";
import { type AboutFigure, numberPaths } from "./about";
import { limitBroken } from "./limit-broken";
import { loadsOf } from "./load-words";
import type { FoundationHeights, Results, WallElevation } from "./results";
import type { Solver } from "./solver";
import { swaleVerdict } from "./swale-verdict";

/** What one way to do the job comes to. */
export interface OptionFigures {
  /** Null: the plan as it is now. */
  readonly id: string | null;
  readonly name: string;
  readonly floor: number | null;
  /** Earth between the ground as it is and the finished ground, m3. */
  readonly cut: number | null;
  readonly fill: number | null;
  /** Whole loads on the user's truck, from the bill. */
  readonly fillLoads: number | null;
  readonly cutLoads: number | null;
  /** The same in words: "12 loads", "less than one load", "none". */
  readonly fillLoadsTold: string | null;
  readonly cutLoadsTold: string | null;
  /** What the priced items of the bill come to; null while none is priced. */
  readonly cost: number | null;
  /** Deepest fill under the floor, m. */
  readonly deepestFill: number | null;
  /** Most wall that shows above the finished ground. */
  readonly mostShowing: AtWall | null;
  /** The floor above the ground as it is, where that lies lowest along the walls; negative: it lies higher all round. */
  readonly floorAboveGround: AtWall | null;
  /** Steepest grade of any drive and the drive's name; null without a drive. */
  readonly steepestDrive: { readonly grade: number; readonly name: string } | null;
  /** Walls that water doesn't leave, of how many. */
  readonly wetWalls: number;
  readonly walls: number;
  readonly ponds: number;
  readonly swales: number;
  /** Names of the swales that don't drain as they should. */
  readonly stuckSwales: readonly string[];
  /** Name of a limit that the floor breaks; null where it keeps them all. */
  readonly breaks: string | null;
  /** Errors and cautions that solving it tells. */
  readonly warnings: number;
}

/** A height and where it is: "A", "wall A-B". */
export interface AtWall {
  readonly m: number;
  readonly at: string;
}

/** One option with its project and results, for views that draw it. */
export interface SolvedOption {
  readonly figures: OptionFigures;
  readonly project: Project;
  readonly results: Results;
}

/** The plan as it would be with an option taken. */
export function withOption(project: Project, { building, grading }: Option): Project {
  return { ...project, building, grading };
}

/** True where the plan's building and grading are just those of the option. */
export function isTaken(project: Project, { building, grading }: Option): boolean {
  return sameData(project.building, building) && sameData(project.grading, grading);
}

/** Plain data compares by its text: fields stand in one order, the schema's. */
function sameData(one: unknown, other: unknown): boolean {
  return one === other || JSON.stringify(one) === JSON.stringify(other);
}

/** Solves one option; the solver remembers what options share (the survey and the ground). */
export function solveOption(solver: Solver, project: Project, option: Option): SolvedOption {
  const as = withOption(project, option);
  return solvedOption(option, as, solver.solve(as));
}

/** An option with the plan as it would be and what that comes to. */
export function solvedOption({ id, name }: Option, project: Project, results: Results): SolvedOption {
  return { figures: optionFigures(id, name, project, results), project, results };
}

/** The figures of a plan by which options are compared. */
export function optionFigures(
  id: string | null,
  name: string,
  project: Project,
  results: Results,
): OptionFigures {
  const { earthwork, drives, water, problems } = results;
  const loads = (item: string) => results.bill.find((line) => line.id === item)?.quantity ?? null;
  const told = (kind: "fill" | "cut") =>
    loads(`${kind}-loads`) === null ? null : (loadsOf(kind, results.bill, project.truck) ?? "none");
  return {
    id,
    name,
    floor: results.floor,
    cut: earthwork?.total.cut ?? null,
    fill: earthwork?.total.fill ?? null,
    fillLoads: loads("fill-loads"),
    cutLoads: loads("cut-loads"),
    fillLoadsTold: told("fill"),
    cutLoadsTold: told("cut"),
    cost: results.bill.some(({ price }) => price !== null) ? results.cost.total : null,
    deepestFill: earthwork?.inside.greatestFill ?? null,
    mostShowing: alongWalls(results, ({ topOfWall }, { finished }, i) => topOfWall - (finished[i] as number)),
    floorAboveGround: alongWalls(results, ({ floor }, { existing }, i) => floor - (existing[i] as number)),
    steepestDrive: greatest(drives, ({ steepest: grade, name: drive }) => ({ grade, name: drive }), byGrade),
    wetWalls: water.walls.filter(({ passes }) => !passes).length,
    walls: water.walls.length,
    ponds: water.ponds.length,
    swales: water.swales.length,
    stuckSwales: water.swales
      .filter((swale) => swaleVerdict(swale, project.rules.leastSwaleFall) !== "drains")
      .map((swale) => swale.name),
    breaks: limitBroken(results),
    warnings: problems.filter(({ severity }) => severity !== "note").length,
  };
}

/** A corner has it where it is no less there than farther along, m. */
const alike = 1e-6;

/** The greatest of what is measured along the walls, at a corner where that comes to as much. */
function alongWalls(
  { foundation }: Results,
  measured: (heights: FoundationHeights, wall: WallElevation, station: number) => number,
): AtWall | null {
  if (!foundation) return null;
  const at = (wall: WallElevation, i: number) => measured(foundation.heights, wall, i);
  const corners = foundation.walls.map((wall, i): AtWall => ({ m: at(wall, 0), at: cornerName(i) }));
  const walls = foundation.walls.map(
    (wall): AtWall => ({
      m: wall.distance.reduce((most, _, i) => Math.max(most, at(wall, i)), Number.NEGATIVE_INFINITY),
      at: `wall ${wall.name}`,
    }),
  );
  const [corner, along] = [greatest(corners, same, byHeight), greatest(walls, same, byHeight)];
  return corner && along && along.m - corner.m > alike ? along : corner;
}

/** Unit and rule of each figure by which options are compared. */
const rules: readonly (readonly [keyof OptionFigures, AboutFigure["unit"], string])[] = [
  ["floor", "m", "height of the floor"],
  ["cut", "m3", "ground as it is − finished ground, where that is lower, in the bank"],
  ["fill", "m3", "finished ground − ground as it is, where that is higher, as compacted"],
  ["fillLoads", "loads", "fill to bring, by the bill, rounded up"],
  ["cutLoads", "loads", "cut to take away, by the bill, rounded up"],
  ["cost", "money", "sum of the bill's items that have a price"],
  ["deepestFill", "m", "underside of the base under the floor − lowest ground inside the walls"],
  ["mostShowing", "m", "top of wall − finished ground, at its most along the walls"],
  ["floorAboveGround", "m", "floor − ground as it is, at its most along the walls; negative: under it"],
  ["steepestDrive", "rise over run", "steepest piece of any drive"],
  ["wetWalls", "count", "sides from which water doesn't leave"],
  ["walls", "count", "sides of the building"],
  ["swales", "count", "swales of the plan"],
  ["ponds", "count", "low places that hold water"],
  ["warnings", "count", "errors and cautions among the messages"],
];

/** About every number of figures set side by side: its path, as in what `solve` tells, with unit and rule. */
export function unitsOfOptions(figures: object): Record<string, Pick<AboutFigure, "unit" | "rule">> {
  return Object.fromEntries(
    numberPaths(figures).flatMap((path) => {
      const of = rules.find(([name]) => path.split(".")[1] === name);
      return of ? [[path, { unit: of[1], rule: of[2] }]] : [];
    }),
  );
}

const same = (one: AtWall) => one;
const byHeight = ({ m }: { m: number }) => m;
const byGrade = ({ grade }: { grade: number }) => grade;

function greatest<From, To>(
  list: readonly From[],
  told: (item: From) => To,
  by: (item: To) => number,
): To | null {
  let most: To | null = null;
  for (const item of list.map(told)) if (most === null || by(item) > by(most)) most = item;
  return most;
}
