/** The foundation on the page that solve prints. */
import { foundationWords } from "../document/foundationWords";
import type { Project } from "../document/schema";
import type { CoverCheck, FoundationResult, Results } from "../solve/results";

export interface FoundationFigures {
  readonly length: (m: number) => string;
  readonly volume: (m3: number) => string;
  readonly slope: (ratio: number) => string;
}

export function foundationLines(project: Project, results: Results, words: FoundationFigures): string[] {
  const { foundation } = results;
  if (!foundation || !project.building) return [];
  return [
    `Foundation: ${foundationWords(project.building.foundation)}`,
    ...coverLines(foundation, words),
    ...stepLines(foundation, words),
    ...digLines(foundation, words),
    ...wallLines(foundation, words),
    ...slabLines(foundation, words),
    ...doorLines(foundation, words),
    ...takeOffLines(foundation, words),
  ];
}

function coverLines({ cover, levelFooting }: FoundationResult, words: FoundationFigures): string[] {
  const line = (what: string, { least, at, needed, failing }: CoverCheck) => {
    const asked = needed === null ? "no frost depth typed" : `${words.length(needed)} asked for`;
    const fails = failing.length > 0 ? `; fails at ${failing.join(", ")}` : "";
    return `  ${what}: least ${words.length(least)} at ${at.place} (${asked}${fails})`;
  };
  const counts = (name: "finished" | "undisturbed") =>
    cover.counts === name ? ", which counts for frost" : "";
  return [
    line(`below finished ground${counts("finished")}`, cover.finished),
    line(`below the ground as it is${counts("undisturbed")}`, cover.undisturbed),
    line("into undisturbed ground", cover.bearing),
    ...(levelFooting
      ? [
          `  a level footing ${levelFooting.takes < 0 ? `would have to lie ${words.length(-levelFooting.takes)} deeper even on level ground` : `takes ${words.length(levelFooting.takes)} of fall along the walls`}; there is ${words.length(levelFooting.fall)}`,
        ]
      : []),
  ];
}

function stepLines({ stepped }: FoundationResult, words: FoundationFigures): string[] {
  if (!stepped) return [];
  const asked = stepped.asked.map((why) => `  steps are asked for: ${why}`);
  if (!stepped.on) return asked;
  const { steps, levels, rise, overlap, saved } = stepped;
  return [
    ...asked,
    `  ${steps.length} steps of ${words.length(rise)}, ${levels} down at most, lapped ${words.length(overlap)}; ${words.volume(saved)} of concrete saved against a level trench`,
  ];
}

function digLines({ dig, posts }: FoundationResult, words: FoundationFigures): string[] {
  if (!dig) return [`  ${posts.length} holes`];
  const { volume, backfill, leftOver, deepest, sides, widestTop } = dig;
  return [
    `  trench: ${words.volume(volume)} to dig, in the bank; ${words.volume(backfill)} goes back, compacted; ${words.volume(leftOver)} left over, in the bank; deepest ${words.length(deepest.depth)} at ${deepest.at.place}, sides ${sides}, up to ${words.length(widestTop)} wide at the top`,
  ];
}

function wallLines({ unbalanced }: FoundationResult, words: FoundationFigures): string[] {
  return unbalanced
    .filter(({ holds }) => holds !== "none")
    .map(({ name, worst, holds, limit, passes }) => {
      const most = limit === null ? "no such wall in the tables" : `${words.length(limit)} published limit`;
      return `  wall ${name}: holds ${words.length(worst)} of fill from ${holds} (${most})${passes ? "" : ": ask an engineer"}`;
    });
}

function slabLines({ slabFill }: FoundationResult, words: FoundationFigures): string[] {
  if (!slabFill) return [];
  const { greatest, lifts, lift, limit, passes } = slabFill;
  const over = passes ? "" : ", over the published limit";
  return [
    `  under the slab: up to ${words.length(Math.max(0, greatest))} of fill in ${lifts} lifts of ${words.length(lift)} (${words.length(limit)} at most${over})`,
  ];
}

function doorLines({ doors }: FoundationResult, words: FoundationFigures): string[] {
  return doors.map(({ name, drop, drive, steps }) => {
    const to = drive
      ? `${drive.name} ends ${words.length(drive.lip)} below its sill, steepest ${words.slope(drive.steepest)}`
      : `sill ${words.length(drop)} above the ground outside`;
    return `  ${name}: ${to}${steps ? `, ${steps.risers} risers of ${words.length(steps.rise)}` : ""}`;
  });
}

function takeOffLines({ takeOff }: FoundationResult, words: FoundationFigures): string[] {
  const { footing, wall, slab, edge, pads, withWaste, blocks } = takeOff;
  const parts = [
    ["footing", footing],
    ["wall", blocks ? 0 : wall],
    ["slab", slab],
    ["thickened edge", edge],
    ["pads", pads],
  ] as const;
  const told = parts.filter(([, m3]) => m3 > 0).map(([what, m3]) => `${what} ${words.volume(m3)}`);
  return [
    `  concrete: ${told.join(", ")}; ${words.volume(withWaste)} with waste`,
    ...(blocks ? [`  blocks: ${blocks.count} (${blocks.courses} courses of ${blocks.perCourse})`] : []),
  ];
}
