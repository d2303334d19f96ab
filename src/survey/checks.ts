/**
 * Second looks: what a check shot found against what was known.
 *
 * Sign    shift = found - known, m. Positive: the point seems higher than before, so the beam has sunk below where it
 *         is believed to be.
 */
import type { Shot } from "../document/schema";
import type { Problem } from "../solve/results";
import type { Beams } from "./beams";
import { apart, gravity } from "./limits";
import { named, placeOf, type References, shotInWords } from "./references";

/** Height of what a check shot looked at again, null while it is unknown. */
export function knownBefore(shot: Shot, beams: Beams, refs: References): number | null {
  const of = shot.of ?? "";
  const mark = refs.marks.get(of);
  if (mark !== undefined) return mark.height.m;
  const first = refs.shots.get(of);
  const beam = first === undefined ? undefined : beams.get(first.setup);
  if (first === undefined || first === shot || first.reading === null || beam === undefined) return null;
  return beam.height - first.reading.m;
}

/** What is to be said of a check shot: it looks at nothing, or the laser seems to have moved. */
export function checkProblems(shot: Shot, shift: number | null, refs: References): Problem[] {
  const of = shot.of ?? "";
  const looked = refs.marks.get(of) ?? refs.shots.get(of);
  if (looked === undefined || looked === shot) return [looksAtNothing(shot, refs)];
  const severity = shift === null ? null : gravity(shift);
  if (shift === null || severity === null) return [];
  const setup = refs.setups.get(shot.setup);
  const from = setup === undefined ? "" : `set-up ${named(setup)}, `;
  const at = placeOf(shot, refs);
  return [
    {
      code: "laser-moved",
      severity,
      where: from + shotInWords(shot, refs),
      what: `The second look at ${named(looked)} comes out ${apart(shift)} ${shift > 0 ? "higher" : "lower"} than before: the laser seems to have moved, or one of the readings is wrong.`,
      how: "Read both again. If the laser was bumped, start a new set-up from the mark and repeat the shots since the last good check.",
      ids: [shot.id, shot.setup],
      ...(at === null ? {} : { at }),
    },
  ];
}

function looksAtNothing(shot: Shot, refs: References): Problem {
  const why =
    shot.of === null
      ? "doesn't say of what"
      : shot.of === shot.id
        ? "names itself"
        : refs.aside.has(shot.of)
          ? "names a shot that is set aside"
          : "names something that isn't there";
  return {
    code: "check-of-nothing",
    severity: "error",
    where: shotInWords(shot, refs),
    what: `It is a second look, but ${why}.`,
    how: "Choose the mark or the shot that was looked at again.",
    ids: [shot.id],
  };
}
