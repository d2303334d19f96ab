/**
 * A set-up whose laser was bumped is two: before the step and after it. Each such piece has a beam of its own.
 *
 * Method  A check shot that finds the beam moved ties the piece after the step. From which row that piece begins the
 *         user says. Where nobody knows, the shots between the last good look and the check wait: they belong to
 *         neither piece until two of them have been shot again (second looks after the check).
 */
import type { Setup, Shot } from "../document/schema";
import { BEAM_MOVED } from "./limits";
import type { References } from "./references";

export interface Piece {
  readonly id: string;
  readonly setup: Setup;
  /** The check shot that ties it; null for the first piece of a set-up. */
  readonly check: Shot | null;
  readonly from: string | null;
  /** Shots before it that wait, in the order they were read. */
  readonly waiting: readonly Shot[];
}

export interface Pieces {
  /** In the order of the set-ups, and of the steps within each. */
  readonly all: readonly Piece[];
  /** Missing for a shot that waits, or whose set-up isn't there. */
  readonly of: Pick<ReadonlyMap<Shot, Piece>, "get">;
}

/** A step that is to be applied. */
export interface Step {
  readonly check: Shot;
  readonly from: string | null;
}

/**
 * Cuts the set-ups at the steps. `shiftOf` is what a look at a known point found against what was known, null where it
 * isn't one or can't say; `kept` holds shots that waited and have found their side since: before the step or after.
 */
export function cutAtSteps(
  shots: readonly Shot[],
  steps: readonly Step[],
  refs: References,
  shiftOf: (shot: Shot) => number | null,
  kept: ReadonlyMap<Shot, "before" | "after">,
): Pieces {
  const all: Piece[] = [];
  const of = new Map<Shot, Piece>();
  // A set-up without a step is one piece, however many shots it has.
  const whole = new Map<string, Piece>();
  const withSteps = new Set(steps.map(({ check }) => check.setup));
  const bySetup = new Map<string, Shot[]>();
  for (const shot of shots) {
    if (!withSteps.has(shot.setup)) continue;
    const list = bySetup.get(shot.setup);
    if (list === undefined) bySetup.set(shot.setup, [shot]);
    else list.push(shot);
  }
  for (const setup of refs.setups.values()) {
    const own = bySetup.get(setup.id) ?? [];
    const cuts = steps
      .filter(({ check }) => check.setup === setup.id)
      .sort((a, b) => own.indexOf(a.check) - own.indexOf(b.check));
    let piece: Piece = { id: setup.id, setup, check: null, from: null, waiting: [] };
    all.push(piece);
    if (!withSteps.has(setup.id)) {
      whole.set(setup.id, piece);
      continue;
    }
    let start = 0;
    cuts.forEach((step, k) => {
      const end = own.indexOf(step.check);
      const cut = cutBefore(own, start, end, step, shiftOf);
      for (const shot of own.slice(start, cut.first)) of.set(shot, piece);
      const waiting = own.slice(cut.first, cut.next);
      const next = {
        id: `${setup.id}\u0000${k + 1}`,
        setup,
        check: step.check,
        from: cut.from,
        waiting: waiting.filter((shot) => !kept.has(shot)),
      };
      for (const shot of waiting) {
        const side = kept.get(shot);
        if (side !== undefined) of.set(shot, side === "before" ? piece : next);
      }
      piece = next;
      all.push(piece);
      start = cut.next;
    });
    for (const shot of own.slice(start)) of.set(shot, piece);
  }
  return { all, of: { get: (shot) => whole.get(shot.setup) ?? of.get(shot) } };
}

/** Shots up to `first` are surely before the step, those from `next` on surely after it. */
function cutBefore(
  own: readonly Shot[],
  start: number,
  end: number,
  step: Step,
  shiftOf: (shot: Shot) => number | null,
): { readonly first: number; readonly next: number; readonly from: string | null } {
  const from = own.findIndex((shot) => shot.id === step.from);
  if (from > start && from <= end) return { first: from, next: from, from: step.from };
  let first = end;
  while (first > start && !goodLook(own[first - 1] as Shot, shiftOf)) first--;
  return { first, next: end, from: null };
}

function goodLook(shot: Shot, shiftOf: (shot: Shot) => number | null): boolean {
  const shift = shiftOf(shot);
  return shift !== null && Math.abs(shift) <= BEAM_MOVED;
}

/**
 * Which of the waiting shots stand before the step and which after, by those that were shot again.
 * `again` gives for a shot how far its second reading stands from what it would be before and after the step; null where
 * it wasn't shot again. Answers null while fewer than two agree with one side, or where they contradict a single step.
 */
export function sideBySide(
  waiting: readonly Shot[],
  again: (shot: Shot) => { readonly before: number; readonly after: number } | null,
): ReadonlyMap<Shot, "before" | "after"> | null {
  const sides = waiting.map((shot) => {
    const off = again(shot);
    if (off === null || Math.min(off.before, off.after) > BEAM_MOVED) return null;
    return off.before < off.after ? "before" : "after";
  });
  const lastBefore = sides.lastIndexOf("before");
  const firstAfter = sides.includes("after") ? sides.indexOf("after") : waiting.length;
  if (sides.filter((side) => side !== null).length < 2 || lastBefore > firstAfter) return null;
  const settled = new Map<Shot, "before" | "after">();
  waiting.forEach((shot, i) => {
    if (i <= lastBefore) settled.set(shot, "before");
    else if (i >= firstAfter) settled.set(shot, "after");
  });
  return settled;
}
