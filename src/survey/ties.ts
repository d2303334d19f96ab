/** The readings that tie a set-up to a known height; what names nothing becomes a problem. */
import type { Mark, Shot } from "../document/schema";
import type { Problem } from "../solve/results";
import { type References, shotInWords } from "./references";

/** One reading that gives its set-up a beam height: on a mark, or on a point that another set-up read too. */
export interface Tie {
  readonly shot: Shot;
  readonly reading: number;
  readonly to: { readonly mark: Mark } | { readonly shot: Shot; readonly reading: number };
}

/** The ties of each set-up, by set-up id, in the order of the shots. */
export type Ties = ReadonlyMap<string, readonly Tie[]>;

export function collectTies(shots: readonly Shot[], refs: References, problems: Problem[]): Ties {
  const ties = new Map<string, Tie[]>();
  for (const id of refs.setups.keys()) ties.set(id, []);
  for (const shot of shots) {
    const found = shot.kind === "mark" ? tieToMark(shot, refs) : tieToShot(shot, refs);
    if (found === null) continue;
    if ("fault" in found) problems.push(tieProblem(shot, found, refs));
    else ties.get(shot.setup)?.push(found);
  }
  return ties;
}

interface Fault {
  readonly fault: string;
  readonly how: string;
}

function tieToMark(shot: Shot, refs: References): Tie | Fault | null {
  const mark = refs.marks.get(shot.of ?? "");
  if (mark === undefined) {
    const which = shot.of === null ? "doesn't say on which" : "names one that isn't there";
    return { fault: `It is a reading on a mark, but ${which}.`, how: "Choose the mark in its row." };
  }
  return shot.reading === null ? null : { shot, reading: shot.reading.m, to: { mark } };
}

/** Null for a shot that ties nothing: no turning point, a first reading on one, or a row still empty. */
function tieToShot(shot: Shot, refs: References): Tie | Fault | null {
  if (shot.kind !== "turning" || shot.of === null) return null;
  const first = refs.shots.get(shot.of);
  if (first === undefined) {
    const which = refs.aside.has(shot.of) ? "is set aside" : "isn't there";
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
  if (shot.reading === null || first.reading === null) return null;
  return { shot, reading: shot.reading.m, to: { shot: first, reading: first.reading.m } };
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
