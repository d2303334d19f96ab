/**
 * Finds where the laser was bumped and cuts the survey there: the steps that the user told, and those that a second
 * look at a mark shows so plainly that nothing read since the last good look can be trusted.
 */
import type { Mark, Shot, Survey } from "../document/schema";
import type { BeamMove, Problem } from "../solve/results";
import { holdAgreeing } from "./agreeing";
import type { Beams } from "./beams";
import { gravity } from "./limits";
import { cutAtSteps, type Pieces, type Step, sideBySide } from "./pieces";
import type { Readings } from "./readings";
import { lookedAt, type References } from "./references";
import { collectTies, type Ties } from "./ties";

export interface Cut {
  readonly pieces: Pieces;
  readonly ties: Ties;
  /** The ties that beams are taken from: those that agree. */
  readonly held: Ties;
  readonly beams: Beams;
  readonly problems: readonly Problem[];
}

export function cutSurvey(survey: Survey, shots: readonly Shot[], refs: References, readings: Readings): Cut {
  const whole = carry(
    shots,
    refs,
    readings,
    cutAtSteps(shots, [], refs, () => null, new Map()),
  );
  let steps = toldSteps(survey, shots);
  let cut = cutStepByStep(shots, steps, refs, readings, whole);
  // Each round finds the next plain step of every set-up; there are no more of them than checks.
  for (;;) {
    const found = plainSteps(shots, steps, refs, readings, cut);
    if (found.length === 0) return cut;
    steps = [...steps, ...found];
    cut = cutStepByStep(shots, steps, refs, readings, whole);
  }
}

/** What counts as a good look after one step is known only once that step is cut. */
function cutStepByStep(
  shots: readonly Shot[],
  steps: readonly Step[],
  refs: References,
  readings: Readings,
  whole: Cut,
): Cut {
  if (steps.length === 0) return whole;
  const row = new Map(shots.map((shot, i) => [shot, i]));
  const inOrder = [...steps].sort((a, b) => (row.get(a.check) ?? 0) - (row.get(b.check) ?? 0));
  return inOrder.reduce(
    (cut, _, k) => cutAndSettle(shots, inOrder.slice(0, k + 1), refs, readings, cut),
    whole,
  );
}

/** The steps of one set-up, for its result. */
export function movesOf(setup: string, { pieces, beams }: Cut): BeamMove[] {
  const own = pieces.all.filter((piece) => piece.setup.id === setup);
  return own.slice(1).flatMap((piece, i): BeamMove[] => {
    const before = beams.get(own[i]?.id ?? "");
    const after = beams.get(piece.id);
    if (piece.check === null || before === undefined || after === undefined) return [];
    const waiting = piece.waiting.map(({ id }) => id);
    return [{ check: piece.check.id, from: piece.from, by: after.height - before.height, waiting }];
  });
}

function toldSteps(survey: Survey, shots: readonly Shot[]): Step[] {
  const asked = new Set(survey.setups.flatMap(({ bumps }) => bumps.map(({ check }) => check)));
  if (asked.size === 0) return [];
  const byId = new Map(shots.filter(({ id }) => asked.has(id)).map((shot) => [shot.id, shot]));
  return survey.setups.flatMap((setup) =>
    setup.bumps.flatMap(({ check, from }): Step[] => {
      const shot = byId.get(check);
      return shot?.setup === setup.id && shot.kind === "check" ? [{ check: shot, from }] : [];
    }),
  );
}

/** The first check on a mark in each set-up that is grossly off and not yet a step. */
function plainSteps(
  shots: readonly Shot[],
  steps: readonly Step[],
  refs: References,
  readings: Readings,
  cut: Cut,
): Step[] {
  const known = new Set(steps.map(({ check }) => check));
  const found = new Map<string, Step>();
  for (const shot of shots) {
    if (shot.kind !== "check" || known.has(shot) || found.has(shot.setup)) continue;
    const mark = refs.marks.get(shot.of ?? "");
    const shift = mark === undefined ? null : markShift(shot, mark, readings, cut);
    if (shift !== null && gravity(shift) === "error") found.set(shot.setup, { check: shot, from: null });
  }
  return [...found.values()];
}

function markShift(shot: Shot, mark: Mark, readings: Readings, { pieces, beams }: Cut): number | null {
  const beam = beams.get(pieces.of.get(shot)?.id ?? "");
  const reading = readings.get(shot);
  return beam === undefined || reading === undefined ? null : beam.height - reading.down - mark.height.m;
}

/** Cuts at the steps, then lets shots that were shot again find their side. */
function cutAndSettle(
  shots: readonly Shot[],
  steps: readonly Step[],
  refs: References,
  readings: Readings,
  earlier: Cut,
): Cut {
  const shiftOf = (shot: Shot) => lookShift(shot, refs, readings, earlier);
  const first = carry(shots, refs, readings, cutAtSteps(shots, steps, refs, shiftOf, new Map()));
  const kept = new Map<Shot, "before" | "after">();
  const own = (setup: string) => first.pieces.all.filter((piece) => piece.setup.id === setup);
  for (const piece of first.pieces.all) {
    if (piece.waiting.length === 0) continue;
    const siblings = own(piece.setup.id);
    const before = first.beams.get(siblings[siblings.indexOf(piece) - 1]?.id ?? "");
    const after = first.beams.get(piece.id);
    if (before === undefined || after === undefined) continue;
    const second = secondLooks(shots, piece.id, first.pieces, readings);
    const settled = sideBySide(piece.waiting, (shot) => {
      const again = second.get(shot.id);
      const down = readings.get(shot)?.down;
      if (again === undefined || down === undefined) return null;
      const height = after.height - again;
      return {
        before: Math.abs(before.height - down - height),
        after: Math.abs(after.height - down - height),
      };
    });
    for (const [shot, side] of settled ?? []) kept.set(shot, side);
  }
  return kept.size === 0
    ? first
    : carry(shots, refs, readings, cutAtSteps(shots, steps, refs, shiftOf, kept));
}

/** Readings taken again after the step, by the id of the shot that was looked at. */
function secondLooks(
  shots: readonly Shot[],
  piece: string,
  pieces: Pieces,
  readings: Readings,
): Map<string, number> {
  const found = new Map<string, number>();
  for (const shot of shots) {
    if (shot.kind !== "check" || shot.of === null || pieces.of.get(shot)?.id !== piece) continue;
    const down = readings.get(shot)?.down;
    if (down !== undefined) found.set(shot.of, down);
  }
  return found;
}

/** What a look at a known height found against it: a mark, a turning point, or a check. Null for all other shots. */
function lookShift(shot: Shot, refs: References, readings: Readings, cut: Cut): number | null {
  const piece = cut.pieces.of.get(shot);
  const beam = cut.beams.get(piece?.id ?? "");
  const reading = readings.get(shot);
  if (beam === undefined || reading === undefined || shot.of === null) return null;
  if (shot.kind === "mark" || shot.kind === "turning") return 0;
  if (shot.kind !== "check") return null;
  const mark = refs.marks.get(shot.of);
  if (mark !== undefined) return beam.height - reading.down - mark.height.m;
  const first = lookedAt(shot, refs);
  const seen = first === undefined ? undefined : readings.get(first);
  const firstBeam = cut.beams.get((first && cut.pieces.of.get(first)?.id) ?? "");
  if (seen === undefined || firstBeam === undefined) return null;
  return beam.height - reading.down - (firstBeam.height - seen.down);
}

function carry(shots: readonly Shot[], refs: References, readings: Readings, pieces: Pieces): Cut {
  const problems: Problem[] = [];
  const ties = collectTies(shots, refs, readings, pieces, problems);
  const witnesses = witnessesIn(shots, refs, readings, pieces);
  const { held, beams } = holdAgreeing(pieces.all, ties, readings, refs.judged, witnesses);
  return { pieces, ties, held, beams, problems };
}

/**
 * Beams by second looks at marks: they say which of two ties that disagree is right. Where the set-up read that mark before,
 * a look that disagrees with it tells of a bump and bears no witness.
 */
function witnessesIn(
  shots: readonly Shot[],
  refs: References,
  readings: Readings,
  pieces: Pieces,
): Map<string, number[]> {
  const found = new Map<string, number[]>();
  const read = new Set<string>();
  for (const shot of shots) {
    if (shot.kind !== "check" && shot.kind !== "mark") continue;
    const [mark, piece, reading] = [refs.marks.get(shot.of ?? ""), pieces.of.get(shot), readings.get(shot)];
    if (mark === undefined || piece === undefined || reading === undefined) continue;
    if (shot.kind === "mark") read.add(`${piece.id} ${mark.id}`);
    if (shot.kind === "mark" || piece.check === shot || read.has(`${piece.id} ${mark.id}`)) continue;
    const list = found.get(piece.id) ?? [];
    list.push(mark.height.m + reading.down);
    found.set(piece.id, list);
  }
  return found;
}
