/** What is said of each set-up: its beam, what ties it, how well the ties agree. */
import type { Setup, Shot } from "../document/schema";
import type { Closing, Fix, Problem, SetupResult, TieKeptOut } from "../solve/results";
import type { Adjusted } from "./adjust";
import { type Beams, beamBy } from "./beams";
import { apart, gravity } from "./limits";
import { named, type References, shotInWords } from "./references";
import { type Cut, movesOf } from "./steps";
import type { Tie } from "./ties";

export function setupResult(setup: Setup, cut: Cut, adjusted: Adjusted, refs: References): SetupResult {
  const own = cut.ties.get(setup.id) ?? [];
  const moves = movesOf(setup.id, cut);
  const last = cut.pieces.all.filter((piece) => piece.setup.id === setup.id).at(-1)?.id ?? setup.id;
  return {
    id: setup.id,
    name: setup.name,
    beam: adjusted.beams.get(last)?.height ?? null,
    tied: adjusted.beams.has(last),
    tie: tieInWords(setup, cut.held.get(setup.id) ?? [], cut.beams, refs),
    spread: spreadOf(own, cut),
    ...keptOutOf(own, cut),
    ...(setup.accuracy === null ? {} : { sigma: adjusted.sigmas.get(last) ?? null }),
    ...(setup.rod.reads === "up" ? { reads: "up" as const } : {}),
    ...(moves.length === 0 ? {} : { moves }),
  };
}

function spreadOf(own: readonly Tie[], cut: Cut): number {
  const heights = tieHeights(own, cut);
  return heights.length > 1 ? Math.max(...heights) - Math.min(...heights) : 0;
}

function tieHeights(own: readonly Tie[], { beams }: Cut): readonly number[] {
  return own.map((tie) => beamBy(tie, beams)).filter((height) => height !== null);
}

/** Ties that the beam isn't taken from, with the way it would move by each. */
function keptOutOf(own: readonly Tie[], { held, beams }: Cut): { keptOut?: readonly TieKeptOut[] } {
  const keptOut = own.flatMap((tie): TieKeptOut[] => {
    const [beam, byIt] = [beams.get(tie.piece.id), beamBy(tie, beams)];
    if (beam === undefined || byIt === null || held.get(tie.piece.id)?.includes(tie)) return [];
    return [{ shot: tie.shot.id, by: byIt - beam.height }];
  });
  return keptOut.length === 0 ? {} : { keptOut };
}

export function setupProblems(
  result: SetupResult,
  cut: Cut,
  shots: readonly Shot[],
  closings: readonly Closing[],
  refs: References,
): Problem[] {
  const own = cut.ties.get(result.id) ?? [];
  const where = `set-up ${named(result)}`;
  if (!result.tied) {
    const read = shots.filter((shot) => shot.setup === result.id && shot.reading !== null);
    return read.length === 0 ? [] : [notTied(result, where, own, read)];
  }
  const severity = gravity(result.spread);
  if (severity === null) return [];
  const { keptOut = [] } = result;
  if (keptOut.length === 0 && closesWell(result, closings)) return [];
  const out = new Set(keptOut.map(({ shot }) => shot));
  const known = own.filter((tie) => beamBy(tie, cut.beams) !== null);
  const isAccepted = own.some(({ shot }) => shot.accepted);
  const problem = {
    code: "ties-disagree",
    severity: isAccepted && out.size === 0 ? ("note" as const) : severity,
    where,
    what: `The readings that tie it (${known.map((tie) => oneTie(tie, refs)).join(", ")}) disagree by ${apart(result.spread, refs.notation)}.`,
    how: isAccepted
      ? "You accepted it: the difference is shared among the readings."
      : "Read them again, or set the doubtful one aside. Until then the difference is shared among the readings.",
    ids: [result.id, ...own.map((tie) => tie.shot.id)],
  };
  if (out.size === 0) return [problem];
  const [used, left] = [
    known.filter(({ shot }) => !out.has(shot.id)),
    known.filter(({ shot }) => out.has(shot.id)),
  ];
  return [
    {
      ...problem,
      what: `${problem.what} ${keptOutInWords(used, left, keptOut, refs)}`,
      how: "Read them again. Until then all heights of this set-up hang on what is used: if that is the wrong one, use the other.",
      fixes: [...theOther(known, left, refs), ...setAsides(left, refs), shareIt(left)],
    },
  ];
}

/** What is used, and where each that isn't would put the beam. */
function keptOutInWords(
  used: readonly Tie[],
  left: readonly Tie[],
  keptOut: readonly TieKeptOut[],
  refs: References,
): string {
  const by = new Map(keptOut.map(({ shot, by: move }) => [shot, move]));
  const names = used.map((tie) => oneTie(tie, refs)).join(" and ");
  const others = left.map((tie) => {
    const move = by.get(tie.shot.id) ?? 0;
    return `the ${oneTie(tie, refs)} (${shotInWords(tie.shot, refs)}) would put the beam ${apart(move, refs.notation)} ${move > 0 ? "higher" : "lower"}`;
  });
  return `Nothing is averaged: the ${names} ${used.length > 1 ? "are" : "is"} used, ${used.length > 1 ? "for they agree" : "for it agrees with a second look or was typed first"}; ${others.join(", ")} and ${left.length > 1 ? "are" : "is"} kept out.`;
}

/** At most so many readings to choose from; more stand in the book itself. */
const MOST_OFFERED = 3;

/** Uses one that was kept out and sets aside whatever contradicts it. */
function theOther(known: readonly Tie[], left: readonly Tie[], refs: References): Fix[] {
  return left.slice(0, MOST_OFFERED).map((tie) => ({
    words: `Use the ${oneTie(tie, refs)}, ${plainRow(tie.shot, refs)}`,
    edits: known
      .filter((other) => other !== tie)
      .map(({ shot }) => ({ command: "survey.setAside", args: { id: shot.id, aside: true } })),
  }));
}

function setAsides(left: readonly Tie[], refs: References): Fix[] {
  return left.slice(0, MOST_OFFERED).map(({ shot }) => ({
    words: `Set ${plainRow(shot, refs)} aside`,
    edits: [{ command: "survey.setAside", args: { id: shot.id, aside: true } }],
  }));
}

/** For a run that is known to be so inexact: what the user accepts is shared like any misclosure. */
function shareIt(left: readonly Tie[]): Fix {
  return {
    words: "Share the difference all the same",
    edits: left.map(({ shot }) => ({ command: "survey.acceptShot", args: { id: shot.id } })),
  };
}

function plainRow(shot: Shot, refs: References): string {
  return shot.name === "" ? `row ${refs.rows.get(shot)}` : `“${shot.name}”`;
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
