/** The readings that tie a set-up to a known height; what names nothing becomes a problem. */
import type { Mark, Shot } from "../document/schema";
import type { Problem } from "../solve/results";
import type { Piece, Pieces } from "./pieces";
import type { Readings } from "./readings";
import { lookedAt, type References, shotInWords } from "./references";

/** One reading that gives its set-up a beam height: on a mark, or on a point that another set-up read too. */
export interface Tie {
  readonly shot: Shot;
  /** Distance below the beam, m. */
  readonly reading: number;
  readonly piece: Piece;
  readonly to:
    | { readonly mark: Mark }
    | { readonly shot: Shot; readonly reading: number; readonly piece: Piece };
}

/** The ties of each piece of a set-up, by its id, in the order of the shots. */
export type Ties = ReadonlyMap<string, readonly Tie[]>;

export function collectTies(
  shots: readonly Shot[],
  refs: References,
  readings: Readings,
  pieces: Pieces,
  problems: Problem[],
): Ties {
  const ties = new Map<string, Tie[]>(pieces.all.map((piece) => [piece.id, []]));
  for (const shot of shots) {
    const named = namedBy(shot, refs, pieces.of.get(shot));
    if (named === null) continue;
    if ("fault" in named) {
      problems.push(tieProblem(shot, named, refs));
      continue;
    }
    const tie = tieBetween(shot, named, readings, pieces);
    if (tie !== null) ties.get(tie.piece.id)?.push(tie);
  }
  return ties;
}

type Named = { readonly mark: Mark } | { readonly shot: Shot };

/** What a shot ties its set-up to: null for one that ties nothing. */
function namedBy(shot: Shot, refs: References, piece: Piece | undefined): Named | Fault | null {
  if (shot.kind === "mark") return markNamed(shot, refs);
  if (shot.kind === "turning" && shot.of !== null) return pointNamed(shot, shot.of, refs);
  if (piece?.check !== shot || shot.of === null) return null;
  // The check that found the beam moved ties what follows it.
  const mark = refs.marks.get(shot.of);
  const first = lookedAt(shot, refs);
  return mark ? { mark } : first && first !== shot ? { shot: first } : null;
}

/** Null while a row is still empty, or waits. */
function tieBetween(shot: Shot, named: Named, readings: Readings, pieces: Pieces): Tie | null {
  const piece = pieces.of.get(shot);
  const reading = readings.get(shot)?.down;
  if (piece === undefined || reading === undefined) return null;
  if ("mark" in named) return { shot, reading, piece, to: named };
  const other = pieces.of.get(named.shot);
  const first = readings.get(named.shot)?.down;
  if (other === undefined || other === piece || first === undefined) return null;
  return { shot, reading, piece, to: { shot: named.shot, reading: first, piece: other } };
}

interface Fault {
  readonly fault: string;
  readonly how: string;
}

function markNamed(shot: Shot, refs: References): Named | Fault {
  const mark = refs.marks.get(shot.of ?? "");
  if (mark !== undefined) return { mark };
  const which = shot.of === null ? "doesn't say on which" : "names one that isn't there";
  return { fault: `It is a reading on a mark, but ${which}.`, how: "Choose the mark in its row." };
}

function pointNamed(shot: Shot, of: string, refs: References): Named | Fault {
  const first = refs.shots.get(of);
  if (first === undefined) {
    const which = refs.aside.has(of) ? "is set aside" : "isn't there";
    return {
      fault: `It is a second reading on a turning point, but the first, which it names, ${which}.`,
      how: "Choose the shot of the same point from another set-up.",
    };
  }
  if (first.setup === shot.setup) {
    const what = first === shot ? "itself" : `${shotInWords(first, refs)} of its own set-up`;
    return {
      fault: `It is tied to ${what}, which gives the set-up no height.`,
      how: "Choose the shot of the same point from another set-up, or make this one a check.",
    };
  }
  return { shot: first };
}

function tieProblem(shot: Shot, { fault, how }: Fault, refs: References): Problem {
  return {
    code: "tie-to-nothing",
    severity: "error",
    where: shotInWords(shot, refs),
    what: fault,
    how,
    ids: [shot.id],
  };
}
