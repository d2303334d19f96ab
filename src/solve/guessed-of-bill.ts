/** What share of a line of the bill rests on guessed ground. */
import { oncePer } from "./once-per";
import type { BillItem, GroundGrid, Results } from "./results";

/**
 * 0 to 1; null where it can't be said. Earth moved: by volume. Topsoil, seed: by the area that the work touches. Stone and sheet
 * under the floor: by the area within the walls. Trench and foundation: by the length of the walls, whose heights they hang on.
 */
export function guessedOfItem(
  { stage }: Pick<BillItem, "stage">,
  { earthwork, surface, guessed }: Pick<Results, "earthwork" | "surface" | "guessed">,
): number | null {
  switch (stage) {
    case "earth":
      return earthwork?.guessedShare ?? null;
    case "strip":
    case "topsoil":
      return surface === null ? null : shareOfWork(surface);
    case "base":
      return surface === null ? null : shareWithinWalls(surface);
    case "trench":
    case "foundation":
    case "drain":
      return guessed.trench;
    case "drive":
      return guessed.drives.length === 0
        ? null
        : guessed.drives.reduce((sum, { share }) => sum + share, 0) / guessed.drives.length;
    default:
      return null;
  }
}

/** A depth that counts as disturbed ground, m. */
const disturbed = 1e-3;

const shareOfWork = oncePer((surface: GroundGrid) =>
  shareOf(surface, (i) => surface.inside[i] === 1 || Math.abs(surface.depth[i] as number) > disturbed),
);

const shareWithinWalls = oncePer((surface: GroundGrid) => shareOf(surface, (i) => surface.inside[i] === 1));

function shareOf({ guessed }: GroundGrid, counts: (cell: number) => boolean): number {
  let [all, guesses] = [0, 0];
  for (let i = 0; i < guessed.length; i++) {
    if (!counts(i)) continue;
    all++;
    guesses += guessed[i] as number;
  }
  return all === 0 ? 0 : guesses / all;
}
