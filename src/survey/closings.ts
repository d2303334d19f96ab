/** Where runs of set-ups come back to a known height, and by how much they miss it before anything is adjusted. */
import type { Closing } from "../solve/results";
import { type Beams, beamBy } from "./beams";
import { type MisclosureClass, permittedMisclosure } from "./misclosure";
import type { Piece } from "./pieces";
import type { Readings } from "./readings";
import type { Cut } from "./steps";
import type { Tie, Ties } from "./ties";

/**
 * Every reading on a mark whose set-up other readings tie too closes a run.
 * Sign: found - known, m; found is what the other ties of the set-up make of the mark.
 */
export function closings(
  { pieces, ties, beams }: Cut,
  readings: Readings,
  judged: MisclosureClass,
): Closing[] {
  return pieces.all.flatMap((piece): Closing[] => {
    const own = ties.get(piece.id) ?? [];
    if (piece.check !== null || own.length < 2) return [];
    const first = own.find((tie) => "shot" in tie.to) ?? own[0];
    const beam = first === undefined ? null : beamBy(first, beams);
    if (first === undefined || beam === null) return [];
    const run = runTo(first, ties, beams, readings);
    return own.flatMap((tie): Closing[] => {
      if (tie === first || !("mark" in tie.to)) return [];
      const closing = readings.get(tie.shot)?.distance ?? null;
      const length = run.length === null || closing === null ? null : run.length + closing;
      return [
        {
          setup: piece.setup.id,
          shot: tie.shot.id,
          misclosure: beam - tie.reading - tie.to.mark.height.m,
          setups: run.setups,
          length,
          permitted: permittedMisclosure(judged, { setups: run.setups, length }),
        },
      ];
    });
  });
}

/**
 * What the chosen class permits the ties of a set-up to disagree by, over the longest run that any of them closes, m; null
 * where the class goes by a length that isn't known.
 */
export function permittedAt(
  piece: Piece,
  ties: Ties,
  beams: Beams,
  readings: Readings,
  judged: MisclosureClass,
): number | null {
  const own = ties.get(piece.id) ?? [];
  const permitted = own.map((tie) => permittedMisclosure(judged, runTo(tie, ties, beams, readings)));
  const known = permitted.filter((limit) => limit !== null);
  return known.length === 0 ? null : Math.max(...known);
}

/** Set-ups and sights from the mark where a run began up to the set-up of this tie. */
function runTo(
  last: Tie,
  ties: Ties,
  beams: Beams,
  readings: Readings,
): { readonly setups: number; readonly length: number | null } {
  const seen = new Set<Piece>();
  let setups = 0;
  let length: number | null = 0;
  for (let tie: Tie | undefined = last; tie !== undefined && !seen.has(tie.piece); ) {
    seen.add(tie.piece);
    setups++;
    const sights = "shot" in tie.to ? [tie.shot, tie.to.shot] : [tie.shot];
    for (const shot of sights) {
      const distance: number | null = readings.get(shot)?.distance ?? null;
      length = length === null || distance === null ? null : length + distance;
    }
    const before: readonly Tie[] = "shot" in tie.to ? (ties.get(tie.to.piece.id) ?? []) : [];
    tie = before.find((other) => beamBy(other, beams) !== null && !seen.has(other.piece));
  }
  return { setups, length };
}
