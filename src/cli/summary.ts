/** What solve found, as a page to read in the project's own notation. */

import type { Display, Project } from "../document/schema";
import { billFigure } from "../help";
import { allowedHeights, hasBearing } from "../solve/floor-standing";
import { isWithin, roundedInto } from "../solve/limit-standing";
import type { BandRule, BillItem, HeightSpan, Results } from "../solve/results";
import { allFound } from "../solve/to-look-at";
import {
  depthInWords,
  formatAboveBelow,
  formatArea,
  formatLength,
  formatSigned,
  formatSlope,
  formatVolume,
  roundingFor,
  roundingStep,
} from "../units";
import { problemLines } from "./check";
import { foundationLines } from "./foundationLines";
import { waterLines } from "./waterLines";

/** The error estimate is told as 0.1 m3 at least, m3. */
const LEAST_ERROR = 0.1;

export function summary(project: Project, results: Results): string {
  const page: Page = { project, results, words: wordsOf(project.display) };
  const parts = [
    head(page),
    floor(page),
    band(page),
    corners(page),
    foundationLines(project, results, page.words),
    earth(page),
    drives(page),
    water(page),
    setout(page),
    bill(page),
    problemLines(allFound(project, results)).slice(1),
  ];
  return parts
    .filter((lines) => lines.length > 0)
    .map((lines) => lines.join("\n"))
    .join("\n\n");
}

interface Page {
  readonly project: Project;
  readonly results: Results;
  readonly words: ReturnType<typeof wordsOf>;
}

function wordsOf(display: Display) {
  const { length: notation, rounding } = display;
  const forReading = roundingFor(display.reading, display);
  return {
    length: (m: number) => formatLength(m, notation, rounding),
    signed: (m: number) => formatSigned(m, notation, rounding),
    aboveBelow: (m: number) => formatAboveBelow(m, notation, rounding),
    depth: (m: number) => depthInWords(m, notation, rounding),
    reading: (m: number) => formatLength(m, display.reading, forReading),
    area: (m2: number) => formatArea(m2, display.area),
    volume: (m3: number) => formatVolume(m3, display.volume),
    slope: (ratio: number) => formatSlope(ratio, display.slope),
  };
}

function head({ project, results, words }: Page): string[] {
  const { mark, points } = results.survey;
  const shots = points.filter(({ kind }) => kind !== "mark");
  const levelled = shots.filter((point) => point.height !== null).length;
  const from =
    mark === null
      ? "No reference mark yet."
      : `Reference mark: ${mark.name}, at ${words.length(mark.height)}.`;
  return [project.name, `${levelled} of ${shots.length} shots levelled. ${from}`];
}

function floor({ results, words }: Page): string[] {
  const { floor: height, topOfWall, survey } = results;
  if (height === null || topOfWall === null) return ["No building yet, so no floor."];
  const fromMark = (z: number) => {
    if (survey.mark === null) return "";
    const told = words.aboveBelow(z - survey.mark.height);
    return `${told}${told === "level" ? " with" : ""} the mark`;
  };
  const line = (what: string, z: number) => [what, words.length(z), fromMark(z)];
  return table([line("Floor", height), line("Top of wall", topOfWall)]);
}

function band({ project: { display }, results: { band: allowed, floor: height }, words }: Page): string[] {
  if (height === null) return [];
  const step = roundingStep(display.length, display.rounding);
  const rules = allowed.rules.filter((rule) => rule.on && hasBearing(rule));
  const line = (rule: BandRule) => [
    { notBelow: "  not below", notAbove: "  not above", within: "  within" }[rule.kind],
    rule.height === null
      ? spansInWords(allowedHeights(rule), words)
      : words.length(roundedInto(rule.height, rule.kind === "notBelow" ? "up" : "down", step)),
    rule.name,
    rule.place,
  ];
  const low = allowed.low === null ? null : roundedInto(allowed.low, "up", step);
  const high = allowed.high === null ? null : roundedInto(allowed.high, "down", step);
  const said = allowed.empty
    ? "No floor height satisfies every rule:"
    : low === null && high === null
      ? "No rule limits the floor."
      : `The floor may lie ${low === null ? "" : `not below ${words.length(low)}`}${low !== null && high !== null ? ", " : ""}${high === null ? "" : `not above ${words.length(high)}`}:`;
  const nowhere = allowed.rules.filter(({ on, atAnyFloor }) => on && atAnyFloor === "broken");
  return [
    said,
    ...table(rules.map(line)),
    ...allowed.rules.filter(({ on }) => !on).map(({ name }) => `  switched off: ${name}`),
    ...nowhere.map(({ name, place }) => `  at no floor: ${name}: ${place}`),
  ];
}

/** "99.2 to 101.4 m, or 102 m and up". */
function spansInWords(spans: readonly HeightSpan[], { length }: Page["words"]): string {
  const told = spans.map(([low, high]) => {
    if (low === null) return high === null ? "any" : `up to ${length(high)}`;
    return high === null ? `${length(low)} and up` : `${length(low)} to ${length(high)}`;
  });
  return told.join(", or ");
}

function corners({ results, words }: Page): string[] {
  if (results.corners.length === 0) return [];
  const rows = results.corners.map((corner, i) => [
    corner.name,
    words.length(corner.ground) + (corner.guessed ? " (a guess)" : ""),
    words.aboveBelow(corner.wallAboveGround),
    words.aboveBelow(corner.wallAboveFinished),
    words.length(results.trench[i]?.bottom ?? Number.NaN),
    words.length(results.trench[i]?.belowGround ?? Number.NaN),
  ]);
  return table([
    [
      "Corner",
      "Ground now",
      "Top of wall, ground now",
      "ground finished",
      "Bottom of trench",
      "Dig from ground now",
    ],
    ...rows,
  ]);
}

function earth({ results: { earthwork, surface, balance, band: limits }, words }: Page): string[] {
  if (earthwork === null) return [];
  const { inside, outside, total, guessedShare } = earthwork;
  const lines = table([
    ["Earth", "Cut", "Fill", "Area"],
    ["under the floor", words.volume(inside.cut), words.volume(inside.fill), words.area(inside.area)],
    ["outside the walls", words.volume(outside.cut), words.volume(outside.fill), words.area(outside.area)],
    ["together", words.volume(total.cut), words.volume(total.fill), ""],
  ]);
  const error = words.volume(Math.max(outside.error, LEAST_ERROR));
  const guess = Math.round(guessedShare * 100);
  lines.push(`Outside the walls to within ${error}; ${guess} % of all rests on guessed ground.`);
  const deepest = [surface?.greatestFill, surface?.greatestCut].flatMap((place) =>
    place ? [words.depth(place.depth)] : [],
  );
  if (deepest.length > 0) lines.push(`Deepest outside the walls: ${deepest.join(", ")}.`);
  if (balance?.floor != null)
    lines.push(
      `The cut, compacted, makes the earth fill with the floor at ${words.length(balance.floor)}${isWithin(limits.spans, balance.floor) ? "" : ", which the limits don't allow"}.`,
    );
  return lines;
}

function drives({ results, words }: Page): string[] {
  const guessOf = (id: string) => {
    const share = results.guessed.drives.find((each) => each.id === id)?.share ?? 0;
    return share < 0.005 ? "" : `; ${Math.round(share * 100)} % of it on guessed ground`;
  };
  return results.drives.map(
    ({ id, name, length, steepest, climbs }) =>
      `${capital(name)}: ${words.length(length)} long, at its steepest ${climbs ? "climbs" : "falls"} ${words.slope(steepest)} towards the building${guessOf(id)}.`,
  );
}

function water({ project, results, words }: Page): string[] {
  const { walls, lines } = waterLines(project, results, words);
  const all = [...table(walls), ...lines];
  return all.length === 0 ? [] : ["Water", ...all];
}

function setout({ project, results: { setout: marks }, words }: Page): string[] {
  if (marks.rows.length === 0) return [];
  const { mark, markHeight, beam } = marks;
  const from = mark === null ? "" : ` from ${mark}`;
  const read = beam === null || markHeight === null ? null : words.reading(beam - markHeight);
  const readings =
    read === null
      ? "no reading on the mark yet"
      : project.worksheet.markReading
        ? `today the mark reads ${read}`
        : `the survey's reading of the mark was ${read}; read it again today`;
  return [
    `Set-out${from} (${readings})`,
    ...table(
      marks.rows.map(({ what, where, height, fromMark, reading }) => [
        `  ${what}`,
        where,
        words.length(height),
        fromMark === null ? "" : words.signed(fromMark),
        reading === null ? "" : `read ${words.reading(reading)}`,
      ]),
    ),
  ];
}

function bill({ results, words }: Page): string[] {
  if (results.bill.length === 0) return [];
  const amount = (item: BillItem) => billFigure(item, words);
  return ["Bill", ...table(results.bill.map((item) => [`  ${item.item}`, amount(item), item.how]))];
}

/** Columns set apart by two spaces; no spaces at line ends. */
function table(rows: readonly (readonly string[])[]): string[] {
  const widths: number[] = [];
  for (const row of rows) {
    row.forEach((cell, i) => {
      widths[i] = Math.max(widths[i] ?? 0, cell.length);
    });
  }
  return rows.map((row) =>
    row
      .map((cell, i) => cell.padEnd(widths[i] ?? 0))
      .join("  ")
      .trimEnd(),
  );
}

function capital(name: string): string {
  return name.charAt(0).toUpperCase() + name.slice(1);
}
