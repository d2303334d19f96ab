/** What is said of each set-up: its beam, what ties it, how well the ties agree. */
import type { Setup, Shot } from "../document/schema";
import type { Closing, Problem, SetupResult } from "../solve/results";
import type { LengthNotation } from "../units";
import type { Adjusted } from "./adjust";
import { type Beams, beamBy } from "./beams";
import { apart, BLUNDER, gravity } from "./limits";
import { named, type References } from "./references";
import { type Cut, movesOf } from "./steps";
import type { Tie, Ties } from "./ties";

export function setupResult(setup: Setup, cut: Cut, adjusted: Adjusted, refs: References): SetupResult {
  const own = cut.ties.get(setup.id) ?? [];
  const moves = movesOf(setup.id, cut);
  const last = cut.pieces.all.filter((piece) => piece.setup.id === setup.id).at(-1)?.id ?? setup.id;
  return {
    id: setup.id,
    name: setup.name,
    beam: adjusted.beams.get(last)?.height ?? null,
    tied: adjusted.beams.has(last),
    tie: tieInWords(setup, own, cut.beams, refs),
    spread: spreadOf(own, cut),
    ...(setup.accuracy === null ? {} : { sigma: adjusted.sigmas.get(last) ?? null }),
    ...(setup.rod.reads === "up" ? { reads: "up" as const } : {}),
    ...(moves.length === 0 ? {} : { moves }),
  };
}

/** Set-ups whose ties disagree by a blunder. */
export function grossSetups(setups: Iterable<Setup>, cut: Cut): ReadonlySet<string> {
  return new Set(
    [...setups].flatMap(({ id }) => (spreadOf(cut.ties.get(id) ?? [], cut) > BLUNDER ? [id] : [])),
  );
}

function spreadOf(own: readonly Tie[], cut: Cut): number {
  const heights = tieHeights(own, cut);
  return heights.length > 1 ? Math.max(...heights) - Math.min(...heights) : 0;
}

function tieHeights(own: readonly Tie[], { beams }: Cut): readonly number[] {
  return own.map((tie) => beamBy(tie, beams)).filter((height) => height !== null);
}

export function setupProblems(
  result: SetupResult,
  ties: Ties,
  shots: readonly Shot[],
  closings: readonly Closing[],
  notation: LengthNotation | null,
): Problem[] {
  const own = ties.get(result.id) ?? [];
  const where = `set-up ${named(result)}`;
  if (!result.tied) {
    const read = shots.filter((shot) => shot.setup === result.id && shot.reading !== null);
    return read.length === 0 ? [] : [notTied(result, where, own, read)];
  }
  const severity = gravity(result.spread);
  if (severity === null || closesWell(result, closings)) return [];
  return [
    {
      code: "ties-disagree",
      severity,
      where,
      what: `The readings that tie it (${result.tie}) disagree by ${apart(result.spread, notation)}.`,
      how:
        result.spread > BLUNDER
          ? "Read them again, or set the wrong one aside. Until then this set-up takes their mean and the others keep their heights: nothing that hangs on it can be trusted."
          : "Read them again, or set the doubtful one aside. Until then the difference is shared among the readings.",
      ids: [result.id, ...own.map((tie) => tie.shot.id)],
    },
  ];
}

/** A longer run of set-ups may miss by more than two looks from one: what its class permits is not asked about. */
function closesWell({ id, spread }: SetupResult, closings: readonly Closing[]): boolean {
  const own = closings.filter((closing) => closing.setup === id);
  return own.some(({ permitted }) => permitted !== null && spread <= permitted);
}

function notTied(result: SetupResult, where: string, own: readonly Tie[], read: readonly Shot[]): Problem {
  const count = read.length === 1 ? "The one reading" : `The ${read.length} readings`;
  const why =
    own.length === 0
      ? "No reading ties it to a known height."
      : "Its turning points were read from set-ups that aren't tied to a known height either.";
  return {
    code: "setup-not-tied",
    severity: "error",
    where,
    what: `${why} ${count} taken from it ${read.length === 1 ? "gives" : "give"} no height.`,
    how: "Read a mark from it, or read points again that a tied set-up read too (kind “turning”, “on” that shot; two or more are adjusted together), or type the height of the beam.",
    ids: [result.id],
  };
}

function tieInWords(setup: Setup, own: readonly Tie[], beams: Beams, refs: References): string {
  const from = beams.get(setup.id)?.from;
  if (from === undefined) return "not tied";
  if (from === "assumed") return "assumed";
  if (from === "later set-up") return "turning point read from a later set-up";
  return own
    .filter((tie) => beamBy(tie, beams) !== null)
    .map((tie) => oneTie(tie, refs))
    .join(", ");
}

function oneTie({ to }: Tie, refs: References): string {
  if ("mark" in to) return `reading on ${to.mark.name === "" ? to.mark.id : to.mark.name}`;
  const point = to.shot.kind === "ground" ? "shared point" : "turning point";
  return `${point} ${to.shot.name === "" ? `in row ${refs.rows.get(to.shot)}` : to.shot.name}`;
}
