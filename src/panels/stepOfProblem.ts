import type { Problem } from "../solve/results";
import type { StepName } from "../store/state";

/** The step in which a problem is mended, by its code. */
export function stepOfProblem({ code }: Pick<Problem, "code">): StepName {
  const known = found.get(code);
  if (known) return known;
  const step = stepsOfCodes.find(([pattern]) => pattern.test(code))?.[1] ?? "floor";
  found.set(code, step);
  return step;
}

/** There are some hundred codes, and a cloud of points may have a problem for each shot. */
const found = new Map<string, StepName>();

const stepsOfCodes: readonly (readonly [RegExp, StepName])[] = [
  [/-in-trench$|^(edge|crawl|posts)-|^wall-holds-fill$/, "foundation"],
  [/-over-sill$/, "building"],
  // Beside the apron, where the height of wall that shows is typed.
  [/^grading-corner-step$/, "water"],
  [/^(lot|course|setback|feature|keep-clear|grading-past|grading-near)/, "lot"],
  [/^(breaklines?|stakes|reading|ties?|duplicate|shots?|setup|laser|check|ground|mark|survey)\b/, "shots"],
  [/^(door|outline|building|tapes?|out-of-square|in-setback)\b/, "building"],
  [
    /^(drive|line|berm|landing|vertical-curve|grade-break|retaining|pad|grading-conflict|grading-order|grade-point)\b/,
    "drive",
  ],
  [/^(apron|swale|pond|pipe|roof|wall|water|slopes?|daylight|grading)\b/, "water"],
  [/^(floor|band|rule)\b/, "floor"],
  [/^(trench|footing|frost|foundation|slab|fill|pit)\b/, "foundation"],
  [/^(bill|quantit|truck|earth|strip)/, "quantities"],
  [/^(setout|worksheet)\b/, "setout"],
];
