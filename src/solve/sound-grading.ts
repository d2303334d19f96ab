/** The grading as figures may lean on it: a piece without sense (a drive of one point) is kept in the plan, told, and counts in nothing. */
import { type Apron, apronSchema, type Grading, type Project, slopesSchema } from "../document/schema";
import {
  type GradingList,
  type GradingPiece,
  gradingLists,
  type PieceFault,
  pieceFault,
} from "../document/setAside";
import type { Point } from "../geometry";
import type { StageMaker } from "./memo";
import { oncePer } from "./once-per";
import type { Problem } from "./results";

export interface SoundGrading {
  readonly project: Project;
  readonly problems: readonly Problem[];
}

export function soundGradingStage(stage: StageMaker): (project: Project) => SoundGrading {
  const checked = stage(soundParts);
  return stage((project: Project): SoundGrading => {
    const { grading, problems } = checked(project.grading);
    return problems.length === 0 ? { project, problems } : { project: { ...project, grading }, problems };
  });
}

interface Parts {
  readonly grading: Grading;
  readonly problems: readonly Problem[];
}

function soundParts(grading: Grading): Parts {
  const problems: Problem[] = [];
  const slopes = soundSlopes(grading.slopes, problems);
  const apron = soundApron(grading.apron, problems);
  const kept = {
    drives: sound("drives", grading.drives, problems),
    swales: sound("swales", grading.swales, problems),
    pads: sound("pads", grading.pads, problems),
    berms: sound("berms", grading.berms, problems),
    walls: sound("walls", grading.walls, problems),
    points: sound("points", grading.points, problems),
  };
  if (problems.length === 0) return { grading, problems };
  return { grading: { ...grading, ...kept, slopes, apron }, problems };
}

/** A piece never changes, so it is looked at once; a list's kind is the piece's own. */
const faults = Object.fromEntries(
  Object.keys(gradingLists).map((list) => [
    list,
    oncePer((piece: GradingPiece) => pieceFault(list as GradingList, piece)),
  ]),
) as Record<GradingList, (piece: GradingPiece) => PieceFault | null>;

function sound<Piece extends GradingPiece>(list: GradingList, pieces: Piece[], problems: Problem[]): Piece[] {
  return pieces.filter((piece) => {
    const fault = faults[list](piece);
    if (fault) problems.push(asideProblem(list, piece, fault));
    return fault === null;
  });
}

function asideProblem(list: GradingList, piece: GradingPiece, fault: PieceFault): Problem {
  const { word } = gradingLists[list];
  const at = firstPlace(piece);
  return {
    code: `${word.replaceAll(" ", "-")}-set-aside`,
    severity: "error",
    where: piece.name.trim() || word,
    what: `${faultInWords(word, fault)} It is kept as it was typed, and counts in no figure.`,
    how: mendOf(word, fault),
    ...(at ? { at: [...at] as [number, number] } : {}),
    ids: [piece.id],
  };
}

function firstPlace(piece: GradingPiece): Point | undefined {
  if ("at" in piece) return piece.at;
  return "line" in piece ? piece.line[0] : piece.outline[0];
}

const counts = ["no point", "one point", "two points", "three points"];

function faultInWords(word: string, fault: PieceFault): string {
  if (fault.why === "too-few-points")
    return `It has ${counts[fault.found] ?? fault.found}, where a ${word} needs ${counts[fault.needed] ?? fault.needed} at least.`;
  if (fault.why === "no-run") return `Its ${spaced(fault.field)} says ${fault.found} : 1.`;
  return `Its ${spaced(fault.field)} says ${fault.found}, and should be ${fault.orIt ? "at least" : "more than"} ${fault.least}.`;
}

function mendOf(word: string, fault: PieceFault): string {
  if (fault.why === "too-few-points") return `Draw the ${word} again, and take this one out.`;
  return fault.why === "no-run" ? typeRun : "Type it again.";
}

const typeRun =
  "Type how far it runs for one of rise: 3 means 3 : 1. For an upright face draw a retaining wall.";

const spaced = (field: string) => field.replace(/([A-Z])/g, (capital) => ` ${capital.toLowerCase()}`);

function soundSlopes(slopes: Grading["slopes"], problems: Problem[]): Grading["slopes"] {
  const usual = slopesSchema.parse({});
  const held = { ...slopes };
  for (const kind of ["fill", "cut"] as const) {
    if (slopes[kind] > 0) continue;
    held[kind] = usual[kind];
    problems.push({
      code: "slopes-without-sense",
      severity: "error",
      where: "the side slopes",
      what: `The ${kind} slope says ${slopes[kind]} : 1. Until it is mended ${usual[kind]} : 1 is reckoned with.`,
      how: typeRun,
    });
  }
  return held;
}

function soundApron(apron: Apron, problems: Problem[]): Apron {
  const usual = apronSchema.parse({});
  const held = { ...apron, sides: apron.sides.map((side) => soundSide(side, problems)) };
  for (const figure of ["showing", "fall", "width"] as const) {
    if (isSound(figure, apron[figure])) continue;
    held[figure] = usual[figure];
    problems.push({
      code: "apron-without-sense",
      severity: "error",
      where: "the apron",
      what: `Its ${figureWords[figure]} says ${apronText(figure, apron[figure])}. Until it is mended the usual one is reckoned with.`,
      how: mendOfApron[figure],
    });
  }
  return held;
}

/** Wall may show by nothing at all. */
function isSound(figure: "showing" | "fall" | "width", value: number): boolean {
  return figure === "width" ? value > 0 : value >= 0;
}

/** As the file has it, with its unit. */
function apronText(figure: "showing" | "fall" | "width", value: number): string {
  return figure === "fall" ? `${Number((100 * value).toPrecision(6))} %` : `${value} m`;
}

const figureWords = {
  showing: "wall left showing",
  fall: "fall away from the wall",
  width: "width",
} as const;

const mendOfApron = {
  showing: "Type how much wall is to show, 0 or more.",
  fall: "Type how much it falls away from the wall: 5 % is usual.",
  width: "Type how far out from the wall it reaches.",
} as const;

function soundSide(side: Grading["apron"]["sides"][number], problems: Problem[]): typeof side {
  const held = { ...side };
  for (const kind of ["fill", "cut"] as const) {
    const run = side[kind];
    if (run === null || run > 0) continue;
    held[kind] = null;
    problems.push({
      code: "slopes-without-sense",
      severity: "error",
      where: `the side slopes of side ${side.wall + 1}`,
      what: `The ${kind} slope says ${run} : 1. Until it is mended that of all sides is reckoned with.`,
      how: typeRun,
    });
  }
  for (const figure of ["showing", "fall", "width"] as const) {
    const value = side[figure];
    if (value === null || isSound(figure, value)) continue;
    held[figure] = null;
    problems.push({
      code: "apron-without-sense",
      severity: "error",
      where: `the apron of side ${side.wall + 1}`,
      what: `Its ${figureWords[figure]} says ${apronText(figure, value)}. Until it is mended that of all sides is reckoned with.`,
      how: mendOfApron[figure],
    });
  }
  return held;
}
