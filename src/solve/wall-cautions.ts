/**
 * What the person should know of retaining walls, in words.
 *
 * Source  International Building Code 2012, 105.2: over 4 ft from the bottom of the footing, or with a load above at any
 *         height, they want a permit. Local rules and licensed people decide.
 */
import type { Grading } from "../document/schema";
import { compass } from "../units";
import type { Problem, RetainingResult } from "./results";
import type { Words } from "./words";

/** 4 ft, m. */
const permitHeight = 1.2192;

export function wallCautions(
  walls: readonly RetainingResult[],
  grading: Grading,
  north: number,
  words: Words,
): Problem[] {
  return walls.flatMap((wall) => [...asBuilt(wall, words), ...roundEnds(wall, grading, north, words)]);
}

function asBuilt(wall: RetainingResult, words: Words): Problem[] {
  const common = { where: wall.name, at: wall.at, ids: [wall.id] };
  const problems: Problem[] = [];
  if (wall.fromFooting > permitHeight && wall.exposed > 0)
    problems.push({
      ...common,
      code: "retaining-wall-high",
      severity: "caution",
      what: `It is ${words.length(wall.fromFooting)} high from the bottom of its footing.`,
      how: `Over ${words.rule("4 ft", "1.22 m")} walls usually need a permit and an engineer's design (International Building Code 105.2). Take two lower walls with a terrace between them, or ask.`,
    });
  if (wall.loadedBy)
    problems.push({
      ...common,
      code: "retaining-wall-loaded",
      severity: "caution",
      what: `It carries a load from above: ${wall.loadedBy}.`,
      how: "With a load above it a wall of any height usually needs a permit and an engineer's design (International Building Code 105.2).",
    });
  if (wall.short > 0.005)
    problems.push({
      ...common,
      code: "retaining-wall-short",
      severity: "caution",
      what: `As typed it is ${words.length(wall.short)} too low for what it holds, which would stand ${words.length(Math.max(wall.holds, wall.exposed))} above the ground in front.`,
      how: "Make it higher, or the slope behind it steeper: as it is, the ground is cut back to the wall's height and slopes from there.",
    });
  if (wall.exposed <= 0.005)
    problems.push({
      ...common,
      code: "retaining-wall-holds-nothing",
      severity: "note",
      what: "No cut or fill comes to it, so it holds nothing.",
      how: "Move it to where the slope runs, or change which side is the lower one.",
    });
  return problems;
}

/** Earth of a typed height that runs round the wall's ends. */
function roundEnds(wall: RetainingResult, { walls }: Grading, north: number, words: Words): Problem[] {
  const [worst] = [...wall.ends].sort((a, b) => b.past - a.past);
  if (!worst) return [];
  const cut = walls.find(({ id }) => id === wall.id)?.holds === "cut";
  const past = wall.ends.map(
    (end) =>
      `${end.meets ? "" : "more than "}${words.length(end.past)} past its ${compass(end.towards, north)} end`,
  );
  const mend =
    "draw a wall with no height typed on from the end, which goes down with the slope, or turn it back into the higher ground";
  return [
    {
      code: "retaining-wall-ends",
      severity: "caution",
      where: wall.name,
      what: `${cut ? "The cut" : "Fill"} runs round ${past.length > 1 ? "both its ends" : "its end"} ${cut ? "into the ground behind" : "on to the ground in front"}: ${past.join(" and ")}.`,
      how:
        wall.wantedLength === null
          ? `It meets no ground there: ${mend}.`
          : `To keep it back the wall would be ${words.length(wall.wantedLength)} long in all: ${mend}.`,
      at: worst.at,
      ids: [wall.id],
    },
  ];
}
