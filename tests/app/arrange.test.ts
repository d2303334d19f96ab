/** Acts on what is selected, as the menu, the keys and the finder run them. */
import { beforeEach, describe, expect, it } from "vitest";
import { appCommands } from "../../src/app/commands";
import { filesThrough } from "../../src/app/files";
import { runCommand } from "../../src/app/requests";
import {
  hiddenThings,
  newProject,
  present,
  type Thing,
  thingName,
  thingShape,
  undoLabel,
} from "../../src/document";
import { select, showProject } from "../../src/store/actions";
import { appStore } from "../../src/store/store";
import { demoProject } from "../support/demo";
import { fakeHost } from "./fakeHost";

const commands = appCommands(filesThrough(fakeHost()));
const run = (id: string) => runCommand(commands, id);
const state = () => appStore.getState();
const project = () => present(state().history);
const why = (id: string) => commands.find((each) => each.id === id)?.whyNot?.(state()) ?? null;
const tree: Thing = { kind: "feature", id: demoProject("pottery-studio").lot.features[0]?.id ?? "" };

beforeEach(() => {
  appStore.setState({ clip: null });
  showProject(demoProject("pottery-studio"), { name: null, token: null });
});

describe("acts on what is selected", () => {
  it("say why where nothing fits", () => {
    expect(why("edit.duplicate")).toBe("Select something first.");
    expect(why("edit.paste")).toBe("Copy something first.");
    expect(why("arrange.align.left")).toBe("Select at least 2 things first.");
    expect(why("arrange.showAll")).toBe("Nothing is hidden.");
    select([{ kind: "building" }]);
    expect(why("edit.duplicate")).toMatch(/one building/);
    expect(why("arrange.turn")).toBeNull();
  });

  it("select everything that is seen and loose", () => {
    select([tree]);
    run("arrange.lock");
    run("edit.selectAll");
    expect(state().selection).not.toContainEqual(tree);
    expect(state().selection).toContainEqual({ kind: "building" });
    select([tree]);
    expect(why("edit.delete")).toMatch(/is locked/);
    expect(why("arrange.lock")).toBe("It is locked already.");
    run("arrange.unlock");
    expect(project().drawing.locked).toEqual([]);
  });

  it("duplicate beside, and select the copy", () => {
    select([tree]);
    run("edit.duplicate");
    const [copy] = state().selection;
    expect(copy).not.toEqual(tree);
    expect(thingName(project(), copy as Thing)).toBe(thingName(project(), tree));
    expect(undoLabel(state().history)).toBe("duplicate feature");
    // It lies whole inches aside, as the plan's notation counts.
    const [from, to] = [tree, copy as Thing].map(
      (thing) => thingShape(project(), thing)?.points[0] ?? [0, 0],
    );
    const aside = [0, 1].map((i) => ((to?.[i] ?? 0) - (from?.[i] ?? 0)) / 0.0254);
    for (const inches of aside) expect(inches).toBeCloseTo(Math.round(inches), 6);
    expect(Math.abs(aside[0] ?? 0)).toBeGreaterThan(0);
    run("edit.delete");
    expect(project().lot.features).toHaveLength(demoProject("pottery-studio").lot.features.length);
    expect(state().selection).toEqual([]);
  });

  it("paste into another plan", () => {
    select([tree]);
    run("edit.copy");
    showProject(newProject(), { name: null, token: null });
    appStore.setState({ pointer: [7, 9] });
    run("edit.paste");
    expect(project().lot.features).toHaveLength(1);
    expect(project().lot.features[0]?.points[0]?.[0]).toBeCloseTo(7, 9);
    expect(project().lot.features[0]?.points[0]?.[1]).toBeCloseTo(9, 9);
  });

  it("hide things, and show all of them again", () => {
    select([tree, { kind: "building" }]);
    run("arrange.hide");
    expect(project().drawing.hidden).toHaveLength(2);
    expect(state().selection).toEqual([]);
    run("arrange.showAll");
    expect(project().drawing.hidden).toEqual([]);
    expect(undoLabel(state().history)).toBe("show 2 things");
  });

  it("count as hidden only what is still on the plan", () => {
    select([tree, { kind: "building" }]);
    run("arrange.hide");
    expect(hiddenThings(project())).toHaveLength(2);
    select([tree]);
    run("edit.delete");
    expect(hiddenThings(project())).toEqual([{ kind: "building" }]);
    run("arrange.showAll");
    expect(hiddenThings(project())).toEqual([]);
    expect(why("arrange.showAll")).toBe("Nothing is hidden.");
  });

  it("keep the selection for the tools that work on it", () => {
    select([tree]);
    run("arrange.turn");
    expect(state().tool).toBe("turn");
    expect(state().selection).toEqual([tree]);
  });

  it("let go of what an undo takes away", () => {
    select([tree]);
    run("edit.duplicate");
    run("edit.undo");
    expect(state().selection).toEqual([]);
    select([tree, { kind: "building" }]);
    const before = state().selection;
    run("edit.floorUp");
    expect(state().selection).toBe(before);
  });
});
