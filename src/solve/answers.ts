/**
 * What people ask about floor, foundation, drive and quantities, answered from the results: the figure, the place that
 * decides, the margin, and what would change it.
 *
 * Units   words in the project's own notation; nothing is computed here that the results don't hold.
 * Source  The questions are the trade's; common practice, no source.
 */

import { outsideBand } from "../advice";
import type { Project } from "../document/schema";
import { formatMass, roundingStep } from "../units";
import { foundationAnswers } from "./answers-foundation";
import { isWithin, roundedInto } from "./limit-standing";
import type { BandRule, BillItem, Results } from "./results";
import type { Words } from "./words";

export type AnswerStep = "shots" | "building" | "drive" | "water" | "floor" | "foundation" | "quantities";

export interface Answer {
  readonly id: string;
  readonly question: string;
  /** The figure, in a sentence; empty where it can't be told yet. */
  readonly answer: string;
  readonly where: string;
  readonly margin: string;
  /** What would change it. */
  readonly change: string;
  /** The step where it is worked on. */
  readonly step: AnswerStep;
}

export interface Asked {
  readonly project: Project;
  readonly results: Results;
  readonly words: Words;
}

export type Answering = (asked: Asked) => Answer | null;

/** Those that can be answered, in the order of the job. */
export function answers(project: Project, results: Results, words: Words): Answer[] {
  const asked = { project, results, words };
  const all: readonly Answering[] = [
    groundFall,
    howHigh,
    wallShowing,
    howMuchFill,
    digOrBuild,
    ownCut,
    driveGrade,
    slopeOrWall,
    ...foundationAnswers,
    stone,
    cost,
    disturbed,
  ];
  return all.flatMap((each) => each(asked) ?? []);
}

export function amount({ bill }: Results, id: string): BillItem | undefined {
  return bill.find((item) => item.id === id);
}

function groundFall({ results, words }: Asked): Answer | null {
  const { corners } = results;
  const [first] = corners;
  if (!first) return null;
  const high = corners.reduce((a, b) => (b.ground > a.ground ? b : a));
  const low = corners.reduce((a, b) => (b.ground < a.ground ? b : a));
  const apart = Math.hypot(high.x - low.x, high.y - low.y);
  const fall = high.ground - low.ground;
  return {
    id: "ground-fall",
    question: "How much does the ground fall across the building?",
    answer: `${words.length(fall)}, ${words.slope(apart > 0 ? fall / apart : 0)} from corner to corner`,
    where: `from ${high.name} down to ${low.name}`,
    margin: corners.some(({ guessed }) => guessed)
      ? "a corner lies outside the shots: its height is a guess"
      : "",
    change: "Turn or move the building along the contours.",
    step: "building",
  };
}

function howHigh({ project: { display }, results, words }: Asked): Answer | null {
  const { band, floor } = results;
  if (floor === null || band.rules.length === 0) return null;
  const { lowRule, highRule, clash } = band;
  const step = roundingStep(display.length, display.rounding);
  const told = (rule: BandRule) => `${rule.name} (${rule.place})`;
  const base = { id: "how-high", question: "How high should the floor be?", step: "floor" as const };
  if (band.empty)
    return {
      ...base,
      answer: "no height keeps every limit",
      where: clash ? `${told(clash.low)} against ${told(clash.high)}` : "",
      margin: clash ? `${words.length(clash.gap)} apart` : "",
      change: "Look for ways out in the floor's step: each is worked out in full.",
    };
  const ends = [
    band.low === null ? "" : `from ${words.length(roundedInto(band.low, "up", step))}`,
    band.high === null ? "" : `up to ${words.length(roundedInto(band.high, "down", step))}`,
  ].filter((end) => end !== "");
  const outside = outsideBand(band, floor);
  const spare = Math.min(
    band.low === null ? Number.POSITIVE_INFINITY : floor - band.low,
    band.high === null ? Number.POSITIVE_INFINITY : band.high - floor,
  );
  return {
    ...base,
    answer: ends.length === 0 ? "nothing limits it" : ends.join(" "),
    where: [lowRule && `below it: ${told(lowRule)}`, highRule && `above it: ${told(highRule)}`]
      .filter(Boolean)
      .join("; "),
    margin: outside
      ? `the floor now stands ${words.length(outside.by)} too ${outside.way}`
      : Number.isFinite(spare)
        ? `the floor now has ${words.length(spare)} to spare`
        : "",
    change: "The two rules at its ends: their values, or what they are measured at.",
  };
}

function wallShowing({ results, words }: Asked): Answer | null {
  const { corners } = results;
  if (corners.length === 0) return null;
  const most = corners.reduce((a, b) => (b.wallAboveGround > a.wallAboveGround ? b : a));
  const shown = corners.reduce((a, b) => (b.wallAboveFinished > a.wallAboveFinished ? b : a));
  return {
    id: "wall-showing",
    question: "How much wall shows at the low corner?",
    answer: `${words.length(shown.wallAboveFinished)} above the finished ground at most; ${words.length(most.wallAboveGround)} out of the ground as it is`,
    where: `corner ${shown.name}; corner ${most.name}`,
    margin: "",
    change: "A lower floor, or more fill against that side: each keeps its own slope.",
    step: "floor",
  };
}

function howMuchFill({ project, results, words }: Asked): Answer | null {
  const fill = amount(results, "fill");
  const loose = amount(results, "fill-loose");
  const granular = amount(results, "slab-fill-loose");
  const loads = amount(results, "fill-loads");
  const { earthwork } = results;
  if (!fill || !loose || !loads || !earthwork) return null;
  return {
    id: "how-much-fill",
    question: "How much fill does it take?",
    answer: `${words.volume(fill.quantity)} compacted, ${words.volume(loose.quantity + (granular?.quantity ?? 0))} loose${project.materials.cutAsFill ? " to bring" : ""}${granular ? ` (${words.volume(granular.quantity)} of it sand or gravel under the slab)` : ""}, ${loads.quantity} ${loads.quantity === 1 ? "load" : "loads"}`,
    where: `before the strip, ${words.volume(earthwork.inside.fill)} of it under the floor, ${words.volume(earthwork.outside.fill)} outside`,
    margin: between(fill.range, words.volume),
    change: "The floor's height first; then the side slopes and the apron's width.",
    step: "quantities",
  };
}

/** A range that shows in the plan's own rounding. */
function between(range: BillItem["range"], print: (quantity: number) => string): string {
  if (!range) return "";
  const [low, high] = range.map(print);
  return low === high ? "" : `between ${low} and ${high}`;
}

function digOrBuild({ results, words }: Asked): Answer | null {
  const { curve, floor } = results;
  if (floor === null || curve.length < 2) return null;
  const at = (height: number) => {
    const next = curve.findIndex((point) => point.floor >= height);
    const [a, b] = [curve[next - 1], curve[next]];
    if (!a || !b) return null;
    const share = (height - a.floor) / (b.floor - a.floor);
    return { cut: a.cut + share * (b.cut - a.cut), fill: a.fill + share * (b.fill - a.fill) };
  };
  const told = [-0.3048, 0, 0.3048].flatMap((step) => {
    const found = at(floor + step);
    return found
      ? [
          `at ${words.length(floor + step)} ${words.volume(found.cut)} of cut, ${words.volume(found.fill)} of fill`,
        ]
      : [];
  });
  return {
    id: "dig-or-build",
    question: "Dig in or build up?",
    answer: told.join("; "),
    where: "before the strip, inside and outside the walls",
    margin: "",
    change: "Keep two floors as options: they stand side by side with loads, drive and exposure.",
    step: "floor",
  };
}

function ownCut({ results, words }: Asked): Answer | null {
  const left = amount(results, "left-over");
  const short = amount(results, "short");
  const told = left ?? short;
  if (!told) return null;
  const balance = results.balance?.floor ?? null;
  return {
    id: "own-cut",
    question: "Can my own cut make the fill?",
    answer: left
      ? `yes, with ${words.volume(left.quantity)} left over in the bank`
      : `no, ${words.volume(told.quantity)} short in the bank`,
    where: "after shrink; topsoil, and sand or gravel under the slab, not counted",
    margin:
      balance === null
        ? "at none of the floors looked at"
        : `it just makes it at ${words.length(balance)}${isWithin(results.band.spans, balance) ? "" : ", which the limits don't allow"}`,
    change:
      "Only if the cut is fit: no topsoil, no roots, not wet. Clay under a slab is an engineer's question.",
    step: "quantities",
  };
}

function driveGrade({ project, results, words }: Asked): Answer | null {
  const steepest = results.drives.reduce<Results["drives"][number] | null>(
    (worst, drive) => (worst && worst.steepest >= drive.steepest ? worst : drive),
    null,
  );
  if (!steepest) return null;
  const limit = project.rules.steepestDrive;
  const over = steepest.pieces.reduce(
    (sum, { from, to, over: tooSteep }) => (tooSteep ? sum + to - from : sum),
    0,
  );
  const touching = steepest.underside && !steepest.underside.passes;
  const spare = limit - steepest.steepest;
  return {
    id: "drive-grade",
    question: "Will the drive be too steep?",
    answer: `${words.slope(steepest.steepest)} at its steepest, ${steepest.climbs ? "climbing" : "falling"} to the door${touching ? `; a ${steepest.underside?.vehicle} touches it` : ""}`,
    where: steepest.name,
    margin:
      spare >= -1e-9
        ? `${words.slope(Math.max(0, spare))} below your limit of ${words.slope(limit)}`
        : `${words.length(over)} of it lie over your limit of ${words.slope(limit)}`,
    change:
      "A lower floor, a longer way, or a break rounded by a vertical curve. Ice and trailers ask for less than a car.",
    step: "drive",
  };
}

function slopeOrWall({ results, words }: Asked): Answer | null {
  const sides = results.grading?.sides.filter(({ graded }) => graded) ?? [];
  const [first] = sides;
  if (!first) return null;
  const endless = sides.find(({ meets }) => !meets);
  const base = {
    id: "slope-or-wall",
    question: "Fill slope or retaining wall?",
    change: `A steeper slope, a lower floor, or a wall: over about ${words.rule("4 ft", "1.2 m")} from the bottom of its footing, or loaded from above, it wants an engineer.`,
    step: "drive" as const,
  };
  if (endless)
    return {
      ...base,
      answer: `${endless.farther === null ? "the slope never meets the ground" : `the slope meets the ground only about ${words.length(Math.round(endless.farther))} out`}${endless.endWall ? `: a wall of ${words.length(endless.endWall.height)} would end it` : ""}`,
      where: `wall ${endless.name}`,
      margin: "",
    };
  const reach = (side: (typeof sides)[number]) => Math.max(side.fill?.distance ?? 0, side.cut?.distance ?? 0);
  const farthest = sides.reduce((a, b) => (reach(b) > reach(a) ? b : a), first);
  const [fit] = results.grading?.fits ?? [];
  return {
    ...base,
    answer: fit
      ? `${fit.what} ${fit.clear > 0 ? `comes nearer than ${words.length(fit.clear)} to` : "passes"} ${fit.line}: ${fit.slope === null ? "no slope ends there" : `a slope of ${fit.slope.toFixed(1)} : 1 would`}, or a wall of ${words.length(fit.wallHeight)}`
      : `the slopes end ${words.length(reach(farthest))} from the wall at most`,
    where: `wall ${farthest.name}`,
    margin: fit ? "" : "nothing is passed",
  };
}

function stone({ project, results, words }: Asked): Answer | null {
  const items = results.bill.filter(
    ({ stage, trucked, quantity }) => ["base", "drive", "drain"].includes(stage) && trucked && quantity > 0,
  );
  if (items.length === 0) return null;
  const loads = items.reduce((sum, { trucked }) => sum + (trucked?.loads ?? 0), 0);
  const loose = items.reduce((sum, { trucked }) => sum + (trucked?.loose ?? 0), 0);
  const mass = items.reduce((sum, { trucked }) => sum + (trucked?.mass ?? 0), 0);
  const weight = formatMass(mass, project.display.volume === "yd3" ? "ton" : "t");
  return {
    id: "stone",
    question: "How much stone, and in how many loads?",
    answer: `${words.volume(loose)} loose, ${weight}, ${loads} ${loads === 1 ? "load" : "loads"}`,
    where: items.map(({ item }) => item.toLowerCase()).join(", "),
    margin: "each kind comes in whole loads",
    change: `Thickness of base and drive, and your truck. Whether it can get in: ${words.rule("12 ft", "3.7 m")} of width, firm ground and no wires over it are common practice.`,
    step: "quantities",
  };
}

function cost({ results, words }: Asked): Answer | null {
  const { costs, cost: total } = results;
  if (!costs) return null;
  const { leastAllowed } = costs;
  return {
    id: "cost",
    question: "What does it cost, and where is it least?",
    answer: `${total.total.toFixed(0)} for what is priced, at this floor`,
    where:
      total.unpriced.length > 0
        ? total.unpriced.length === 1
          ? "1 item has no price yet"
          : `${total.unpriced.length} items have no price yet`
        : "every item has a price",
    margin: leastAllowed
      ? `least within the limits: ${leastAllowed.total.toFixed(0)} at ${words.length(leastAllowed.floor)}`
      : "no floor keeps every limit",
    change: "Options side by side show each with its cost.",
    step: "quantities",
  };
}

/** One acre, m2: where a permit for storm water from building sites begins in the United States (40 CFR 122.26, from memory). */
const ACRE = 4046.8564224;

function disturbed({ results, words }: Asked): Answer | null {
  const { earthwork } = results;
  if (!earthwork) return null;
  return {
    id: "disturbed",
    question: "How much ground is disturbed?",
    answer: `${words.area(earthwork.disturbedArea)}, ${(earthwork.disturbedArea / ACRE).toFixed(2)} acre`,
    where: "building, drive and all that is graded",
    margin:
      earthwork.disturbedArea < ACRE
        ? "under 1 acre, where a storm-water permit begins in many places; local rules may begin sooner"
        : "over 1 acre: ask for the storm-water permit before any digging",
    change: "Narrower aprons and steeper slopes; piles and ways of machines count too and aren't in it.",
    step: "quantities",
  };
}
