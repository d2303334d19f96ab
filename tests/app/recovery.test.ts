import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { keepRecovery, keepTitle } from "../../src/app/recovery";
import { newProject, openProject, present, siteEdits } from "../../src/document";
import { markSaved, run, showProject, showStart, undoEdit } from "../../src/store/actions";
import { appStore } from "../../src/store/store";
import { fakeHost } from "./fakeHost";

const rename = (name: string) => run(siteEdits.renameProject, { name });
const textOf = async (kept: Blob | null | undefined) => (await kept?.text()) ?? "";
const project = () => present(appStore.getState().history);

beforeEach(() => {
  vi.useFakeTimers();
  showProject(newProject("plan"), { name: null, token: null });
});
afterEach(() => vi.useRealTimers());

describe("the recovery journal", () => {
  it("keeps unsaved work within a second, however many edits there were", async () => {
    const host = fakeHost();
    const stop = keepRecovery(host);
    for (const name of ["a", "b", "c"]) rename(name);
    expect(host.kept).toHaveLength(0);
    vi.advanceTimersByTime(1000);
    expect(host.kept).toHaveLength(1);
    const kept = openProject(await textOf(host.kept[0]));
    expect(kept.ok && kept.project.name).toBe("c");
    stop();
  });

  it("goes on keeping while edits go on", () => {
    const host = fakeHost();
    const stop = keepRecovery(host);
    for (let i = 0; i < 5; i++) {
      rename(`name ${i}`);
      vi.advanceTimersByTime(600);
    }
    expect(host.kept.length).toBeGreaterThanOrEqual(2);
    stop();
  });

  it("waits while something is under the hand, and notes what it becomes", async () => {
    const host = fakeHost();
    const stop = keepRecovery(host);
    rename("a");
    appStore.setState({ preview: newProject("b") });
    vi.advanceTimersByTime(5000);
    expect(host.kept).toHaveLength(0);
    rename("b");
    vi.advanceTimersByTime(1000);
    expect(host.kept).toHaveLength(1);
    const kept = openProject(await textOf(host.kept[0]));
    expect(kept.ok && kept.project.name).toBe("b");
    stop();
  });

  it("notes very many shots a little at a time, and what was changed meanwhile after them", async () => {
    const host = fakeHost();
    const stop = keepRecovery(host);
    const plan = newProject("many");
    const shot = { id: "s", name: "", setup: "u1", reading: null, kind: "ground", of: null } as const;
    const rest = { place: { kind: "none" }, note: "", aside: false, accepted: false } as const;
    const shots = Array.from({ length: 8000 }, (_, i) => ({ ...shot, ...rest, id: `s${i}` }));
    showProject({ ...plan, survey: { ...plan.survey, shots } }, { name: null, token: null });
    let clock = 0;
    const now = vi.spyOn(performance, "now").mockImplementation(() => {
      clock += 3;
      return clock;
    });
    rename("a");
    vi.advanceTimersByTime(1000);
    expect(host.kept).toHaveLength(0);
    rename("b");
    vi.advanceTimersByTime(100);
    expect(host.kept).toHaveLength(1);
    const first = openProject(await textOf(host.kept[0]));
    expect(first.ok && [first.project.name, first.project.survey.shots.length]).toEqual(["a", 8000]);
    vi.advanceTimersByTime(2000);
    const last = openProject(await textOf(host.kept.at(-1)));
    expect(last.ok && last.project.name).toBe("b");
    now.mockRestore();
    stop();
  });

  it("is cleared when the work is saved or taken back", () => {
    const host = fakeHost();
    const stop = keepRecovery(host);
    rename("a");
    vi.advanceTimersByTime(1000);
    markSaved(project(), { name: "plan.drysill.json", token: "t" });
    expect(host.kept.at(-1)).toBeNull();
    run(siteEdits.setNorth, { north: 0.1 });
    vi.advanceTimersByTime(1000);
    expect(host.kept.at(-1)).not.toBeNull();
    undoEdit();
    expect(host.kept.at(-1)).toBeNull();
    stop();
  });

  it("leaves an earlier crash's work alone while nothing was changed", () => {
    const host = fakeHost();
    const stop = keepRecovery(host);
    showProject(newProject("another"), { name: null, token: null });
    vi.advanceTimersByTime(5000);
    expect(host.kept).toEqual([]);
    stop();
  });
});

describe("the window's title", () => {
  it("names the plan and marks what isn't saved", () => {
    const host = fakeHost();
    const stop = keepTitle(host);
    rename("shed");
    markSaved(project(), { name: "shed.drysill.json", token: "t" });
    showStart();
    expect(host.titles).toEqual(["plan", "shed *", "shed", ""]);
    stop();
  });
});
