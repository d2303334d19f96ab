/**
 * The solving thread: long parts of solves for the window, and searches of many solves.
 *
 * A search works in turns, one plan a turn, so that what the window waits for comes between them. Arrays of an answer are
 * copied once and handed over, so that this side's memory stays and the window copies nothing.
 */

import { withSameData } from "../document/sameData";
import type { Project } from "../document/schema";
import { type GroundSurface, groundSurface } from "./ground-surface";
import type { Late } from "./late";
import { createSolver } from "./pipeline";
import { searchInTurns } from "./search";
import type { MadeLayout } from "./site";
import type { Solver } from "./solver";
import type { Finding, SentSurface, Slot, ThreadReply, ThreadRequest } from "./thread-messages";

export type Answer = (reply: ThreadReply, handedOver: readonly ArrayBufferLike[]) => void;

/** `later` lets messages in before it goes on. */
export function solveServer(answer: Answer, later: (turn: () => void) => void) {
  const surfaces = new Map<number, GroundSurface>();
  const desks = new Map<Slot, Desk>();
  const stopped = new Set<number>();
  let layouts = 0;

  /** The late part; its layout stays away where the window has it already, and else goes ahead with the earth if that is asked for. */
  function answerLate(
    id: number,
    desk: Desk,
    project: Project,
    { layout: has, inParts }: Extract<ThreadRequest, { kind: "late" }>,
  ): void {
    let known = has;
    const earth = inParts ? desk.solver.lateEarth(project) : null;
    if (earth && known !== numberOf(desk, earth.layout)) {
      known = numberOf(desk, earth.layout);
      send(id, earth, known);
    }
    const late = desk.solver.late(project);
    const layout = late.kind === "built" && late.layout ? numberOf(desk, late.layout) : null;
    send(id, late.kind === "built" && layout === known ? { ...late, layout: null } : late, layout);
  }

  function numberOf(desk: Desk, { arrays: { existing } }: MadeLayout): number {
    if (desk.layout?.of !== existing) desk.layout = { of: existing, number: ++layouts };
    return desk.layout.number;
  }

  function send(id: number, late: Late, layout: number | null): void {
    const { copy, buffers } = handOver(late);
    answer({ id, kind: "late", late: copy, layout }, buffers);
  }

  function deskFor(slot: Slot, sent: SentSurface, given: Project): { desk: Desk; project: Project } {
    if (sent.surface) surfaces.set(sent.id, sent.surface);
    for (const id of surfaces.keys()) if (!sent.kept.includes(id)) surfaces.delete(id);
    const surface = surfaces.get(sent.id);
    if (!surface) throw new Error(`surface ${sent.id} never came`);
    const desk = desks.get(slot) ?? newDesk(surface);
    const project = withSameData(desk.project, given);
    Object.assign(desk, { surface, project });
    desks.set(slot, desk);
    return { desk, project };
  }

  function search(id: number, steps: Generator<Finding | null>): void {
    if (stopped.delete(id)) return;
    const step = steps.next();
    if (step.value) answer({ id, kind: "found", finding: step.value }, []);
    if (step.done) answer({ id, kind: "done" }, []);
    else later(() => guarded(id, () => search(id, steps)));
  }

  function guarded(id: number, work: () => void): void {
    try {
      work();
    } catch (error) {
      answer({ id, kind: "failed", why: error instanceof Error ? error.message : String(error) }, []);
    }
  }

  function handle(request: ThreadRequest): void {
    const { id } = request;
    switch (request.kind) {
      case "late": {
        const { desk, project } = deskFor(request.slot, request.surface, request.project);
        answerLate(id, desk, project, request);
        break;
      }
      case "surface": {
        const made = groundSurface(...request.work);
        surfaces.set(request.number, made);
        const { copy, buffers } = handOver(made);
        answer({ id, kind: "surface", surface: copy }, buffers);
        break;
      }
      case "search": {
        const { desk, project } = deskFor("search", request.surface, request.project);
        search(id, searchInTurns(request.search, project, desk.solver));
        break;
      }
      case "warm-up": {
        const surface = surfaces.get(request.surface);
        if (surface) createSolver({ surface: () => surface }).lateEarth(request.project);
        break;
      }
      case "stop":
        stopped.add(id);
    }
  }

  return (request: ThreadRequest) => guarded(request.id, () => handle(request));
}

/** A solver with the last that it was asked about. */
interface Desk {
  readonly solver: Solver;
  surface: GroundSurface;
  project: Project | null;
  /** Its last layout, by one of its arrays, and that layout's number. */
  layout: { readonly of: object; readonly number: number } | null;
}

function newDesk(surface: GroundSurface): Desk {
  const desk: Desk = {
    solver: createSolver({ surface: () => desk.surface }),
    surface,
    project: null,
    layout: null,
  };
  return desk;
}

/** A copy whose arrays of numbers may be handed over; one that stands in two places stays one. */
export function handOver<T>(value: T): { copy: T; buffers: ArrayBufferLike[] } {
  const made = new Map<object, unknown>();
  const buffers: ArrayBufferLike[] = [];
  const copied = (part: unknown): unknown => {
    if (typeof part !== "object" || part === null) return part;
    const known = made.get(part);
    if (known !== undefined) return known;
    const copy = ArrayBuffer.isView(part) ? copyOfArray(part, buffers) : copyOfFields(part, copied);
    made.set(part, copy);
    return copy;
  };
  return { copy: copied(value) as T, buffers };
}

function copyOfArray(view: ArrayBufferView, buffers: ArrayBufferLike[]): unknown {
  const copy = (view as Float64Array).slice();
  buffers.push(copy.buffer);
  return copy;
}

function copyOfFields(part: object, copied: (part: unknown) => unknown): unknown {
  return Array.isArray(part)
    ? part.map(copied)
    : Object.fromEntries(Object.entries(part).map(([key, each]) => [key, copied(each)]));
}
