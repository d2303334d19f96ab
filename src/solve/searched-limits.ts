/**
 * Limits of the floor that have no formula, each as a margin at a floor: fall away from the walls, fill one side of
 * a wall doesn't balance, the wall's own height, thresholds, slopes that fit on the lot, what it may cost. How far walls
 * show has a file of its own.
 *
 * Units   metres; money as the user's prices have it.
 * Method  Trying floors over the layout's range (`floor-search`).
 * Source  Stands beside each rule. A code's figure is a model: the local edition and its official decide.
 */
import { practice, type Rule } from "../advice";
import { wallWater } from "../drainage";
import type { ReckonedSite } from "./floor-parts";
import type { Reading } from "./floor-search";
import type { BandRule } from "./results";
import { found, type Head, least, type SearchInput, silent } from "./search-rule";
import { roomAt } from "./slope-room";
import { wallLimits } from "./wall-limits";

export function searchedLimits(input: SearchInput): Rule[] {
  return [
    ...wallLimits(input),
    fallAway(input),
    unbalancedFill(input),
    greatestWall(input),
    doorThreshold(input),
    ...slopesThatFit(input),
    costLimit(input),
  ];
}

/** Finished ground falls 6 in within 10 ft of every wall for which some floor brings that about. */
function fallAway(input: SearchInput): Rule {
  const { walls, range, words, site } = input;
  const head: Head = {
    id: "fallAway",
    kind: "notBelow",
    name: "ground falling away from the walls",
    value: 0.1524,
    source: "International Residential Code R401.3 (2012): 6 in within 10 ft; 2 % on paving",
  };
  const wallsAt = (floor: number) => wallWater(walls.normals, walls.prepared, floor);
  const looked = [range.low, (range.low + range.high) / 2, range.high].map(wallsAt);
  const everFalls = (wall: number) => looked.some((read) => read[wall]?.fallsEnough);
  const mended = site.footprint.walls.flatMap((_, wall) => (everFalls(wall) ? [wall] : []));
  const never = site.footprint.walls.filter((_, wall) => !everFalls(wall)).map(({ name }) => name);
  const left = never.length === 0 ? "" : `; at ${never.join(", ")} no floor does it: mend the grading there`;
  if (mended.length === 0)
    return { ...silent(head, "at no wall does the floor decide it: mend the grading"), atAnyFloor: "broken" };
  const reading = (floor: number): Reading => {
    const read = wallsAt(floor);
    const worst = least(
      mended.flatMap((wall) => {
        const own = read[wall];
        if (!own) return [];
        // What `passes` allows for: earth isn't graded closer.
        const over = own.fallAway - own.needed;
        const margin = own.fallsEnough ? Math.max(0, over) : over;
        const place = `wall ${own.name}, ${words.length(own.fallAway)} of fall there`;
        return [{ margin, place, at: middleOf(site, wall) }];
      }),
    );
    return worst ?? { margin: 0, place: "no wall" };
  };
  const rule = found(head, reading, input);
  return { ...rule, place: `${rule.place}${left}` };
}

function middleOf({ footprint }: ReckonedSite, wall: number): readonly [number, number] {
  const { start, along, length } = footprint.walls[wall] as ReckonedSite["footprint"]["walls"][number];
  return [start[0] + (along[0] * length) / 2, start[1] + (along[1] * length) / 2];
}

/** Fill that one side of a wall holds alone ≤ the published limit for that wall, or the typed one. */
function unbalancedFill(input: SearchInput): Rule {
  const typed = input.project.rules.mostUnbalanced;
  const { unbalanced } = input.partsAt(input.range.low).foundation;
  const limits = unbalanced.map(({ limit }) => typed ?? limit).filter((limit) => limit !== null);
  const head: Head = {
    id: "unbalancedFill",
    kind: "notAbove",
    name: "fill on one side of a wall",
    value: limits.length > 0 ? Math.min(...limits) : 0,
    source:
      typed === null
        ? (unbalanced[0]?.source ?? practice)
        : "your own limit; beyond the tables an engineer decides",
  };
  if (unbalanced.length === 0) return silent(head, "no wall of this foundation holds fill");
  if (limits.length === 0) return silent(head, "the published tables have no such wall: ask an engineer");
  const reading = (floor: number): Reading =>
    least(
      input.partsAt(floor).foundation.unbalanced.flatMap(({ limit, worst, at, holds }) => {
        const most = typed ?? limit;
        if (most === null) return [];
        const side = holds === "none" ? "" : `, held from the ${holds}`;
        return [{ margin: most - worst, place: `${at.place}${side}`, at: at.at }];
      }),
    ) ?? { margin: 0, place: "no wall" };
  return found(head, reading, input);
}

/** Top of wall − top of footing ≤ value, where it is highest. */
function greatestWall(input: SearchInput): Rule {
  const { greatestWall: most } = input.project.rules;
  const head: Head = {
    id: "greatestWall",
    kind: "notAbove",
    name: "height of the wall, footing to top",
    value: most ?? 0,
    source: "your own limit: forms, blocks or the engineer's word",
  };
  if (most === null) return silent(head, "no limit has been typed");
  const { kind } = input.partsAt(input.range.low).foundation;
  if (kind !== "stem-wall" && kind !== "crawl-space") return silent(head, "this foundation has no wall");
  const reading = (floor: number): Reading =>
    least(
      input.partsAt(floor).foundation.walls.flatMap(({ name, wall, pieces }) =>
        pieces.map(({ wallHeight }) => ({
          margin: most - wallHeight,
          place: `wall ${name}, ${input.words.length(wallHeight)} high there`,
          at: middleOf(input.site, wall),
        })),
      ),
    ) ?? { margin: 0, place: "no wall" };
  return found(head, reading, input);
}

/** A door's sill ≥ the finished ground outside it + value; a drive comes to its door by itself. */
function doorThreshold(input: SearchInput): Rule {
  const value = input.project.rules.doorThreshold;
  const head: Head = {
    id: "doorThreshold",
    kind: "notBelow",
    name: "door sills above the ground outside",
    value,
    source: practice,
  };
  const readings = (floor: number) =>
    input
      .partsAt(floor)
      .foundation.doors.flatMap(({ drive, drop, name, wallName, at }) =>
        drive ? [] : [{ margin: drop - value, place: `${name}, wall ${wallName}`, at }],
      );
  if (readings(input.range.low).length === 0) return silent(head, "no door without a drive");
  return found(head, (floor) => least(readings(floor)) ?? { margin: 0, place: "no door" }, input);
}

/** Fill and cut round the building end within the lot. */
function slopesThatFit(input: SearchInput): Rule[] {
  const { lot } = input;
  const head = (id: "fillFits" | "cutFits", kind: BandRule["kind"], name: string): Head => ({
    id,
    kind,
    name,
    value: 0,
    source: `${practice}; ground beyond the lot line is the neighbour's`,
  });
  const rules = [
    { side: "fill" as const, head: head("fillFits", "notAbove", "fill slopes that end on the lot") },
    { side: "cut" as const, head: head("cutFits", "notBelow", "cut slopes that end on the lot") },
  ];
  return rules.map(({ side, head: own }) =>
    lot
      ? found(own, (floor) => roomAt(lot, floor, side), input)
      : silent(own, "no lot that encloses ground is drawn"),
  );
}

/** What the priced items come to ≤ value. */
function costLimit(input: SearchInput): Rule {
  const { costLimit: most } = input.project.rules;
  const head: Head = {
    id: "costLimit",
    kind: "within",
    name: "cost of what is priced",
    value: most ?? 0,
    source: "your own limit",
  };
  const { cost } = input;
  if (most === null) return silent(head, "no limit has been typed");
  if (!cost) return silent(head, "nothing in the bill has a price yet");
  const reading = (floor: number) => ({ margin: most - cost.coarse(floor).total, place: "the whole bill" });
  return found(head, reading, input, (floor) => most - cost.fine(floor).total);
}
