import { describe, expect, it } from "vitest";
import {
  jump,
  longestHistory,
  newProject,
  present,
  record,
  redo,
  redoLabel,
  seal,
  startHistory,
  undo,
  undoLabel,
} from "../../src/document";

const named = (name: string) => newProject(name);

describe("history", () => {
  it("steps back and forth through edits by name", () => {
    let history = startHistory(named("a"));
    history = record(history, named("b"), "draw lot");
    history = record(history, named("c"), "draw building");
    expect(undoLabel(history)).toBe("draw building");
    history = undo(history);
    expect(present(history).name).toBe("b");
    expect(redoLabel(history)).toBe("draw building");
    expect(present(redo(history)).name).toBe("c");
  });

  it("drops what was undone once a new edit is made", () => {
    let history = record(startHistory(named("a")), named("b"), "one");
    history = record(undo(history), named("c"), "two");
    expect(redoLabel(history)).toBeNull();
    expect(history.steps.map((step) => step.project.name)).toEqual(["a", "c"]);
  });

  it("makes one step of edits in a row with the same key, and keeps the project before them", () => {
    let history = startHistory(named("a"));
    for (const name of ["b", "c", "d"]) history = record(history, named(name), "nudge", "nudge floor");
    expect(history.steps).toHaveLength(2);
    expect(present(undo(history)).name).toBe("a");
  });

  it("does not merge into a step that undo has left", () => {
    let history = record(startHistory(named("a")), named("b"), "nudge", "k");
    history = record(history, named("c"), "other");
    history = undo(history);
    history = record(history, named("d"), "nudge", "k");
    expect(history.steps.map((step) => step.project.name)).toEqual(["a", "b", "d"]);
  });

  it("starts a new step after a save, even in a run of like edits", () => {
    let history = record(startHistory(named("a")), named("b"), "nudge", "k");
    history = record(seal(history), named("c"), "nudge", "k");
    expect(history.steps.map((step) => step.project.name)).toEqual(["a", "b", "c"]);
    expect(seal(startHistory(named("a"))).steps).toHaveLength(1);
  });

  it("is bounded: the oldest steps go first", () => {
    let history = startHistory(named("0"));
    for (let i = 1; i <= longestHistory + 50; i++) history = record(history, named(String(i)), `edit ${i}`);
    expect(history.steps).toHaveLength(longestHistory);
    expect(present(history).name).toBe(String(longestHistory + 50));
    expect(present(jump(history, 0)).name).toBe("51");
  });

  it("stays where it is when there is nothing to undo, redo or jump to", () => {
    const history = startHistory(named("a"));
    expect(undo(history)).toBe(history);
    expect(redo(history)).toBe(history);
    expect(jump(history, 7)).toBe(history);
    expect(record(history, present(history), "nothing")).toBe(history);
  });
});
