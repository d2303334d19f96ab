/** The one list of what to look at: the rail, its foot, the steps, the export dialog and the sheets all tell this one. */
import type { Point, Project } from "../document/schema";
import { distance } from "../geometry";
import { compass } from "../units";
import { limitOf } from "./limit-standing";
import { oncePer } from "./once-per";
import type { BandRule, CornerResult, Problem, Results } from "./results";
import { type Words, wordsFor } from "./words";

/** What a moving floor changes at once; everything else waits for settled results. */
type Moving = Pick<Results, "band" | "drives" | "water" | "corners">;

/** What to look at in two lists, each the worst first: a floor under the hand makes only the second anew. */
export interface ToLookAt {
  /** Of settled results; a cloud of points may have a problem for each shot. */
  readonly settled: readonly Problem[];
  /** What follows the floor: limits that it breaks, drives too steep, low places that hold water. */
  readonly moving: readonly Problem[];
}

/**
 * Problems, limits that the floor breaks, and low places that hold water, each once.
 * `problems` are those of settled results, so that the list doesn't flicker under a dragged floor.
 */
export function lookedAt(
  project: Project,
  problems: readonly Problem[],
  results: Moving,
  floor: number | null,
  words: Words,
): ToLookAt {
  const steep = steepDrives(project, results, words);
  const moving = [
    ...steep,
    ...brokenLimits(results, floor, words).filter(
      ({ code }) => code !== "drive-steepestDrive" || steep.length === 0,
    ),
    ...(project.building ? lowPlaces(project, results, problems, words) : []),
  ];
  return { settled: settledToLookAt(problems), moving: worstFirst(moving) };
}

const settledToLookAt = oncePer((problems: readonly Problem[]) =>
  worstFirst(problems.filter((problem) => !isOnlyBeginning(problem) && problem.code !== "drive-piece-steep")),
);

/** The whole list, the worst first. */
export function inOneList({ settled, moving }: ToLookAt): readonly Problem[] {
  return worstFirst([...settled, ...moving]);
}

/** The worse of two; of two as bad the first. */
export function worseOf(a: Problem | null, b: Problem | null): Problem | null {
  if (a === null || b === null) return a ?? b;
  return severities.indexOf(b.severity) < severities.indexOf(a.severity) ? b : a;
}

/** As `lookedAt`, in one list. */
export function toLookAt(...given: Parameters<typeof lookedAt>): readonly Problem[] {
  return inOneList(lookedAt(...given));
}

/** The list as window and sheets show it, and what every plan lacks while it is begun: what commands tell. */
export function allFound(project: Project, results: Results): readonly Problem[] {
  const listed = toLookAt(project, results.problems, results, results.floor, wordsFor(project.display));
  return [...results.problems.filter(isOnlyBeginning), ...listed];
}

export const severities = ["error", "caution", "note"] as const;

function worstFirst(problems: readonly Problem[]): readonly Problem[] {
  return severities.flatMap((severity) => problems.filter((problem) => problem.severity === severity));
}

/** "3 to look at", the same words wherever the list is counted. */
export function lookWords(count: number): string {
  return count === 0 ? "Nothing to look at" : `${count} to look at`;
}

/** What every plan lacks while it is begun: the sentence above the plan says it, and nothing is wrong. */
export function isOnlyBeginning({ code }: Pick<Problem, "code">): boolean {
  return code === "ground-too-few";
}

function steepDrives(project: Project, { drives }: Moving, words: Words): Problem[] {
  const { steepestDrive, off } = project.rules;
  if (off.includes("steepestDrive")) return [];
  return drives
    .filter(({ steepest }) => steepest > steepestDrive + 1e-9)
    .map((drive) => ({
      code: "drive-steep",
      severity: "caution",
      where: drive.name,
      what: `It climbs or falls up to ${words.slope(drive.steepest)}, more than the ${words.slope(steepestDrive)} it may.`,
      how: "Lower the floor, lengthen the drive or lead it round, or allow it more in the drive step.",
      at: [...drive.steepestAt],
      ids: [drive.id],
    }));
}

const drivesLimits = ["steepestDrive", "driveDown"];

function brokenLimits({ band }: Moving, floor: number | null, words: Words): Problem[] {
  if (floor === null) return [];
  return band.rules.flatMap((rule) => {
    const { state, margin } = limitOf(rule, floor, words);
    if (state === "aside") return [keptNowhere(rule)];
    return state === "broken" ? [brokenLimit(rule, margin)] : [];
  });
}

function brokenLimit(rule: BandRule, margin: string): Problem {
  return {
    code: `${drivesLimits.includes(rule.id) ? "drive" : "floor"}-${rule.id}`,
    severity: "caution",
    where: "the floor",
    what: `It stands ${margin} for “${rule.name}”${rule.place ? ` (${rule.place})` : ""}.`,
    how: `Source: ${rule.source}.`,
    ...(rule.at ? { at: rule.at } : {}),
  };
}

/** A limit that the floor can't mend: what stands in the way is in its place. */
function keptNowhere(rule: BandRule): Problem {
  return {
    code: `floor-${rule.id}`,
    severity: "caution",
    where: "the floor",
    what: `No floor keeps “${rule.name}”: ${rule.place}.`,
    how: `Source: ${rule.source}.`,
    ...(rule.at ? { at: rule.at } : {}),
  };
}

const pondsAtWalls = oncePer(
  (problems: readonly Problem[]) =>
    new Set(problems.flatMap(({ code, at }) => (code === "pond-at-wall" && at ? [String(at)] : []))),
);

/** Those away from the building; one beside it is a problem of its own already. */
function lowPlaces(
  { lot }: Project,
  { water, corners }: Moving,
  problems: readonly Problem[],
  words: Words,
): Problem[] {
  const told = pondsAtWalls(problems);
  const placeOf = (at: Point) => {
    const place = placeFromCorner(at, corners, lot.north, words);
    return place ? `, ${place}` : " there";
  };
  return water.ponds
    .filter(({ at }) => !told.has(String(at)))
    .map((pond) => ({
      code: "pond-away",
      severity: "note",
      where: "a low place",
      what: `Water stands up to ${words.length(pond.depth)} deep${placeOf(pond.at)}, over ${words.area(pond.area)}${pond.guessed ? ", if the guessed ground is right" : ""}.`,
      how: "Fill it or lead its water off where it is in the way.",
      at: [...pond.at],
    }));
}

/** "14′ 6″ south-west of corner D": from the nearest corner; null where there is no building. */
export function placeFromCorner(
  at: Point,
  corners: readonly Pick<CornerResult, "name" | "x" | "y">[],
  north: number,
  { length }: Pick<Words, "length">,
): string | null {
  const away = ({ x, y }: { x: number; y: number }) => distance([x, y], at);
  const [nearest] = [...corners].sort((a, b) => away(a) - away(b));
  if (!nearest) return null;
  const wind = compass([at[0] - nearest.x, at[1] - nearest.y], north);
  return `${length(away(nearest))} ${wind} of corner ${nearest.name}`;
}
