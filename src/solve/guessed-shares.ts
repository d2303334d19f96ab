/**
 * How much of a drive, a swale and the trench lies on ground that is a guess.
 *
 * Units   shares of the length, 0 to 1.
 * Method  The ground is asked every half a metre along the line; a guess counts for the step it stands in.
 * Source  First principles.
 */
import { type Point, pointAlong, polylineLength } from "../geometry";
import type { Footprint, GradingPlan } from "../grading";
import { type Ground, groundAt } from "../terrain";
import type { GuessedShares } from "./results";

const step = 0.5;
const mostSteps = 2000;

export const nothingGuessed: GuessedShares = { drives: [], swales: [], trench: null };

export function guessedShares(plan: GradingPlan, { ring }: Footprint, ground: Ground): GuessedShares {
  const [first] = ring;
  return {
    drives: plan.drives.map(({ drive, line }) => ({ id: drive.id, share: shareOf(line, ground) })),
    swales: plan.swales.map(({ swale, line }) => ({ id: swale.id, share: shareOf(line, ground) })),
    trench: first ? shareOf([...ring, first], ground) : null,
  };
}

function shareOf(line: readonly Point[], ground: Ground): number {
  const length = polylineLength(line);
  const count = Math.min(mostSteps, Math.max(1, Math.ceil(length / step)));
  let guessed = 0;
  for (let i = 0; i < count; i++) {
    const [x, y] = pointAlong(line, (length * (i + 0.5)) / count).at;
    if (groundAt(ground, x, y)?.guessed !== false) guessed++;
  }
  return guessed / count;
}
