/** The window and its solving thread, with all that goes between them copied as between real threads. */
import { describe, expect, it } from "vitest";
import { buildingEdits, type Project } from "../../src/document";
import { createSolver, type LateEarth } from "../../src/solve";
import type { Finding, ThreadReply, ThreadRequest } from "../../src/solve/thread-messages";
import { solveServer } from "../../src/solve/thread-server";
import { waysOut } from "../../src/solve/ways-out";
import { type SolvingThread, type ThreadPort, threadOver } from "../../src/store/thread";
import { difference } from "../solve/difference";
import { plane, shed, site } from "../solve/sites";
import { demoProject } from "../support/demo";

interface Wire {
  readonly thread: SolvingThread;
  readonly sent: ThreadRequest[];
  readonly received: ThreadReply[];
}

/** A thread that answers in its own time. */
function wire(): Wire {
  const sent: ThreadRequest[] = [];
  const received: ThreadReply[] = [];
  const port: ThreadPort = {
    onmessage: null,
    onerror: null,
    postMessage(request) {
      sent.push(request);
      const copy = structuredClone(request);
      setTimeout(() => handle(copy));
    },
    terminate() {},
  };
  const handle = solveServer(
    (reply, handedOver) => {
      const data = structuredClone(reply, { transfer: [...handedOver] as ArrayBuffer[] });
      received.push(data);
      setTimeout(() => port.onmessage?.({ data }));
    },
    (turn) => setTimeout(turn),
  );
  return { thread: threadOver(port), sent, received };
}

function raised(project: Project, by: number): Project {
  const edit = buildingEdits.setFloor.run(project, { floor: (project.building?.floor ?? 0) + by });
  if (!edit.ok) throw new Error(edit.why);
  return edit.project;
}

const project = demoProject("pottery-studio");

describe("the long part of a solve in another thread", () => {
  it("gives what the window's solver would have worked out", async () => {
    const { thread, sent } = wire();
    const here = createSolver();
    here.solve(project, { detail: "drag" });
    const late = await thread.late("plan", project, here.surface(project));
    if (!late) throw new Error("no answer");
    expect(difference(here.solve(project, { late }), createSolver().solve(project))).toBeNull();
    expect(JSON.stringify(sent[0])).not.toContain(project.survey.shots.at(-1)?.id ?? "?");
  });

  it("sends surface and layout once: a floor let go brings neither again", async () => {
    const { thread, sent } = wire();
    const here = createSolver();
    here.solve(project, { detail: "drag" });
    const first = await thread.late("plan", project, here.surface(project));
    here.solve(project, { late: first as NonNullable<typeof first> });
    const higher = raised(project, 0.05);
    here.solve(higher, { detail: "drag" });
    const second = await thread.late("plan", higher, here.surface(higher));
    if (second?.kind !== "built") throw new Error("no answer");
    expect(second.layout).toBeNull();
    const [one, other] = sent;
    expect(one?.kind === "late" && one.surface.surface).not.toBeNull();
    expect(other?.kind === "late" && other.surface.surface).toBeNull();
    expect(difference(here.solve(higher, { late: second }), createSolver().solve(higher))).toBeNull();
  });

  it("sends a new layout ahead with its earth to whoever takes it, and not again with the rest", async () => {
    const { thread, received } = wire();
    const here = createSolver();
    here.solve(project, { detail: "drag" });
    const ahead: LateEarth[] = [];
    const late = await thread.late("plan", project, here.surface(project), (earth) => ahead.push(earth));
    expect(received.map((reply) => reply.kind === "late" && reply.late.kind)).toEqual(["earth", "built"]);
    if (late?.kind !== "built" || !ahead[0]) throw new Error("no answer");
    expect(late.layout).toBeNull();
    here.solve(project, { late: ahead[0] });
    expect(difference(here.solve(project, { late }), createSolver().solve(project))).toBeNull();
    const higher = raised(project, 0.05);
    const again = await thread.late("plan", higher, here.surface(higher), (earth) => ahead.push(earth));
    expect(ahead).toHaveLength(1);
    expect(again?.kind).toBe("built");
  });

  it("keeps a surface that it made: neither the first question about it nor one asked meanwhile sends it", async () => {
    const { thread, sent } = wire();
    const here = createSolver();
    const [other, known] = [createSolver(), raised(project, 0)];
    other.solve(known, { detail: "drag" });
    const work = here.surfaceWork(project);
    if (!work) throw new Error("nothing to make a surface of");
    const [made] = await Promise.all([
      thread.surface(work),
      thread.late("options", known, other.surface(known)),
    ]);
    here.learnSurface(work, made);
    here.solve(project, { detail: "drag" });
    const late = await thread.late("plan", project, here.surface(project));
    if (!late) throw new Error("no answer");
    const asked = sent.at(-1);
    expect(asked?.kind === "late" && asked.surface.surface).toBeNull();
    expect(difference(here.solve(project, { late }), createSolver().solve(project))).toBeNull();
  });

  it("lays the surface on the points that are here already, so that a million of them are held once", async () => {
    const { thread } = wire();
    const work = createSolver().surfaceWork(project);
    if (!work) throw new Error("nothing to make a surface of");
    const made = await thread.surface(work);
    if (!made.ok) throw new Error("the demo's shots make a surface");
    const { x, y, z } = made.tin;
    expect([x, y, z].map((own, i) => own === [work[0].x, work[0].y, work[0].z][i])).toEqual([
      true,
      true,
      true,
    ]);
  });

  it("warms up on a surface that it has, and answers what is asked after it as if nothing had been", async () => {
    const { thread, sent, received } = wire();
    const here = createSolver();
    here.solve(project, { detail: "drag" });
    const surface = here.surface(project);
    thread.warmUp({ project, surface });
    expect(sent, "nobody told it that surface").toHaveLength(0);
    await thread.late("plan", project, surface);
    const higher = raised(project, 0.05);
    thread.warmUp({ project: higher, surface });
    const late = await thread.late("plan", project, surface);
    expect(sent.map(({ kind }) => kind)).toEqual(["late", "warm-up", "late"]);
    expect(received).toHaveLength(2);
    if (!late) throw new Error("no answer");
    expect(difference(here.solve(project, { late }), createSolver().solve(project))).toBeNull();
  });

  it("drops what is stale: of several asked at once only the first in work and the newest are solved", async () => {
    const { thread, sent } = wire();
    const here = createSolver();
    here.solve(project, { detail: "drag" });
    const surface = here.surface(project);
    const asked = [0, 0.05, 0.1, 0.15].map((by) => thread.late("plan", raised(project, by), surface));
    const late = await Promise.all(asked);
    expect(late.map((each) => each !== null)).toEqual([false, false, false, true]);
    expect(sent).toHaveLength(2);
  });

  it("looks for ways out in turns, and answers what is waited for in between", async () => {
    const { thread, received } = wire();
    const stuck = demoProject("joinery-shed");
    const here = createSolver();
    here.solve(stuck, { detail: "drag" });
    const surface = here.surface(stuck);
    const found: Finding[] = [];
    const done = new Promise<string | null>((end) => {
      thread.search(
        { kind: "wall-mends", wall: 0 },
        { project: stuck, surface },
        (each) => found.push(each),
        end,
      );
    });
    const late = thread.late("plan", stuck, surface);
    expect(await done).toBeNull();
    await late;
    const order = received.map(({ kind }) => kind);
    expect(order.indexOf("late")).toBeLessThan(order.indexOf("done"));
    for (const { project: mended } of found) expect(mended.survey).toBe(stuck.survey);
  });

  it("says what went wrong, and goes on", async () => {
    const { thread } = wire();
    const here = createSolver();
    here.solve(project, { detail: "drag" });
    const surface = here.surface(project);
    const broken = { ...project, lot: null } as unknown as Project;
    const why = await thread.late("plan", broken, surface).catch(String);
    expect(why).toContain("Error");
    expect((await thread.late("plan", project, surface))?.kind).toBe("built");
  });
});

it("a thread that dies tells all who wait and who ask later: nobody waits for ever", async () => {
  const port: ThreadPort = { onmessage: null, onerror: null, postMessage() {}, terminate() {} };
  const thread = threadOver(port);
  const here = createSolver();
  here.solve(project, { detail: "drag" });
  const surface = here.surface(project);
  const told: (string | null)[] = [];
  const waiting = [
    thread.late("plan", project, surface),
    thread.late("plan", raised(project, 0.1), surface),
    thread.late("options", project, surface),
  ].map((one) => one.then(() => "answered", String));
  thread.search(
    { kind: "ways-out" },
    { project, surface },
    () => {},
    (why) => told.push(why),
  );
  port.onerror?.({ message: "out of memory" });
  expect(await Promise.all(waiting)).toEqual(Array(3).fill("Error: out of memory"));
  expect(told).toEqual(["out of memory"]);
  await expect(thread.late("plan", project, surface)).rejects.toThrow("out of memory");
});

it("ways out are the same as the window's own search finds, with the plan's own shots", {
  timeout: 60_000,
}, async () => {
  const { thread } = wire();
  // Ground that falls 11 in 100: too much for a wall of 4 ft on a level footing.
  const steep = site({
    surface: plane(100, 0, 0.11),
    building: { ...shed, foundation: { kind: "crawl-space" } },
  });
  const here = createSolver();
  here.solve(steep, { detail: "drag" });
  const asked = { project: steep, surface: here.surface(steep) };
  const found: Finding[] = [];
  await new Promise((end) => thread.search({ kind: "ways-out" }, asked, (each) => found.push(each), end));
  const expected = waysOut(steep);
  expect(expected.length).toBeGreaterThan(0);
  expect(found.map(({ what }) => what)).toEqual(expected.map(({ what }) => what));
  for (const { project: changed } of found) expect(changed.survey).toBe(steep.survey);
});
