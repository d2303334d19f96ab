/**
 * Does water reach a wall: its own fall away, and water that stands within the rule's distance of it.
 *
 * Units   metres.
 * Method  A pond counts for the wall that its edge comes nearest to. A wall that nothing speaks against, but most of whose
 *         ground is a guess, is not told as passed.
 * Source  IRC R401.3 asks that water be led away where it gathers; that it may not stand within the same 10 ft: our own reading.
 */
import { distanceToSegment, type Point } from "../geometry";
import type { Footprint } from "../grading";
import type { Pond, StandingAtWall, WallFall, WallVerdict, WallWater } from "./results";

/** A pond this near to the walls counts, m: 10 ft. */
const reach = 3.048;
/** From this share of guessed places on nothing is said to pass (our own choice). */
const mostGuessed = 0.5;

/** Verdicts of the walls, in their order; `guessed`: the share of guesses about each. */
export function wallVerdicts(
  falls: readonly WallFall[],
  ponds: readonly Pond[],
  footprint: Footprint,
  guessed: readonly number[],
): WallWater[] {
  const standing = standingAtWalls(ponds, footprint);
  return falls.map((fall) => {
    const water = standing[fall.wall] ?? null;
    const share = guessed[fall.wall] ?? 0;
    const verdict = verdictOf(fall, water, share);
    const passes = verdict === "passes" || verdict === "too few shots";
    return { ...fall, standing: water, guessed: share, verdict, passes };
  });
}

const worst: readonly WallVerdict[] = ["falls too little", "water stands", "too few shots", "passes"];

/** The walls in the order in which they should be looked at. */
export function worstFirst(walls: readonly WallWater[]): WallWater[] {
  const short = ({ fallAway, needed, passes }: WallWater) => (passes ? 0 : fallAway - needed);
  return [...walls].sort(
    (a, b) => worst.indexOf(a.verdict) - worst.indexOf(b.verdict) || short(a) - short(b) || a.wall - b.wall,
  );
}

function verdictOf({ fallsEnough }: WallFall, standing: StandingAtWall | null, guessed: number): WallVerdict {
  if (!fallsEnough) return "falls too little";
  if (standing && !standing.guessed) return "water stands";
  return standing || guessed > mostGuessed ? "too few shots" : "passes";
}

/** Of each wall the nearest water, null where none stands within reach. */
function standingAtWalls(ponds: readonly Pond[], { walls }: Footprint): (StandingAtWall | null)[] {
  const found = walls.map((): StandingAtWall | null => null);
  for (const { depth, guessed, rings } of ponds) {
    for (const ring of rings) {
      for (let i = 0; i + 1 < ring.length; i += 2) {
        const at: [number, number] = [ring[i] as number, ring[i + 1] as number];
        const { wall, off } = nearestWall(at, walls);
        const before = found[wall];
        if (off <= reach && (!before || off < before.off)) found[wall] = { depth, off, at, guessed };
      }
    }
  }
  return found;
}

function nearestWall([x, y]: Point, walls: Footprint["walls"]): { wall: number; off: number } {
  let [wall, off] = [0, Number.POSITIVE_INFINITY];
  walls.forEach(({ start, end }, index) => {
    const away = distanceToSegment(start, end, x, y);
    if (away < off) [wall, off] = [index, away];
  });
  return { wall, off };
}
