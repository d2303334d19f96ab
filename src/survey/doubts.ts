/** Readings that are asked about, not refused: they look as if typed in another unit or with a slip. */
import type { Shot } from "../document/schema";
import type { Problem } from "../solve/results";
import { LARGER, LONGEST_ROD, MUCH_LARGER, MUCH_SMALLER } from "./limits";
import { placeOf, type References, shotInWords } from "./references";

/** Needed before one reading can be called out of line with the others of its set-up. */
const ENOUGH_NEIGHBOURS = 3;

export function doubtfulReadings(shots: readonly Shot[], refs: References): Problem[] {
  const bySetup = new Map<string, Shot[]>();
  for (const shot of shots) {
    // What a rod shows that reads up, or from a zero of its own, can be any number.
    if (shot.reading === null || refs.setups.get(shot.setup)?.rod.kind !== "plain") continue;
    const list = bySetup.get(shot.setup);
    if (list === undefined) bySetup.set(shot.setup, [shot]);
    else list.push(shot);
  }
  return [...bySetup.values()].flatMap((group) => doubtsInSetup(group, refs));
}

function doubtsInSetup(group: readonly Shot[], refs: References): Problem[] {
  const sizes = group.map((shot) => Math.abs(shot.reading?.m ?? 0)).sort((a, b) => a - b);
  const middle = sizes[Math.floor(sizes.length / 2)] ?? 0;
  const usual = group.length > ENOUGH_NEIGHBOURS ? middle : null;
  return group.flatMap((shot) => {
    const doubt = shot.accepted ? null : doubtAbout(shot.reading?.m ?? 0, usual);
    return doubt === null ? [] : [doubtProblem(shot, doubt, refs)];
  });
}

function doubtAbout(reading: number, usual: number | null): string | null {
  if (reading < 0) return "is above the beam, where a laser can't be read";
  if (usual !== null && reading > usual * MUCH_LARGER)
    return "is many times larger than the others from this set-up";
  if (usual !== null && reading < usual / MUCH_SMALLER)
    return "is many times smaller than the others from this set-up";
  const steep = usual !== null && reading <= usual * LARGER;
  return reading > LONGEST_ROD && !steep ? "is longer than common rods are" : null;
}

function doubtProblem(shot: Shot, doubt: string, refs: References): Problem {
  const at = placeOf(shot, refs);
  return {
    code: "reading-doubtful",
    severity: "caution",
    where: shotInWords(shot, refs),
    what: `The reading ${shot.reading?.text} ${doubt}.`,
    how: "Is its unit right, and no figure too many? If it is right, accept it.",
    ids: [shot.id],
    ...(at === null ? {} : { at }),
  };
}
