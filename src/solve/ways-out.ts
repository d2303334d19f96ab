/**
 * Ways out of an empty band: changes of the plan after which some floor keeps every rule that is on.
 *
 * Units   metres.
 * Method  Each change is made by the gap between the two rules that clash; where two others clash then, with a
 *         change for them too, three at most. Or the building is moved step by step in eight directions. Each
 *         plan is solved anew. Only what works is told, its floor set within
 *         the band, as near to the present one as may be; a plan in which a limit that was kept is now kept at no floor
 *         doesn't count. A move is looked for on a coarse grid and then checked
 *         on the full one. Whether a move keeps the setbacks is told by the plan's cautions once it is tried.
 * Source  First principles.
 */

import { chooseFoundation } from "../document/commands/foundation";
import { mostSlabFill } from "../document/foundationMeasures";
import type { Building, Project } from "../document/schema";
import { FOOT, INCH } from "../units";
import { longerDrive } from "./longer-drive";
import { createSolver } from "./pipeline";
import type { BandClash, BandResult, Problem } from "./results";
import type { Solver } from "./solver";
import { toLookAt } from "./to-look-at";
import { type Words, wordsFor } from "./words";

export interface WayOut {
  readonly id: string;
  /** What to change and by how much: "walls 0.310 m taller". */
  readonly what: string;
  /** The plan with it, its floor within the band. */
  readonly project: Project;
  readonly band: BandResult;
  /** What there is to look at with it that wasn't before. */
  readonly brings: readonly Problem[];
  /** How much more the priced items come to; null while nothing is priced. */
  readonly dearer: number | null;
}

interface Change {
  readonly id: string;
  readonly what: string;
  readonly project: Project;
}

/** Changes of one way out, at most: more than that is another plan. */
const mostTogether = 3;

const directions = ["east", "north-east", "north", "north-west", "west", "south-west", "south", "south-east"];
/** How far a building is moved in the search, in the user's unit (m or ft). */
const movesInMetres = [1, 2, 4, 8];
const movesInFeet = [3, 6, 12, 24];

/** The plan that ways out are looked for, and what is worked with on the way. */
interface Search {
  readonly project: Project;
  readonly solver: Solver;
  readonly words: Words;
  /** Limits that no floor keeps already. */
  readonly nowhere: ReadonlySet<string>;
}

/** One found, or null: nothing yet, but a good moment to let others work. */
type Steps<Answer = void> = Generator<WayOut | null, Answer>;

/** The ways that work, the small changes first; none where the band isn't empty or nothing of this helps. */
export function waysOut(project: Project, solver: Solver = createSolver()): WayOut[] {
  return [...waysOutInTurn(project, solver)].filter((way) => way !== null);
}

/** The same one by one, with a stop after each plan that is solved. */
export function* waysOutInTurn(project: Project, solver: Solver = createSolver()): Steps {
  const { building } = project;
  const { clash, rules } = solver.solve(project).band;
  if (!building || !clash) return;
  const search = { project, solver, words: wordsFor(project.display), nowhere: keptNowhere(rules) };
  yield null;
  yield* mended({ id: "", what: "", project }, clash, search, mostTogether);
  yield* moved(building, clash, search);
}

/** Changes for the two rules that clash, each with more of them until there is a band. */
function* mended(start: Change, clash: BandClash, search: Search, left: number): Steps {
  const { building } = start.project;
  const { words, solver } = search;
  if (!building) return;
  const changes = [
    ...foundationChanges(start.project, building, clash, words),
    ...swaleChange(start.project, clash, words),
    ...driveChange(start.project, clash, words),
    ...approvedFill(start.project, building, clash, words),
  ].filter(({ id }) => !start.id.split("+").includes(id));
  for (const change of changes) {
    const next = {
      id: start.id === "" ? change.id : `${start.id}+${change.id}`,
      what: start.what === "" ? change.what : `${start.what}, ${change.what}`,
      project: change.project,
    };
    const way = worked(next, search);
    yield way;
    const other = way ? null : solver.solve(next.project).band.clash;
    if (other && left > 1) yield* mended(next, other, search, left - 1);
  }
}

/** A change whose plan has a band, with the floor moved into it; null where it hasn't. */
function worked(change: Change, { project, solver, words, nowhere }: Search): WayOut | null {
  const { building } = change.project;
  const { band } = solver.solve(change.project);
  if (!building || band.empty || [...keptNowhere(band.rules)].some((id) => !nowhere.has(id))) return null;
  const floor = Math.min(
    Math.max(building.floor, band.low ?? Number.NEGATIVE_INFINITY),
    band.high ?? Number.POSITIVE_INFINITY,
  );
  const settled = { ...change.project, building: { ...building, floor } };
  const [before, after] = [solver.solve(project), solver.solve(settled)];
  const listed = (plan: Project, results: typeof before) =>
    toLookAt(plan, results.problems, results, results.floor, words);
  const known = new Set(listed(project, before).map(({ code, where }) => `${code} ${where}`));
  const priced = Object.keys(project.prices).length > 0;
  return {
    ...change,
    project: settled,
    band,
    brings: listed(settled, after).filter(({ code, where }) => !known.has(`${code} ${where}`)),
    dearer: priced ? after.cost.total - before.cost.total : null,
  };
}

/** Limits that no floor keeps: a way that brings one is none, though the floor isn't what mends it. */
function keptNowhere(rules: BandResult["rules"]): ReadonlySet<string> {
  return new Set(rules.filter(({ on, atAnyFloor }) => on && atAnyFloor === "broken").map(({ id }) => id));
}

function foundationChanges(
  project: Project,
  building: Building,
  clash: BandClash,
  words: Words,
): readonly Change[] {
  const { foundation } = building;
  const more = roundedUp(roomFor(clash, building.floor), project);
  const changed = (id: string, what: string, patch: Partial<Building["foundation"]>): Change => ({
    id,
    what,
    project: { ...project, building: { ...building, foundation: { ...foundation, ...patch } } },
  });
  const deepens = ["intoUndisturbed", "frostCover"].includes(clash.high.id);
  const changes: Change[] = [];
  if (deepens && foundation.kind === "thickened-edge")
    changes.push(
      changed("deeperEdge", `edge ${words.length(more)} deeper`, {
        edge: { ...foundation.edge, depth: foundation.edge.depth + more },
      }),
    );
  if (deepens && (foundation.kind === "stem-wall" || foundation.kind === "crawl-space")) {
    changes.push(
      changed("tallerWall", `walls ${words.length(more)} taller`, {
        wallHeight: foundation.wallHeight + more,
      }),
      changed("steppedFooting", "a footing that steps down with the ground", {
        steps: { ...foundation.steps, on: true },
      }),
    );
  }
  if (clash.high.id === "fillUnderSlab" && foundation.slabFill.kind === "earth")
    changes.push(
      changed("sandOrGravel", "clean sand or gravel under the slab, not earth", {
        slabFill: { ...foundation.slabFill, kind: "sand-gravel" },
      }),
    );
  if (clash.high.id === "fillUnderSlab") {
    const crawl = chooseFoundation.run(project, { kind: "crawl-space" });
    if (crawl.ok)
      changes.push({ id: "crawlSpace", what: "a crawl space, no slab on fill", project: crawl.project });
  }
  return changes;
}

/** All swales lower by the gap. */
function swaleChange(project: Project, clash: BandClash, words: Words): readonly Change[] {
  if (clash.low.id !== "swaleBelowWall") return [];
  const more = roundedUp(clash.gap, project);
  const swales = project.grading.swales.map((swale) => ({
    ...swale,
    depth: swale.depth + more,
    beds: swale.beds.map((bed) => ({ ...bed, height: bed.height - more })),
  }));
  const what = `${swales.length === 1 ? "swale" : "swales"} ${words.length(more)} lower`;
  return [{ id: "lowerSwale", what, project: { ...project, grading: { ...project.grading, swales } } }];
}

/** The drive that is too steep, led over a longer way. */
function driveChange(project: Project, clash: BandClash, words: Words): readonly Change[] {
  const steep = [clash.high, clash.low].find(({ id }) => driveRules.includes(id));
  if (!steep) return [];
  const [x, y] = steep.at ?? [Number.NaN, Number.NaN];
  const { drives } = project.grading;
  const drive = drives.find(({ line: [road] }) => road && road[0] === x && road[1] === y);
  // The landing's own fall counts for a break at its edge; half a metre more leaves room for rounding.
  const grade = steep.value + (steep.id === "landing" && drive ? drive.landing.fall : 0);
  const more = drive && grade > 0 ? clash.gap / grade + 0.5 : 0;
  const longer = drive && longerDrive(project, drive, more);
  if (!longer) return [];
  const grading = {
    ...project.grading,
    drives: drives.map((each) => (each.id === longer.id ? longer : each)),
  };
  return [
    {
      id: "longerDrive",
      what: `${drive.name} ${words.length(more)} longer, round a bend`,
      project: { ...project, grading },
    },
  ];
}

const driveRules = ["steepestDrive", "driveDown", "landing", "landingDown"];

/** More fill under the slab than is published, where somebody answers for it. */
function approvedFill(
  project: Project,
  building: Building,
  clash: BandClash,
  words: Words,
): readonly Change[] {
  if (clash.high.id !== "fillUnderSlab") return [];
  const { foundation } = building;
  const most = mostSlabFill(foundation) + roundedUp(roomFor(clash, building.floor), project);
  const slabFill = { ...foundation.slabFill, approved: most };
  return [
    {
      id: "approvedFill",
      what: `up to ${words.length(most)} of fill under the slab, specified and tested as an engineer or the building office asks`,
      project: { ...project, building: { ...building, foundation: { ...foundation, slabFill } } },
    },
  ];
}

/** The shortest move that gives a band; of equal ones the one with the widest. */
function* moved(building: Building, clash: BandClash, search: Search): Steps {
  const { project, solver, words } = search;
  if (!clash.low.at && !clash.high.at) return;
  const feet = isInFeet(project);
  for (const step of feet ? movesInFeet : movesInMetres) {
    const by = feet ? step * FOOT : step;
    const tried: { readonly change: Change; readonly room: number }[] = [];
    for (const [k, direction] of directions.entries()) {
      const change = movedBy(project, building, by, (k * Math.PI) / 4, direction, words);
      tried.push({ change, room: room(solver.solve(change.project, { detail: "drag" }).band) });
      yield null;
    }
    for (const { change } of tried.filter((each) => each.room > 0).sort((a, b) => b.room - a.room)) {
      const way = worked(change, search);
      yield way;
      if (way) return;
    }
  }
}

function movedBy(
  project: Project,
  building: Building,
  by: number,
  angle: number,
  direction: string,
  words: Words,
): Change {
  const [dx, dy] = [by * Math.cos(angle), by * Math.sin(angle)];
  const outline = building.outline.map(([x, y]): [number, number] => [x + dx, y + dy]);
  return {
    id: "move",
    what: `building moved ${words.length(by)} to the plan's ${direction}`,
    project: { ...project, building: { ...building, outline } },
  };
}

/** Width of a band, m; infinite where one side is open, 0 where it is empty. */
function room({ low, high, empty }: BandResult): number {
  if (empty) return 0;
  return low === null || high === null ? Number.POSITIVE_INFINITY : Math.max(high - low, 1e-9);
}

/** By how much the upper limit must rise: so that the present floor may stay where the lower limit allows it. */
function roomFor({ lowest, highest, gap }: BandClash, floor: number): number {
  return floor >= lowest ? Math.max(gap, floor - highest) : gap;
}

/** Up to a whole inch, or a whole centimetre: nobody forms a wall to the millimetre. */
function roundedUp(m: number, project: Project): number {
  const unit = isInFeet(project) ? INCH : 0.01;
  return Math.ceil(m / unit - 1e-9) * unit;
}

function isInFeet({ display }: Project): boolean {
  return ["ft-in", "in", "ft"].includes(display.length);
}
