/**
 * What limits the floor height, rule by rule. Every rule gives one height: not below it, or not above it.
 *
 * Units   metres; slopes rise over run.
 * Method  Each limit is linear in the floor, so its height is solved for directly. T, the top of wall, is
 *         floor + topOfWallAboveFloor throughout.
 * Source  Stands beside each rule. A code's figure is a model: the local edition and its official decide.
 */
import { bottomBelowTop, earthBelowFloor, hasSlab, mostSlabFill } from "../document/foundationMeasures";
import type { Rules } from "../document/schema";
import type { BandRule } from "../solve/results";
import { type AdviceFacts, type DriveLimits, practice, type Rule, spot } from "./facts";
import { aboveFlood, aboveRoad, leastOut } from "./typedLimits";

/** Rules whose height follows from the facts directly, those without bearing too. */
export function floorRules(facts: AdviceFacts): Rule[] {
  return [
    aboveUphillGround(facts),
    driveDown(facts),
    landingDown(facts),
    swaleBelowWall(facts),
    pondFreeboard(facts),
    aboveRoad(facts),
    aboveFlood(facts),
    leastOut(facts),
    steepestDrive(facts),
    landing(facts),
    intoUndisturbed(facts),
    frostCover(facts),
    fillUnderSlab(facts),
    mostShowing(facts),
  ];
}

/** Rules with the switches of the project. */
export function switched(rules: readonly Rule[], { off }: Pick<Rules, "off">): BandRule[] {
  return rules.map((rule) => ({ ...rule, on: !off.includes(rule.id) }));
}

/** T ≥ highest ground uphill + value: then water that comes down the hill stays below the wall's top. */
function aboveUphillGround({ uphill, rules, topOfWallAboveFloor }: AdviceFacts): Rule {
  return {
    id: "aboveUphillGround",
    kind: "notBelow",
    name: "top of wall above the high ground beside it",
    height: uphill.height + rules.aboveUphillGround - topOfWallAboveFloor,
    ...spot(uphill),
    value: rules.aboveUphillGround,
    source: practice,
  };
}

/** The run from the road may fall to the door no steeper than it may climb. */
function driveDown({ drives, rules }: AdviceFacts): Rule {
  const worst = extreme(drives, ({ falling }) => falling);
  return {
    id: "driveDown",
    kind: "notBelow",
    name: "drive not too steep down to the door",
    height: worst?.falling ?? null,
    place: worst ? worst.name : "no drive leads to a door yet",
    ...at(worst),
    value: rules.steepestDrive,
    source: `${practice}; water that runs down to a door needs a drain across the drive`,
  };
}

/** Where the run meets the landing, or the door itself, without a vertical curve, the grade may change by so much. */
function landingDown(facts: AdviceFacts): Rule {
  return breakOf(
    facts,
    "landingDown",
    "notBelow",
    "break of the drive at the door, coming down",
    ({ down }) => down,
  );
}

function landing(facts: AdviceFacts): Rule {
  return breakOf(facts, "landing", "notAbove", "break of the drive at the door, going up", ({ up }) => up);
}

function breakOf(
  { drives, rules }: AdviceFacts,
  id: string,
  kind: "notBelow" | "notAbove",
  name: string,
  heightOf: (breaks: { readonly up: number; readonly down: number }) => number,
): Rule {
  const sharp = drives.flatMap((drive) => (drive.breaks ? [{ drive, height: heightOf(drive.breaks) }] : []));
  const worst = extreme(sharp, ({ height }) => (kind === "notBelow" ? height : -height));
  const none =
    drives.length === 0
      ? "no drive leads to a door yet"
      : "a vertical curve eases every drive at its landing";
  return {
    id,
    kind,
    name,
    height: worst?.height ?? null,
    place: worst ? `${worst.drive.name}, at the ${worst.drive.breaks?.where}` : none,
    ...at(worst?.drive ?? null),
    value: rules.breakAtDoor,
    source: `${practice}; from about 10 % a car may scrape without a vertical curve`,
  };
}

/** Ground at the wall ≥ swale bed + 6 in: else the swale's water stands against the wall. */
function swaleBelowWall({ swaleNear, apron, rules, topOfWallAboveFloor, length }: AdviceFacts): Rule {
  return {
    id: "swaleBelowWall",
    kind: "notBelow",
    name: "ground at the wall above the swale's bed",
    height: swaleNear ? swaleNear.height + rules.aboveSwale + apron.showing - topOfWallAboveFloor : null,
    ...(swaleNear
      ? spot(swaleNear)
      : { place: `no swale runs within ${length(rules.uphillReach)} of the walls` }),
    value: rules.aboveSwale,
    source: "International Residential Code R401.3 (2012): 6 in within 10 ft",
  };
}

function pondFreeboard({ pondNear, rules, length }: AdviceFacts): Rule {
  return {
    id: "pondFreeboard",
    kind: "notBelow",
    name: "floor above standing water beside it",
    height: pondNear ? pondNear.height + rules.aboveWater : null,
    ...(pondNear
      ? spot(pondNear)
      : { place: `no water stands within ${length(rules.uphillReach)} of the walls` }),
    value: rules.aboveWater,
    source: practice,
  };
}

function steepestDrive({ drives, rules }: AdviceFacts): Rule {
  const worst = extreme(drives, ({ climbing }) => -climbing);
  return {
    id: "steepestDrive",
    kind: "notAbove",
    name: "drive not too steep up to the door",
    height: worst?.climbing ?? null,
    place: worst ? worst.name : "no drive leads to a door yet",
    ...at(worst),
    value: rules.steepestDrive,
    source: `${practice}; local limits run from 10 to 15 %`,
  };
}

/** Bottom of footing ≤ lowest ground − strip − value. */
function intoUndisturbed(facts: AdviceFacts): Rule {
  const { lowestAtWalls, rules, stripDepth, length } = facts;
  const rule = {
    id: "intoUndisturbed",
    kind: "notAbove" as const,
    name: "footing into undisturbed ground",
    value: rules.intoUndisturbed,
    source: "International Residential Code R403.1.4 (2012): 12 in below undisturbed ground",
  };
  const follows = followsGround(facts);
  if (follows) return { ...rule, height: null, place: follows };
  return {
    ...rule,
    height: floorForFooting(facts, lowestAtWalls.height - stripDepth - rules.intoUndisturbed),
    place: `${lowestAtWalls.place}, below a strip of ${length(stripDepth)}`,
    at: [...lowestAtWalls.at],
  };
}

/** Bottom of footing ≤ lowest ground that counts − frost depth. */
function frostCover(facts: AdviceFacts): Rule {
  const { lowestAtWalls, foundation, length } = facts;
  const rule = {
    id: "frostCover",
    kind: "notAbove" as const,
    name: "footing below frost",
    source: "International Residential Code R403.1.4.1 (2012): below the local frost line",
  };
  if (foundation.frostDepth === null)
    return { ...rule, height: null, place: "no frost depth has been typed yet", value: 0 };
  const value = foundation.frostDepth;
  const follows = followsGround(facts);
  if (follows) return { ...rule, height: null, place: follows, value };
  if (foundation.frostFrom === "finished") return { ...rule, ...frostBelowFinished(facts, value), value };
  return {
    ...rule,
    height: floorForFooting(facts, lowestAtWalls.height - value),
    place: `${lowestAtWalls.place}: ${length(value)} below the ground as it is; below the apron the footing always has ${length(coverBelowApron(facts))}`,
    at: [...lowestAtWalls.at],
    value,
  };
}

/** Below the apron the cover is the same at any floor; only where the ground stays as it is does the floor decide. */
function frostBelowFinished(facts: AdviceFacts, frost: number): Pick<Rule, "height" | "place" | "at"> {
  const { lowestLeft, length } = facts;
  const cover = coverBelowApron(facts);
  if (lowestLeft) return { height: floorForFooting(facts, lowestLeft.height - frost), ...spot(lowestLeft) };
  const kept =
    cover >= frost - 1e-9
      ? `the footing lies ${length(cover)} below the apron at any floor height`
      : `the footing lies only ${length(cover)} below the apron at any floor height: take a taller wall, not another floor`;
  return { height: null, place: kept };
}

function coverBelowApron({ foundation, apron }: AdviceFacts): number {
  return (bottomBelowTop(foundation) ?? 0) - apron.showing;
}

/** Steps and holes go down with the ground, so that they don't limit the floor; null for a level footing. */
function followsGround({ foundation }: AdviceFacts): string | null {
  if (foundation.kind === "posts") return "every hole goes down from the ground where it stands";
  const steps = foundation.steps.on && foundation.kind !== "thickened-edge";
  return steps ? "the footing steps down where the ground is lower" : null;
}

function floorForFooting({ foundation, topOfWallAboveFloor }: AdviceFacts, bottom: number): number {
  return bottom + (bottomBelowTop(foundation) ?? 0) - topOfWallAboveFloor;
}

/** Underside of the base − stripped ground ≤ 24 in of sand or gravel, 8 in of earth. */
function fillUnderSlab({
  lowestInside,
  foundation,
  topOfWallAboveFloor,
  stripDepth,
  length,
}: AdviceFacts): Rule {
  const most = mostSlabFill(foundation);
  const rule = {
    id: "fillUnderSlab",
    kind: "notAbove" as const,
    name: "fill under the slab",
    value: most,
    source:
      foundation.slabFill.approved === null
        ? "International Residential Code R506.2.1 (2012): 24 in of clean sand or gravel, 8 in of earth, unless approved"
        : "approved for this plan, as you typed: an engineer or the building office answers for it",
  };
  if (!hasSlab(foundation)) return { ...rule, height: null, place: "no slab lies on the ground inside" };
  return {
    ...rule,
    height: lowestInside.height - stripDepth + most + earthBelowFloor({ foundation, topOfWallAboveFloor }),
    place: `${lowestInside.place}, from a strip of ${length(stripDepth)} up to the base stone`,
    at: [...lowestInside.at],
  };
}

/** T − lowest ground as it is ≤ value. */
function mostShowing({ lowestAtWalls, rules, topOfWallAboveFloor }: AdviceFacts): Rule {
  const rule = {
    id: "mostShowing",
    kind: "notAbove" as const,
    name: "wall out of the ground as it is",
    source: "your own limit",
  };
  if (rules.mostShowing === null)
    return { ...rule, height: null, place: "no limit has been typed", value: 0 };
  return {
    ...rule,
    height: lowestAtWalls.height + rules.mostShowing - topOfWallAboveFloor,
    ...spot(lowestAtWalls),
    value: rules.mostShowing,
  };
}

function at(drive: DriveLimits | null): { at?: [number, number] } {
  return drive ? { at: [...drive.at] } : {};
}

/** The one with the greatest figure. */
function extreme<T>(items: readonly T[], figure: (item: T) => number): T | null {
  return items.reduce<T | null>((best, item) => (best && figure(best) >= figure(item) ? best : item), null);
}
