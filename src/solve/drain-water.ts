/**
 * Water in the test pits against the drain round the footing: whether it stands above the drain, and above its outlet.
 *
 * Units   metres; positive: the water stands above the invert.
 * Method  Depth of the water at a place by the pits (survey/pits.ts), below the ground as it is there.
 * Limits  Water stands where it stood on the day of the pit; in a wet season it comes higher.
 */
import type { DrainRun } from "../drainage";
import type { Point } from "../geometry";
import { cornerName, type Layout } from "../grading";
import { type PitSpot, pitDepthAt } from "../survey";
import type { DrainInWater, FootingDrainResult, Problem, TrenchCorner } from "./results";
import type { Words } from "./words";

export function drainInWater(
  run: DrainRun,
  ring: readonly Point[],
  trench: readonly TrenchCorner[],
  spots: readonly PitSpot[],
  { grid, existing }: Pick<Layout, "grid" | "existing">,
): DrainInWater | null {
  const ground = new Map(trench.map(({ corner, bottom, belowGround }) => [corner, bottom + belowGround]));
  const corners = ring.flatMap((at, i) => {
    const name = cornerName(i);
    const met = pitDepthAt(spots, "water", at);
    const height = ground.get(name);
    if (met === null || height === undefined) return [];
    return [{ corner: name, count: met.count, above: height - met.depth - (run.inverts[i] as number) }];
  });
  const [first] = corners;
  if (first === undefined) return null;
  const worst = corners.reduce((a, b) => (b.above > a.above ? b : a), first);
  return { ...worst, aboveOutlet: run.outlet && aboveOutlet(run.outlet, spots, grid, existing) };
}

function aboveOutlet(
  { at, invert }: NonNullable<DrainRun["outlet"]>,
  spots: readonly PitSpot[],
  grid: Layout["grid"],
  existing: Layout["existing"],
): number | null {
  const met = pitDepthAt(spots, "water", at);
  const column = Math.min(grid.columns - 1, Math.max(0, Math.floor((at[0] - grid.x0) / grid.cell)));
  const row = Math.min(grid.rows - 1, Math.max(0, Math.floor((at[1] - grid.y0) / grid.cell)));
  const ground = existing[row * grid.columns + column];
  return met === null || ground === undefined ? null : ground - met.depth - invert;
}

/** A drain that lies in the water of the pits never rests, and one whose outlet lies in it doesn't empty. */
export function drainCautions(drain: FootingDrainResult | null, words: Words): Problem[] {
  const found = drain?.pits ?? null;
  if (drain === null || found === null) return [];
  const pits = found.count === 1 ? "By the one test pit that met it" : `By ${found.count} test pits`;
  const base = { severity: "caution" as const, where: "the drain round the footing" };
  const problems: Problem[] = [];
  if (found.aboveOutlet !== null && found.aboveOutlet > 0)
    problems.push({
      ...base,
      code: "water-over-outlet",
      what: `${pits}, water stands ${words.length(found.aboveOutlet)} above its outlet, so it doesn't empty there.`,
      how: "Lead it out lower or farther off, raise the footing, or plan a pump.",
      ...(drain.outlet ? { at: [drain.outlet.at[0], drain.outlet.at[1]] as [number, number] } : {}),
    });
  if (found.above > 0)
    problems.push({
      ...base,
      code: "water-over-drain",
      what: `${pits}, water stands ${words.length(found.above)} above it at corner ${found.corner}: it runs for as long as the water stands so, not only after rain.`,
      how: "See that its outlet stays free all year. Raising the floor, and with it the footing, keeps it drier; what holds water off a floor below it, an engineer says.",
    });
  return problems;
}
