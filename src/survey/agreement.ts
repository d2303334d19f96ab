/** The largest group of heights that agree. Metres. */

/** Positions of the heights within `limit` of each other that are the most, witnesses counted; else of those with the first. */
export function agreeing(
  heights: readonly number[],
  witnesses: readonly number[],
  limit: number,
): ReadonlySet<number> {
  let best: ReadonlySet<number> = new Set();
  let most = 0;
  for (const low of heights) {
    const within = (height: number) => height >= low && height - low <= limit;
    const members = heights.flatMap((height, i) => (within(height) ? [i] : []));
    const votes = members.length + witnesses.filter((height) => near(height, low, limit)).length;
    const first = Math.min(...members);
    if (votes < most || (votes === most && first >= Math.min(...best))) continue;
    best = new Set(members);
    most = votes;
  }
  return best;
}

function near(height: number, low: number, limit: number): boolean {
  return height >= low - limit && height <= low + limit;
}
