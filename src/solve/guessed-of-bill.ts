/** What share of a line of the bill rests on guessed ground. */
import { oncePer } from "./once-per";
import type { BillItem, Results } from "./results";

/**
 * 0 to 1; null where it can't be said. Earth moved: by volume. Topsoil, seed: by the area that the work touches. Trench, stone
 * and foundation: by the length of the walls, whose heights they hang on.
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
      return surface === null ? null : shareOfCells(surface.guessed);
    case "trench":
    case "foundation":
    case "drain":
    case "base":
      return guessed.trench;
    case "drive":
      return guessed.drives.length === 0
        ? null
        : guessed.drives.reduce((sum, { share }) => sum + share, 0) / guessed.drives.length;
    default:
      return null;
  }
}

const shareOfCells = oncePer((cells: Uint8Array): number => {
  let count = 0;
  for (const cell of cells) count += cell;
  return cells.length === 0 ? 0 : count / cells.length;
});
