/** The window's side of the solving thread: who asked what, and which surface and layout the other side knows. */
import type { Project } from "../document";
import { withSameData } from "../document/sameData";
import { type GroundSurface, type Late, type LateEarth, projectForLate, type SurfaceWork } from "../solve";
import type {
  Finding,
  Search,
  SentSurface,
  Slot,
  ThreadReply,
  ThreadRequest,
} from "../solve/thread-messages";

/** A worker, as far as it is used here. */
export interface ThreadPort {
  postMessage(request: ThreadRequest): void;
  onmessage: ((event: { readonly data: ThreadReply }) => void) | null;
  onerror: ((event: { readonly message: string }) => void) | null;
  terminate(): void;
}

export interface SolvingThread {
  /**
   * The long part of a solve; null where something newer was asked for in the same slot meanwhile. Rejects when the
   * thread fails. Whoever takes the earth gets it first where the layout is new, and that layout with it alone.
   */
  late(
    slot: Slot,
    project: Project,
    surface: GroundSurface,
    takeEarth?: (earth: LateEarth) => void,
  ): Promise<Late | null>;
  /** The slot's last layout wasn't taken over: it comes along again. */
  forgetLayout(slot: Slot): void;
  surface(work: SurfaceWork): Promise<GroundSurface>;
  /** Works an earth out for nobody, on a surface that it has, so that the next one is quick. */
  warmUp(of: Asked): void;
  /** Tells what it finds one by one; answers a way to give it up. `end` comes once: with what went wrong, or null. */
  search(
    search: Search,
    of: Asked,
    found: (finding: Finding) => void,
    end: (why: string | null) => void,
  ): () => void;
  terminate(): void;
}

export interface Asked {
  readonly project: Project;
  readonly surface: GroundSurface;
}

interface Waiting {
  take(reply: ThreadReply): void;
  fail(error: Error): void;
}

/** What is asked next in a slot once the answer in work has come. */
interface Next {
  readonly of: Asked;
  readonly takeEarth: ((earth: LateEarth) => void) | undefined;
  readonly take: (late: Late | null) => void;
  readonly fail: (error: Error) => void;
}

export function threadOver(port: ThreadPort): SolvingThread {
  const waiting = new Map<number, Waiting>();
  const busy = new Set<Slot>();
  const next = new Map<Slot, Next>();
  const layouts = new Map<Slot, number | null>();
  const book = surfaceBook();
  let asked = 0;
  let ended: Error | null = null;

  port.onmessage = ({ data }) => {
    const one = waiting.get(data.id);
    if (data.kind === "failed") one?.fail(new Error(data.why));
    else one?.take(data);
  };
  port.onerror = ({ message }) => end(new Error(message));

  /** Nothing is answered any more: who waits is told, and who asks from now on at once. */
  function end(why: Error): void {
    ended = why;
    for (const { fail } of [...next.values(), ...waiting.values()]) fail(why);
    next.clear();
    waiting.clear();
  }

  function ask(request: (id: number) => ThreadRequest, take: Waiting["take"], fail: Waiting["fail"]): number {
    const id = ++asked;
    const failed = (error: Error) => {
      waiting.delete(id);
      fail(error);
    };
    waiting.set(id, { take, fail: failed });
    try {
      if (ended) throw ended;
      port.postMessage(request(id));
    } catch (error) {
      failed(error instanceof Error ? error : new Error(String(error)));
    }
    return id;
  }

  function askLate(slot: Slot, { of, takeEarth, take, fail }: Next): void {
    busy.add(slot);
    const free = () => {
      busy.delete(slot);
      const after = next.get(slot);
      next.delete(slot);
      if (after) askLate(slot, after);
    };
    const id = ask(
      (number) => ({
        id: number,
        kind: "late",
        slot,
        project: projectForLate(of.project),
        surface: book.send(slot, of.surface),
        layout: layouts.get(slot) ?? null,
        inParts: takeEarth !== undefined,
      }),
      (reply) => {
        if (reply.kind !== "late") return;
        const { late, layout } = reply;
        const isStale = next.has(slot);
        // A layout that isn't taken over isn't known here.
        if (late.kind !== "bare" && late.layout) layouts.set(slot, isStale ? null : layout);
        if (late.kind === "earth") {
          if (!isStale) takeEarth?.(late);
          return;
        }
        waiting.delete(id);
        take(isStale ? null : late);
        free();
      },
      (error) => {
        fail(error);
        free();
      },
    );
  }

  return {
    late: (slot, project, surface, takeEarth) =>
      new Promise((take, fail) => {
        const one = { of: { project, surface }, takeEarth, take, fail };
        if (!busy.has(slot)) return askLate(slot, one);
        next.get(slot)?.take(null);
        next.set(slot, one);
      }),
    forgetLayout: (slot) => layouts.set(slot, null),
    surface: (work) =>
      new Promise((take, fail) => {
        const number = book.awaited();
        const id = ask(
          (asked) => ({ id: asked, kind: "surface", work: withoutShots(work), number }),
          (reply) => {
            waiting.delete(id);
            if (reply.kind !== "surface") return;
            const surface = onPoints(reply.surface, work[0]);
            book.made(surface, number);
            take(surface);
          },
          fail,
        );
      }),
    warmUp({ project, surface }) {
      const number = book.numberOf(surface);
      if (ended || number === null) return;
      port.postMessage({ id: ++asked, kind: "warm-up", project: projectForLate(project), surface: number });
    },
    search(search, { project, surface }, found, end) {
      const id = ask(
        (number) => ({
          id: number,
          kind: "search",
          search,
          project: projectForLate(project),
          surface: book.send("search", surface),
        }),
        (reply) => {
          if (reply.kind === "found") found(ofWhole(project, reply.finding));
          if (reply.kind !== "done") return;
          waiting.delete(id);
          end(null);
        },
        ({ message }) => end(message),
      );
      return () => {
        if (waiting.delete(id)) port.postMessage({ id, kind: "stop" });
      };
    },
    terminate() {
      end(new Error("the solving thread was ended"));
      port.terminate();
    },
  };
}

/** A surface is made of coordinates and lines alone. */
function withoutShots([points, ...lines]: SurfaceWork): SurfaceWork {
  return [{ ...points, shots: [] }, ...lines];
}

/** A surface comes with its own copy of the points: where they are the same that are here already, one set of a million is enough. */
function onPoints(surface: GroundSurface, { x, y, z }: SurfaceWork[0]): GroundSurface {
  if (!surface.ok) return surface;
  const { tin } = surface;
  const isSame = sameNumbers(tin.x, x) && sameNumbers(tin.y, y) && sameNumbers(tin.z, z);
  return isSame ? { ...surface, tin: { ...tin, x, y, z } } : surface;
}

function sameNumbers(a: Float64Array, b: Float64Array): boolean {
  return a.length === b.length && a.every((value, i) => value === b[i]);
}

/** The other side never saw shots, pictures and options: what it found gets them back. */
function ofWhole(project: Project, finding: Finding): Finding {
  const { survey, drawing, options } = project;
  return { ...finding, project: withSameData(project, { ...finding.project, survey, drawing, options }) };
}

/** Which surface each slot asks about: one that the other side has isn't sent again. */
function surfaceBook() {
  interface Known {
    /** Null while the other side makes it. */
    readonly surface: GroundSurface | null;
    readonly id: number;
  }
  const book = new Map<Slot, Known>();
  let made: Known | null = null;
  let numbers = 0;
  const knownAs = (surface: GroundSurface) =>
    [...book.values(), made].find((each) => each?.surface === surface) ?? null;
  return {
    /** Null: the other side doesn't have it. */
    numberOf: (surface: GroundSurface) => knownAs(surface)?.id ?? null,
    /** The number of a surface that the other side will make, and keep until it was asked about. */
    awaited(): number {
      made = { surface: null, id: ++numbers };
      return made.id;
    },
    made(surface: GroundSurface, id: number): void {
      if (made?.id === id) made = { surface, id };
    },
    send(slot: Slot, surface: GroundSurface): SentSurface {
      const known = knownAs(surface);
      const id = known?.id ?? ++numbers;
      book.set(slot, { surface, id });
      if (known && known === made) made = null;
      const kept = [...book.values(), made].flatMap((each) => each?.id ?? []);
      return { id, surface: known ? null : surface, kept: [...new Set(kept)] };
    },
  };
}
