/** The steps of the job: how far each has come, in a word and a figure. */

import type { Project } from "../document";
import { lotLines } from "../plot";
import { outsideBand } from "../solve/floor-standing";
import { oncePer } from "../solve/once-per";
import type { Problem, Results } from "../solve/results";
import { swaleVerdict } from "../solve/swale-verdict";
import { type ToLookAt, worseOf } from "../solve/to-look-at";
import { type StepName, stepNames } from "../store/state";
import { FOOT } from "../units";
import type { Notation } from "./notation";
import { stepOfProblem } from "./stepOfProblem";

export type StepState = "empty" | "work" | "complete" | "attention";

export interface Step {
  readonly name: StepName;
  readonly title: string;
  readonly state: StepState;
  /** Short figure beside the title: "17", "32×24", "11.1 %". */
  readonly figure: string;
  /** Its share of the list of what to look at. */
  readonly toLookAt: number;
  /** What the state means here, for the tooltip and for people who listen. */
  readonly words: string;
}

export const stepTitles: Readonly<Record<StepName, string>> = {
  lot: "Lot",
  shots: "Shots",
  building: "Building",
  drive: "Drive",
  water: "Water",
  floor: "Floor",
  foundation: "Foundation",
  quantities: "Quantities",
  setout: "Set-out",
  sheets: "Sheets",
};

interface Standing extends Pick<Step, "state" | "figure" | "words"> {
  /** The words say that all is well here, which they don't once something is pressing. */
  readonly well?: true;
}

function wellDone(figure: string, words: string): Standing {
  return { state: "complete", figure, words, well: true };
}

/** `look` is what there is to look at in the whole plan: each step carries its share of it. */
export function steps(project: Project, results: Results, notation: Notation, look: ToLookAt): Step[] {
  const settled = sharesOfSettled(look.settled);
  const moving = sharesOf(look.moving);
  const standing: Record<StepName, Standing> = {
    lot: lot(project),
    shots: shots(project, results),
    building: building(project),
    drive: drive(project, results, notation),
    water: water(project, results),
    floor: floor(results, notation),
    foundation: foundation(project, results),
    quantities: quantities(results),
    setout: setout(project, results, notation),
    sheets: sheets(project, results),
  };
  return stepNames.map((name) => {
    const { well, ...own } = standing[name];
    const share = together(settled.get(name) ?? nothing, moving.get(name) ?? nothing);
    const said = { name, title: stepTitles[name], ...own, toLookAt: share.count };
    if (share.first === null) return said;
    return { ...said, state: "attention", words: well ? askedWords(share.first, share.pressing) : own.words };
  });
}

/** A step's part of a list: how many, how many of them press, and the first that does. */
interface Share {
  readonly count: number;
  readonly pressing: number;
  readonly first: Problem | null;
}

const nothing: Share = { count: 0, pressing: 0, first: null };

const shareOf = (problem: Problem): Share =>
  problem.severity === "note"
    ? { count: 1, pressing: 0, first: null }
    : { count: 1, pressing: 1, first: problem };

function together(a: Share, b: Share): Share {
  const first = worseOf(a.first, b.first);
  return { count: a.count + b.count, pressing: a.pressing + b.pressing, first };
}

function sharesOf(list: readonly Problem[]): ReadonlyMap<StepName, Share> {
  const shares = new Map<StepName, Share>();
  for (const problem of list) {
    const step = stepOfProblem(problem);
    shares.set(step, together(shares.get(step) ?? nothing, shareOf(problem)));
  }
  return shares;
}

const sharesOfSettled = oncePer(sharesOf);

/** What is pressing, where it is: "drive: It ends on the ground as it is, …, and 1 more". */
function askedWords({ where, what }: Problem, pressing: number): string {
  const more = pressing > 1 ? ` And ${pressing - 1} more.` : "";
  return `${where}: ${what}${more}`;
}

function lot(project: Project): Standing {
  const { outline } = project.lot;
  if (outline.length < 3) return { state: "empty", figure: "", words: "no lot drawn yet" };
  return wellDone(`${lotLines(project.lot).length} corners`, "the lot is drawn");
}

const shotCount = oncePer((book: Project["survey"]["shots"]) =>
  book.reduce((count, { kind }) => (kind === "mark" ? count : count + 1), 0),
);

/** Points without a height, and ground without a place. */
const looseCount = oncePer((points: Results["survey"]["points"]) =>
  points.reduce(
    (count, { height, at, kind }) =>
      height === null || (at === null && kind === "ground") ? count + 1 : count,
    0,
  ),
);

function shots(project: Project, results: Results): Standing {
  const book = project.survey.shots;
  const figure = String(shotCount(book));
  if (book.length === 0) return { state: "empty", figure: "", words: "no shots yet" };
  if (results.survey.setups.some((setup) => !setup.tied))
    return { state: "work", figure, words: "a set-up has no height yet" };
  if (results.ground === null) return { state: "work", figure, words: "three placed shots make a ground" };
  const loose = looseCount(results.survey.points);
  return loose > 0
    ? { state: "work", figure, words: `${loose} without a reading or a place` }
    : wellDone(figure, "every shot has a height and a place");
}

function building(project: Project): Standing {
  const { building: built } = project;
  if (!built) return { state: "empty", figure: "", words: "no building yet" };
  const figure = sizeFigure(project);
  return built.doors.length === 0
    ? { state: "work", figure, words: "it has no door yet" }
    : wellDone(figure, "the building is drawn");
}

/** "32×24" in whole feet or metres to the decimetre; how many walls where it isn't a rectangle. */
function sizeFigure({ building: built, display }: Project): string {
  const outline = built?.outline ?? [];
  const [a, b, c] = outline;
  if (outline.length !== 4 || !a || !b || !c) return `${outline.length} walls`;
  const metric = display.length === "m" || display.length === "cm" || display.length === "mm";
  const side = (from: readonly number[], to: readonly number[]) => {
    const m = Math.hypot((to[0] ?? 0) - (from[0] ?? 0), (to[1] ?? 0) - (from[1] ?? 0));
    return String(Number((metric ? m : m / FOOT).toFixed(1)));
  };
  return `${side(a, b)}×${side(b, c)}`;
}

function drive(project: Project, results: Results, notation: Notation): Standing {
  if (project.grading.drives.length === 0) return { state: "empty", figure: "", words: "no drive yet" };
  const steepest = Math.max(0, ...results.drives.map((each) => each.steepest));
  if (results.drives.length === 0)
    return { state: "work", figure: "", words: "the drive waits for the ground" };
  const figure = notation.slope(steepest);
  return steepest > project.rules.steepestDrive + 1e-9
    ? { state: "complete", figure, words: `steeper than ${notation.slope(project.rules.steepestDrive)}` }
    : wellDone(figure, "within its steepest grade");
}

function water(project: Project, results: Results): Standing {
  if (!project.building || !results.ground)
    return { state: "empty", figure: "", words: "nothing to check yet" };
  const { walls, swales, ponds } = results.water;
  const steep = walls.filter(({ verdict }) => verdict === "falls too little").length;
  const wet = walls.filter(({ verdict }) => verdict === "water stands").length;
  const verdicts = swales.map((swale) => swaleVerdict(swale, project.rules.leastSwaleFall));
  const stuck = verdicts.filter((verdict) => verdict === "doesn't drain").length;
  const flat = verdicts.filter((verdict) => verdict === "falls too little").length;
  if (steep + wet + stuck + flat + ponds.length === 0) return wellDone("", "water leaves every wall");
  const words = [
    steep > 0 ? `${steep} of ${walls.length} walls without enough fall` : "",
    wet > 0 ? `water stands at ${wet} of ${walls.length} walls` : "",
    stuck > 0 ? (stuck === 1 ? "1 swale that doesn't drain" : `${stuck} swales that don't drain`) : "",
    flat > 0 ? (flat === 1 ? "1 swale that falls too little" : `${flat} swales that fall too little`) : "",
    lowPlaces(ponds.length),
  ].filter((word) => word !== "");
  return { state: "complete", figure: "", words: words.join(", ") };
}

function lowPlaces(count: number): string {
  if (count === 0) return "";
  return count === 1 ? "1 low place that holds water" : `${count} low places that hold water`;
}

function floor(results: Results, notation: Notation): Standing {
  const { band, floor: height } = results;
  if (height === null) return { state: "empty", figure: "", words: "no building yet" };
  const figure = notation.length(height);
  if (results.ground === null) return { state: "work", figure, words: "the ground isn't known yet" };
  const outside = band.empty || outsideBand(band, height) !== null;
  return outside
    ? { state: "complete", figure, words: "the floor breaks a limit" }
    : band.rules.some(({ on, atAnyFloor }) => on && atAnyFloor === "broken")
      ? { state: "complete", figure, words: "within its limits, but one is kept at no floor" }
      : wellDone(figure, withinWords(band.rules.filter(({ on }) => !on).length));
}

function withinWords(off: number): string {
  if (off === 0) return "within every limit";
  return `within every limit that is on; ${off} ${off === 1 ? "is" : "are"} switched off`;
}

function foundation(project: Project, results: Results): Standing {
  if (!project.building) return { state: "empty", figure: "", words: "no building yet" };
  const deepest = Math.max(0, ...results.trench.map((corner) => corner.belowGround));
  if (project.building.foundation.frostDepth === null)
    return { state: "work", figure: "", words: "the frost depth isn't typed yet" };
  return wellDone(
    "",
    deepest <= 0
      ? "typed"
      : results.foundation?.kind === "posts"
        ? "every hole is known"
        : "trench known at every corner",
  );
}

function quantities(results: Results): Standing {
  return results.bill.length === 0
    ? { state: "empty", figure: "", words: "nothing to count yet" }
    : wellDone("", "counted from the present floor");
}

function setout({ survey, worksheet }: Project, results: Results, notation: Notation): Standing {
  if (survey.marks.length === 0) return { state: "empty", figure: "", words: "no mark yet" };
  if (worksheet.markReading !== null) return wellDone("", "readings to look for are ready");
  const { beam, markHeight } = results.setout;
  const untyped = "today's reading on the mark isn't typed yet";
  if (beam === null || markHeight === null) return { state: "work", figure: "", words: untyped };
  const surveys = `the survey's reading of it was ${notation.reading(beam - markHeight)}`;
  return { state: "work", figure: "", words: `${untyped}; ${surveys}` };
}

function sheets(project: Project, results: Results): Standing {
  const figure = paperNames[project.display.paper];
  if (!project.building || !results.ground) return { state: "empty", figure, words: "nothing to print yet" };
  return { state: "work", figure, words: "drawn from the plan as it stands" };
}

export const paperNames = { letter: "Letter", tabloid: "Tabloid", a4: "A4", a3: "A3" } as const;
