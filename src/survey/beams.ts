/**
 * The height of every set-up's beam as it is carried from tie to tie, before anything is adjusted.
 *
 * Units   metres.
 * Method  beam = known height + reading, for a reading goes down from the beam. A reading on a mark is known at once,
 *         one on a turning point as soon as the other set-up that read it has its beam. Several ties of a set-up
 *         that agree are averaged with equal weight; one that doesn't is left out of the mean (agreeing.ts). Only what no
 *         reading ties takes its assumed beam.
 * Source  first principles (height of instrument = benchmark + backsight).
 * Limits  ties are averaged set-up by set-up in the order they become known: how far they then disagree is the
 *         misclosure. adjust.ts takes it out of all of them together.
 */
import { agreeing } from "./agreement";
import { BEAM_MOVED } from "./limits";
import type { Piece } from "./pieces";
import type { Tie, Ties } from "./ties";

export interface Beam {
  readonly height: number;
  readonly from: "ties" | "later set-up" | "assumed";
}

/** By the id of the piece; one that nothing ties is missing. */
export type Beams = ReadonlyMap<string, Beam>;

export function carryBeams(
  pieces: Iterable<Piece>,
  ties: Ties,
  witnesses: ReadonlyMap<string, readonly number[]> = new Map(),
): Beams {
  const beams = new Map<string, Beam>();
  const pending = new Set(pieces);
  for (;;) {
    const next =
      tiedByOwnReadings(pending, ties, beams, witnesses) ??
      tiedFromLater(pending, ties, beams) ??
      assumed(pending, ties);
    if (next === null) return beams;
    beams.set(next.piece.id, next.beam);
    pending.delete(next.piece);
  }
}

/** The beam that one tie gives, null while the set-up it leans on has none. */
export function beamBy(tie: Tie, beams: Beams): number | null {
  const known = knownHeight(tie, beams);
  return known === null ? null : known + tie.reading;
}

/** Height of what the tie was read on: the mark's, or what the other set-up found. */
export function knownHeight({ to }: Tie, beams: Beams): number | null {
  if ("mark" in to) return to.mark.height.m;
  const beam = beams.get(to.piece.id);
  return beam === undefined ? null : beam.height - to.reading;
}

interface Found {
  readonly piece: Piece;
  readonly beam: Beam;
}

/** A set-up all of whose ties are known, else one with at least one: so a loop closes on its marks. */
function tiedByOwnReadings(
  pending: ReadonlySet<Piece>,
  ties: Ties,
  beams: Beams,
  witnesses: ReadonlyMap<string, readonly number[]>,
): Found | null {
  let partly: Found | null = null;
  for (const piece of pending) {
    const own = ties.get(piece.id) ?? [];
    const heights = own.map((tie) => beamBy(tie, beams)).filter((height) => height !== null);
    if (heights.length === 0) continue;
    const found: Found = {
      piece,
      beam: { height: meanOfAgreeing(heights, witnesses.get(piece.id)), from: "ties" },
    };
    if (heights.length === own.length) return found;
    partly ??= found;
  }
  return partly;
}

/** A set-up whose turning point was read again from a set-up that is tied. */
function tiedFromLater(pending: ReadonlySet<Piece>, ties: Ties, beams: Beams): Found | null {
  const heights = new Map<string, number[]>();
  for (const [id, own] of ties) {
    const beam = beams.get(id);
    if (beam === undefined) continue;
    for (const { reading, to } of own) {
      if (!("shot" in to) || beams.has(to.piece.id)) continue;
      const list = heights.get(to.piece.id) ?? [];
      list.push(beam.height - reading + to.reading);
      heights.set(to.piece.id, list);
    }
  }
  for (const piece of pending) {
    const found = heights.get(piece.id);
    if (found !== undefined) return { piece, beam: { height: meanOfAgreeing(found), from: "later set-up" } };
  }
  return null;
}

/** The last resort; first a set-up that has no tie at all, for the others may then follow from it. */
function assumed(pending: ReadonlySet<Piece>, ties: Ties): Found | null {
  const choices = [...pending].filter(({ setup, check }) => setup.assumedBeam !== null && check === null);
  const piece = choices.find(({ id }) => (ties.get(id) ?? []).length === 0) ?? choices[0];
  if (!piece?.setup.assumedBeam) return null;
  return { piece, beam: { height: piece.setup.assumedBeam.m, from: "assumed" } };
}

/** Readings scatter so much that a mean makes sense; how far they may disagree in all is judged later, by the class. */
function meanOfAgreeing(heights: readonly number[], witnesses: readonly number[] = []): number {
  const kept = agreeing(heights, witnesses, BEAM_MOVED);
  const values = heights.filter((_, i) => kept.has(i));
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
