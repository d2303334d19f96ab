/** One sentence that says how things stand, in parts so that the figures can be set bold. */

import type { Project } from "../document";
import { outsideBand, passedRule } from "../solve/floor-standing";
import { loadsOf } from "../solve/load-words";
import { oncePer } from "../solve/once-per";
import { farFloor, farFloorWords } from "../solve/plausible";
import type { CornerResult, Results } from "../solve/results";
import { swaleVerdict } from "../solve/swale-verdict";
import { wordsFor } from "../solve/words";
import { compass } from "../units";
import { groundApart } from "./heightsApart";
import type { Notation } from "./notation";
import { capital, counted, guessedWords, listed, wallSide } from "./words";

export interface SentencePart {
  readonly text: string;
  readonly strong?: boolean;
}

const plain = (text: string): SentencePart => ({ text });
const strong = (text: string): SentencePart => ({ text, strong: true });

export function sentence(project: Project, results: Results, notation: Notation): SentencePart[] {
  if (results.ground === null) return beforeTheGround(project, results);
  if (project.building === null) return beforeTheBuilding(results, project, notation);
  const far = results.floor === null ? null : farFloor(results.floor, results.ground);
  if (far)
    return [
      plain("The floor lies "),
      strong(farFloorWords(far, wordsFor(project.display))),
      plain(": check its figure and its unit before anything else."),
    ];
  const clauses = [
    standing(results.corners, notation),
    loads(project, results),
    drive(results, notation),
    water(project, results),
    limits(results, notation),
  ].filter((clause) => clause.length > 0);
  const parts: SentencePart[] = [];
  clauses.forEach((clause, index) => {
    parts.push(...(index > 0 ? [plain("; ")] : []), ...clause);
  });
  return parts.length === 0 ? [] : [...parts, plain(".")];
}

/** The sentence as plain text, for people who listen to it. */
export function sentenceText(parts: readonly SentencePart[]): string {
  return parts.map(({ text }) => text).join("");
}

function beforeTheGround(project: Project, results: Results): SentencePart[] {
  const { marks, shots } = project.survey;
  if (marks.length === 0 && shots.length === 0)
    return [
      plain("Nothing is measured yet. "),
      strong("Add a mark that stays"),
      plain(", read it at the laser, then shoot the ground."),
    ];
  const known = results.survey.points.filter(
    (point) => point.kind !== "check" && point.at !== null && point.height !== null,
  ).length;
  const untied = results.survey.setups.find((setup) => !setup.tied);
  if (shots.length > 0 && untied)
    return [
      strong(untied.name),
      plain(" has no height yet: read a mark from it, or say how high its beam is."),
    ];
  const missing = Math.max(1, 3 - known);
  return [
    plain(
      `${capital(counted(known, "shot"))} ${known === 1 ? "has" : "have"} a height and a place; the ground needs `,
    ),
    strong(known < 3 ? `${missing} more` : "places that are not all in one line"),
    plain("."),
  ];
}

function beforeTheBuilding(results: Results, project: Project, notation: Notation): SentencePart[] {
  const ground = results.ground;
  if (!ground) return [];
  const { breaklines } = project.survey;
  const drop = groundApart(results.survey.points, breaklines) ?? 0;
  const lines = breaklines.some(({ points }) => points.some(([, , height]) => height !== null));
  const { gx, gy } = ground.plane;
  return [
    plain(lines ? "The shots and lines lie within " : "The shots lie within "),
    strong(notation.length(drop)),
    plain(" of height and the ground falls to the "),
    strong(compass([-gx, -gy], project.lot.north)),
    plain(". Draw the building next."),
  ];
}

function standing(corners: readonly CornerResult[], notation: Notation): SentencePart[] {
  const byGround = [...corners].sort((a, b) => b.ground - a.ground);
  const high = byGround[0];
  const low = byGround.at(-1);
  if (!high || !low) return [];
  const level = Math.abs(high.floorAboveGround - low.floorAboveGround) < 1e-3;
  if (level) return [plain("The floor stands "), ...outAt(high, notation), plain(" at every corner")];
  return [
    plain("The floor stands "),
    ...outAt(high, notation),
    plain(` at ${high.name} and `),
    ...outAt(low, notation, high),
    plain(` at ${low.name}`),
  ];
}

/** "11¾″ out of the ground"; after another of the same kind only the figure. */
function outAt(
  { floorAboveGround: out }: CornerResult,
  notation: Notation,
  before?: CornerResult,
): SentencePart[] {
  const figure = strong(notation.length(Math.abs(out)));
  const alike = before !== undefined && before.floorAboveGround < 0 === out < 0;
  return alike ? [figure] : [figure, plain(out < 0 ? " below the ground" : " out of the ground")];
}

/** Truck loads that the bill counts. */
function loads({ truck }: Project, { bill, earthwork }: Results): SentencePart[] {
  const trench = bill.some(({ id, quantity }) => id === "trench-left" && quantity > 0);
  const parts = (["fill", "cut"] as const).flatMap((kind) => {
    const words = loadsOf(kind, bill, truck);
    const what = kind === "cut" && trench ? "cut and trench soil" : kind;
    return words === null ? [] : [[strong(words), plain(` of ${what}`)]];
  });
  const told = parts.flatMap((part, index) => (index > 0 ? [plain(" and "), ...part] : part));
  const guessed = guessedWords(earthwork?.guessedShare ?? 0);
  return told.length === 0 || guessed === "" ? told : [...told, plain(", "), strong(guessed)];
}

const servesNoDoor = oncePer((problems: Results["problems"]) =>
  problems.some(({ code }) => code === "drive-serves-no-door"),
);

function drive(results: Results, notation: Notation): SentencePart[] {
  const steepest = [...results.drives].sort((a, b) => b.steepest - a.steepest)[0];
  if (!steepest) return [];
  return [
    plain(`the drive ${steepest.climbs ? "climbs" : "falls"} up to `),
    strong(notation.slope(steepest.steepest)),
    ...(servesNoDoor(results.problems) ? [plain(" and leads to "), strong("no door")] : []),
  ];
}

function water(project: Project, results: Results): SentencePart[] {
  const { walls, swales, ponds } = results.water;
  const outline = project.building?.outline ?? [];
  const wet = walls.filter((wall) => !wall.passes);
  const parts: SentencePart[] = [];
  if (walls.length > 0 && wet.length === 0) parts.push(plain("water leaves on every side"));
  if (wet.length > 0) {
    const sides = [...new Set(wet.map((wall) => wallSide(outline, wall.wall, project.lot.north)))];
    if (wet.length === walls.length) parts.push(plain("water leaves on "), strong("no side"));
    else parts.push(plain("water leaves on every side but "), strong(`the ${listed(sides)}`));
  }
  const stuck = swales
    .map((swale) => ({ name: swale.name, verdict: swaleVerdict(swale, project.rules.leastSwaleFall) }))
    .filter(({ verdict }) => verdict !== "drains");
  if (stuck.length > 0) parts.push(plain(parts.length ? ", and " : ""), ...swalesThatFail(stuck));
  else if (ponds.length > 0)
    parts.push(
      plain(parts.length ? ", but stands in " : "water stands in "),
      strong(counted(ponds.length, "low place")),
    );
  return parts;
}

/** "the swale falls too little", "the north swale and the swale don't drain": each verdict once. */
function swalesThatFail(swales: readonly { readonly name: string; readonly verdict: string }[]) {
  const verdicts = [...new Set(swales.map(({ verdict }) => verdict))];
  return verdicts.flatMap((verdict, index): SentencePart[] => {
    const names = swales.filter((swale) => swale.verdict === verdict).map(({ name }) => `the ${name}`);
    const said = names.length === 1 ? verdict : severalSwales[verdict];
    return [...(index > 0 ? [plain(" and ")] : []), strong(listed(names)), plain(` ${said}`)];
  });
}

const severalSwales: Readonly<Record<string, string>> = {
  "doesn't drain": "don't drain",
  "falls too little": "fall too little",
};

/** Said only where the floor breaks a limit. */
function limits({ band, floor }: Results, notation: Notation): SentencePart[] {
  if (floor === null) return [];
  if (band.empty) return [strong("no floor height meets every limit")];
  const outside = outsideBand(band, floor);
  if (!outside) return [];
  const { way, by } = outside;
  const rule = passedRule(band, floor);
  return [
    plain("the floor is "),
    strong(`${notation.length(by) === notation.length(0) ? "a hair" : notation.length(by)} too ${way}`),
    plain(rule ? ` for this limit: ${rule.name}` : ""),
  ];
}
