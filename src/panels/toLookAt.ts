/** The one list of what to look at: the rail, its foot, the steps and the export dialog all count this one. */
import type { Project } from "../document";
import type { BandRule, Problem, Results } from "../solve/results";
import type { StepName } from "../store/state";
import { limitOf } from "./limits";
import type { Notation } from "./notation";

/** What a moving floor changes at once; everything else waits for settled results. */
type Moving = Pick<Results, "band" | "drives" | "water">;

/**
 * Problems, limits that the floor breaks, and low places that hold water, each once, the worst first.
 * `problems` are those of settled results, so that the list doesn't flicker under a dragged floor.
 */
export function toLookAt(
  project: Project,
  problems: readonly Problem[],
  results: Moving,
  floor: number | null,
  notation: Notation,
): readonly Problem[] {
  const steep = steepDrives(project, results, notation);
  const all = [
    ...problems.filter((problem) => !isOnlyBeginning(problem) && problem.code !== "drive-piece-steep"),
    ...steep,
    ...brokenLimits(results, floor, notation).filter(
      ({ code }) => code !== "drive-steepestDrive" || steep.length === 0,
    ),
    ...(project.building ? lowPlaces(results, problems, notation) : []),
  ];
  return all.sort((a, b) => severities.indexOf(a.severity) - severities.indexOf(b.severity));
}

export const severities = ["error", "caution", "note"] as const;

/** "3 to look at", the same words wherever the list is counted. */
export function lookWords(count: number): string {
  return count === 0 ? "Nothing to look at" : `${count} to look at`;
}

/** What every plan lacks while it is begun: the sentence above the plan says it, and nothing is wrong. */
export function isOnlyBeginning({ code }: Pick<Problem, "code">): boolean {
  return code === "ground-too-few";
}

function steepDrives(project: Project, { drives }: Moving, notation: Notation): Problem[] {
  const { steepestDrive, off } = project.rules;
  if (off.includes("steepestDrive")) return [];
  return drives
    .filter(({ steepest }) => steepest > steepestDrive + 1e-9)
    .map((drive) => ({
      code: "drive-steep",
      severity: "caution",
      where: drive.name,
      what: `It climbs or falls up to ${notation.slope(drive.steepest)}, more than the ${notation.slope(steepestDrive)} it may.`,
      how: "Lower the floor, lengthen the drive or lead it round, or allow it more in the drive step.",
      at: [...drive.steepestAt],
      ids: [drive.id],
    }));
}

const drivesLimits = ["steepestDrive", "driveDown"];

function brokenLimits({ band }: Moving, floor: number | null, notation: Notation): Problem[] {
  if (floor === null) return [];
  return band.rules.flatMap((rule) => {
    const { state, margin } = limitOf(rule, floor, notation);
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

/** Those away from the building; one beside it is a problem of its own already. */
function lowPlaces({ water }: Moving, problems: readonly Problem[], notation: Notation): Problem[] {
  const told = new Set(
    problems.flatMap(({ code, at }) => (code === "pond-at-wall" && at ? [String(at)] : [])),
  );
  return water.ponds
    .filter(({ at }) => !told.has(String(at)))
    .map((pond) => ({
      code: "pond-away",
      severity: "note",
      where: "a low place",
      what: `Water stands up to ${notation.length(pond.depth)} deep there, over ${notation.area(pond.area)}${pond.guessed ? ", if the guessed ground is right" : ""}.`,
      how: "Fill it or lead its water off where it is in the way.",
      at: [...pond.at],
    }));
}

/** The step in which a problem is mended, by its code. */
export function stepOfProblem({ code }: Pick<Problem, "code">): StepName {
  return stepsOfCodes.find(([pattern]) => pattern.test(code))?.[1] ?? "floor";
}

const stepsOfCodes: readonly (readonly [RegExp, StepName])[] = [
  [/-in-trench$|^(edge|crawl|posts)-|^wall-holds-fill$/, "foundation"],
  [/-over-sill$/, "building"],
  [/^(lot|feature|keep-clear|grading-past|grading-near)/, "lot"],
  [/^(breaklines?|reading|ties?|duplicate|shots?|setup|laser|check|ground|mark|survey)\b/, "shots"],
  [/^(door|outline|building|tapes?|out-of-square|in-setback)\b/, "building"],
  [
    /^(drive|line|landing|vertical-curve|grade-break|retaining|pad|grading-conflict|grading-order)\b/,
    "drive",
  ],
  [/^(apron|swale|pond|wall|water|slopes?|daylight|grading)\b/, "water"],
  [/^(floor|band|rule)\b/, "floor"],
  [/^(trench|footing|frost|foundation|slab|fill)\b/, "foundation"],
  [/^(bill|quantit|truck|earth|strip)/, "quantities"],
  [/^(setout|worksheet)\b/, "setout"],
];
