/** Where the level book goes on. */
import type { Setup, Shot } from "./schema";

interface SetupsAndShots {
  readonly setups: readonly Setup[];
  readonly shots: readonly Shot[];
}

/** Set-up that the next row belongs to: one that was begun and has no rows yet, else that of the last row. */
export function setupForNext({ setups, shots }: SetupsAndShots): string | null {
  const newest = setups.at(-1);
  const begun = newest && !shots.some(({ setup }) => setup === newest.id);
  return (begun ? newest.id : (shots.at(-1)?.setup ?? newest?.id)) ?? null;
}
