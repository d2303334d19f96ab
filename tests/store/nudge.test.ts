/** Keys that move things: each press is as light as a drag, and what lags follows once they rest. */
import { afterEach, beforeEach, expect, it, vi } from "vitest";
import { arrangeEdits, present } from "../../src/document";
import { nudge, nudgeFloor, showProject, undoEdit } from "../../src/store/actions";
import { appStore, solver } from "../../src/store/store";
import { demoProject } from "../support/demo";

const state = () => appStore.getState();
const corner = () => present(state().history).building?.outline[0]?.[0] ?? Number.NaN;
const press = () =>
  nudge(arrangeEdits.moveThings, { things: [{ kind: "building" }], by: [0.01, 0], mergeKey: "nudge" });
/** How each solve was asked for, in turn. */
const solves = () => vi.mocked(solver.solve).mock.calls.map(([, options]) => options?.detail ?? "full");

beforeEach(() => {
  vi.useFakeTimers();
  vi.stubGlobal("requestAnimationFrame", (draw: () => void) => setTimeout(draw, 16));
  showProject(demoProject("pottery-studio"), { name: null, token: null });
  const { results } = state();
  // Only which solve is asked for matters here.
  vi.spyOn(solver, "solve").mockImplementation((_, options) => ({
    ...results,
    lagging: options?.detail === "drag",
  }));
});
afterEach(() => {
  vi.restoreAllMocks();
  vi.unstubAllGlobals();
  vi.useRealTimers();
});

it("a held key costs one light solve a frame, and one full solve when it rests", () => {
  const start = corner();
  press();
  vi.advanceTimersByTime(600);
  for (let i = 0; i < 10; i++) {
    press();
    press();
    vi.advanceTimersByTime(33);
  }
  expect(corner() - start).toBeCloseTo(0.21, 9);
  expect(solves()).toEqual(Array(11).fill("drag"));
  expect(state().results.lagging).toBe(true);
  vi.advanceTimersByTime(1000);
  expect(solves().slice(11)).toEqual(["full"]);
  expect(state()).toMatchObject({ nudging: false, results: { lagging: false } });
  undoEdit();
  expect(corner()).toBe(start);
});

it("an edit in between ends it, with all results", () => {
  press();
  undoEdit();
  expect(state()).toMatchObject({ nudging: false, results: { lagging: false } });
  vi.advanceTimersByTime(2000);
  expect(solves()).toEqual(["full"]);
});

it("what can't be moved is said, and nothing is solved", () => {
  const edit = nudge(arrangeEdits.moveThings, { things: [], by: [1, 0] });
  expect(edit.ok).toBe(false);
  expect(state().messages.at(-1)?.text).toBe("Select something first.");
  vi.advanceTimersByTime(2000);
  expect(solves()).toEqual([]);
});

it("steps of the floor by a held key wait for the same rest", () => {
  nudgeFloor(0.01, "floor up");
  vi.advanceTimersByTime(500);
  nudgeFloor(0.01, "floor up");
  expect(solves()).toEqual(["drag", "drag"]);
  vi.advanceTimersByTime(1000);
  expect(solves()).toEqual(["drag", "drag", "full"]);
});
