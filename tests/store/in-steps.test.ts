/** An edit that takes long: told, stopped or done, and one undo step. */
import { afterEach, beforeEach, expect, it, vi } from "vitest";
import { type Project, present, surveyEdits } from "../../src/document";
import { runInSteps, showProject, undoEdit } from "../../src/store/actions";
import { appStore } from "../../src/store/store";
import { demoProject } from "../support/demo";

const project = () => present(appStore.getState().history);
const add = (now: Project) => surveyEdits.addShot.run(now, { name: "far stake" });

beforeEach(() => {
  vi.stubGlobal("requestAnimationFrame", (draw: () => void) => setTimeout(draw));
  showProject(demoProject("pottery-studio"), { name: null, token: null });
});
afterEach(() => vi.unstubAllGlobals());

it("ends as one undo step, with its results, and tells its share on the way", async () => {
  const before = project();
  const told: number[] = [];
  const why = await runInSteps("join", [add, add], {
    tell: (share) => told.push(share),
    isStopped: () => false,
  });
  expect(why).toBeNull();
  expect(project().survey.shots).toHaveLength(before.survey.shots.length + 2);
  expect(appStore.getState().results.survey.points.at(-1)?.name).toBe("far stake");
  expect(told[0]).toBe(0);
  expect(told.length).toBeGreaterThan(3);
  undoEdit();
  expect(project()).toBe(before);
});

it("stopped after any step leaves the plan and its results as they were", async () => {
  const { history, results } = appStore.getState();
  for (let last = 0; last < 6; last++) {
    let asked = 0;
    const why = await runInSteps("join", [add], { tell: () => {}, isStopped: () => asked++ >= last });
    expect(why).toContain("stopped");
    expect(appStore.getState().history).toBe(history);
    expect(appStore.getState().results).toBe(results);
  }
});

it("a refused edit says why and changes nothing", async () => {
  const { history } = appStore.getState();
  const gone = (now: Project) => surveyEdits.removeMark.run(now, { id: now.survey.marks[0]?.id ?? "" });
  const why = await runInSteps("join", [gone], { tell: () => {}, isStopped: () => false });
  expect(why).toContain("Shots were read on this mark");
  expect(appStore.getState().history).toBe(history);
});
