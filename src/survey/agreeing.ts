/**
 * Which of several ties of a set-up agree with one another, so that a blunder is never averaged with what was read well.
 *
 * Units   metres.
 * Method  The beams that the ties give are held against each other, and against those of second looks at marks, which give
 *         no height themselves but bear witness. The most that lie within the limit hold; as many on either side: those with
 *         the tie that was typed first. Set-ups are looked at one after the other, each time all is carried again without
 *         what was kept out, for one wrong reading makes more than one set-up disagree.
 * Source  first principles; the limit is what the chosen class permits, and never less than readings scatter anyway.
 * Accepted  A reading that the user accepted as it is holds whatever it contradicts: then the difference is shared, as told.
 * Limits  Two ties alone don't say which is wrong: the caller asks. No set-up loses its only way to a height.
 */
import { agreeing } from "./agreement";
import { type Beams, beamBy, carryBeams } from "./beams";
import { permittedAt } from "./closings";
import { BEAM_MOVED, GROSS_ERROR } from "./limits";
import type { MisclosureClass } from "./misclosure";
import type { Piece } from "./pieces";
import type { Readings } from "./readings";
import type { Tie, Ties } from "./ties";

export interface Held {
  /** The ties that beams are taken from. */
  readonly held: Ties;
  readonly beams: Beams;
}

/** Beams that second looks at marks give, by piece. */
export type Witnesses = ReadonlyMap<string, readonly number[]>;

export function holdAgreeing(
  pieces: readonly Piece[],
  ties: Ties,
  readings: Readings,
  judged: MisclosureClass,
  witnesses: Witnesses,
): Held {
  const held = new Map(ties);
  let beams = carryBeams(pieces, held, witnesses);
  for (const piece of pieces) {
    const own = ties.get(piece.id) ?? [];
    if (own.length < 2) continue;
    const kept = agreeingTies(own, beams, limitOf(piece, ties, beams, readings, judged), witnesses);
    if (kept.length === own.length) continue;
    const before = held.get(piece.id) ?? [];
    held.set(piece.id, kept);
    const without = carryBeams(pieces, held, witnesses);
    if (without.size < beams.size) held.set(piece.id, before);
    else beams = without;
  }
  return { held, beams };
}

/** What ties of a set-up may disagree by and still be shared, m. */
function limitOf(
  piece: Piece,
  ties: Ties,
  beams: Beams,
  readings: Readings,
  judged: MisclosureClass,
): number {
  return Math.max(BEAM_MOVED, permittedAt(piece, ties, beams, readings, judged) ?? GROSS_ERROR);
}

function agreeingTies(own: readonly Tie[], beams: Beams, limit: number, witnesses: Witnesses): Tie[] {
  const heights = own.map((tie) => beamBy(tie, beams));
  const known = heights.flatMap((height, i) => (height === null ? [] : [{ height, i }]));
  const witness = witnesses.get(own[0]?.piece.id ?? "") ?? [];
  const agree = agreeing(
    known.map(({ height }) => height),
    witness,
    limit,
  );
  const kept = new Set([...agree].map((k) => known[k]?.i));
  return own.filter(({ shot }, i) => heights[i] === null || kept.has(i) || shot.accepted);
}
