/** Corners at which the finished ground stands at two heights, in words. */
import { cornerName, type GradingPlan } from "../grading";
import type { Problem } from "./results";
import type { Words } from "./words";

/** A step lower than this is raked out by hand, m. Our own choice. */
const raked = 0.1;

/** Where two graded sides that show different heights of wall meet, the ground goes from one to the other at the corner itself. */
export function cornerSteps({ footprint: { walls }, pad }: GradingPlan, words: Words): Problem[] {
  return walls.flatMap((wall, i): Problem[] => {
    const before = (i + walls.length - 1) % walls.length;
    if (pad.leave[i] || pad.leave[before]) return [];
    const edgeOf = (side: number) => (pad.sides?.[side] ?? pad).edgeAboveFloor;
    const step = Math.abs(edgeOf(i) - edgeOf(before));
    if (step < raked) return [];
    const higher = edgeOf(i) > edgeOf(before) ? i : before;
    return [
      {
        code: "grading-corner-step",
        severity: "caution",
        where: `corner ${cornerName(i)}`,
        what: `Beside it the finished ground of wall ${walls[higher]?.name} stands ${words.length(step)} higher than that of wall ${walls[higher === i ? before : i]?.name}: a step at the corner that loose earth doesn't hold.`,
        how: "Let both sides show the same height of wall, or hold the step with a retaining wall out from the corner.",
        at: [...wall.start],
      },
    ];
  });
}
