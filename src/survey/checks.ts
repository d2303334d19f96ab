/**
 * Second looks: what a check shot found against what was known.
 *
 * Sign    shift = found - known, m. Positive: the point seems higher than before, so the beam has sunk below where it
 *         is believed to be.
 */
import type { Setup, Shot } from "../document/schema";
import type { BeamMove, Fix, Problem } from "../solve/results";
import type { Beams } from "./beams";
import { apart, gravity } from "./limits";
import type { Pieces } from "./pieces";
import type { Readings } from "./readings";
import { lookedAt, named, placeOf, type References, shotInWords } from "./references";

/** Height of what a check shot looked at again, null while it is unknown. */
export function knownBefore(
  shot: Shot,
  beams: Beams,
  refs: References,
  readings: Readings,
  pieces: Pieces,
): number | null {
  const of = shot.of ?? "";
  const mark = refs.marks.get(of);
  if (mark !== undefined) return mark.height.m;
  const first = lookedAt(shot, refs);
  if (first === undefined || first === shot) return null;
  const beam = beams.get(pieces.of.get(first)?.id ?? "");
  const reading = readings.get(first);
  return reading === undefined || beam === undefined ? null : beam.height - reading.down;
}

/** What is to be said of a step that was found: which readings hang on the check, which wait. */
export function moveProblem(setup: Setup, move: BeamMove, refs: References): Problem {
  const check = refs.shots.get(move.check);
  const from = move.from === null ? undefined : refs.shots.get(move.from);
  const what = `The laser moved by ${apart(move.by, refs.notation)} ${move.by > 0 ? "up" : "down"}`;
  const count = move.waiting.length;
  const base = {
    code: "laser-moved",
    where: `set-up ${named(setup)}${check === undefined ? "" : `, ${shotInWords(check, refs)}`}`,
    ids: [move.check, setup.id, ...move.waiting],
  };
  if (count > 0) {
    return {
      ...base,
      severity: "error",
      what: `${what}, and nobody knows when: the ${count === 1 ? "one shot" : `${count} shots`} since the last good look ${count === 1 ? "waits" : "wait"} without a height.`,
      how: "Say from which row on the laser stood where it is now; or shoot two of them again as second looks. If this check was misread, set it aside.",
      fixes: check === undefined ? [] : [...shootAgain(move, refs), ...bumpFixes(check, refs)],
    };
  }
  // Two shots shot again, or the user's own word, make a step sure; one reading by itself may be a slip.
  const isTold = setup.bumps.some(({ check: told }) => told === move.check);
  return {
    ...base,
    severity: isTold ? "note" : "caution",
    what: `${what}${from === undefined ? "" : ` before ${shotInWords(from, refs)}`}; later readings of this set-up hang on the second look.`,
    how: isTold
      ? "Nothing is to be done. If the laser wasn't moved, set the second look aside."
      : "Say that the laser was bumped; if this check was misread, set it aside.",
    fixes: check === undefined ? [] : bumpFixes(check, refs),
  };
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
      what: `The second look at ${named(looked)} comes out ${apart(shift, refs.notation)} ${shift > 0 ? "higher" : "lower"} than before: the laser seems to have moved, or one of the readings is wrong.`,
      how: "Read both again. If the laser was bumped, say from which row on; where nobody knows, the shots since the last good look wait until two of them are shot again.",
      ids: [shot.id, shot.setup],
      fixes: [unknownBump(shot), ...bumpFixes(shot, refs)],
      ...(at === null ? {} : { at }),
    },
  ];
}

/** Two of the shots that wait, as rows to be read again. */
function shootAgain({ waiting }: BeamMove, refs: References): Fix[] {
  const two = waiting.slice(0, 2).flatMap((id) => refs.shots.get(id) ?? []);
  if (two.length < 2) return [];
  const words = `Add rows: ${two.map((shot) => plainName(shot, refs)).join(" and ")} again`;
  return [{ words, edits: [{ command: "survey.lookAgain", args: { shots: two.map(({ id }) => id) } }] }];
}

function unknownBump({ id }: Shot): Fix {
  return {
    words: "Bumped, nobody knows when",
    edits: [{ command: "survey.reportBump", args: { check: id, from: null } }],
  };
}

/** What may have happened: bumped before one of the rows since the look before, or the look itself misread. */
function bumpFixes(check: Shot, refs: References): Fix[] {
  const before = sinceLastLook(check, refs).map(
    (shot): Fix => ({
      words: plainName(shot, refs),
      choice: "Bumped before",
      edits: [{ command: "survey.reportBump", args: { check: check.id, from: shot.id } }],
    }),
  );
  const misread: Fix = {
    words: "Not bumped, misread: set it aside",
    edits: [
      { command: "survey.removeBump", args: { setup: check.setup, check: check.id } },
      { command: "survey.setAside", args: { id: check.id, aside: true } },
    ],
  };
  return [...before, misread];
}

/** Rows of a set-up after its last look at a known height, up to and with this one. */
function sinceLastLook(check: Shot, refs: References): Shot[] {
  const own = [...refs.shots.values()].filter(
    ({ setup, reading }) => setup === check.setup && reading !== null,
  );
  const upTo = own.slice(0, own.indexOf(check) + 1);
  const isLook = upTo.slice(0, -1).map(({ kind, of }) => kind !== "ground" && of !== null);
  return upTo.slice(isLook.lastIndexOf(true) + 1);
}

function plainName(shot: Shot, refs: References): string {
  return shot.name === "" ? `row ${refs.rows.get(shot)}` : shot.name;
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
