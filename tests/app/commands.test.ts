import { describe, expect, it } from "vitest";
import { appCommands } from "../../src/app/commands";
import { filesThrough } from "../../src/app/files";
import { runCommand } from "../../src/app/requests";
import { toolRun } from "../../src/canvas/stage/toolRun";
import { drawingEdits, newProject, present } from "../../src/document";
import { menuPlaces } from "../../src/panels/command";
import { findCommands } from "../../src/panels/dialogs/find";
import { tableTitles } from "../../src/panels/table/tables";
import { run as runEdit, showProject, showStart } from "../../src/store/actions";
import { appStore } from "../../src/store/store";
import { demoProject } from "../support/demo";
import { fakeHost } from "./fakeHost";

const commands = appCommands(filesThrough(fakeHost()));
const run = (id: string) => runCommand(commands, id);
const state = () => appStore.getState();

describe("the list of commands", () => {
  it("has a name and an id of its own for each, and no key twice but for what does and undoes", () => {
    expect(commands.every(({ name }) => name.length > 2)).toBe(true);
    expect(new Set(commands.map(({ id }) => id)).size).toBe(commands.length);
    const keys = commands.flatMap((command) => command.keys ?? []);
    expect(keys.filter((key, i) => keys.indexOf(key) !== i)).toEqual(["Shift+Mod+L"]);
  });

  it.each([
    ["150", "view.text.150"],
    ["bigger text", "view.text.150"],
    ["stump", "draw.feature.stump"],
    ["septic", "draw.feature.septic"],
    ["gas", "draw.feature.buried-line"],
    ["retaining wall", "draw.earth.wall"],
    ["terrace", "draw.earth.terrace"],
    ["slope", "view.layer.slopes"],
    ["steep", "view.layer.slopes"],
    ["driveway", "draw.drive"],
    ["ruler", "draw.measure"],
    ["house", "draw.building"],
    ["pull", "draw.building.pull"],
    ["add-on", "draw.building.add-on"],
    ["wing", "draw.building.add-on"],
    ["polygon", "draw.building.outline"],
    ["outline", "draw.building.outline"],
    ["three", "draw.building.side"],
    ["two corners", "draw.building.corners"],
    ["ditch", "draw.swale"],
    ["drainage", "draw.swale"],
    ["benchmark", "draw.mark"],
    ["property", "draw.lot"],
    ["cross section", "draw.section"],
    ["metric", "view.settings"],
    ["gutter", "step.water"],
    ["frost", "step.foundation"],
    ["rebar", "step.foundation"],
    ["gravel", "step.quantities"],
    ["trucks", "step.quantities"],
    ["volume", "step.quantities"],
    ["dark mode", "view.theme"],
    ["tutorial", "help.tour"],
    ["print", "plan.exportSitePlan"],
  ])("is searched by the trade's and everyday words: “%s”", (typed, id) => {
    const first = findCommands(commands, typed).slice(0, 6);
    expect(first.map((command) => command.id)).toContain(id);
  });

  it.each([...Object.values(tableTitles), "bill", "stakes"])(
    "finds the tables by what stands in them: “%s”",
    (typed) => {
      expect(findCommands(commands, typed).map(({ id }) => id)).toContain("edit.tables");
    },
  );

  it("sets the text's size, and picks a tool with its kind", () => {
    showProject(newProject(), { name: null, token: null });
    run("view.text.150");
    expect(state().preferences.textSize).toBe(1.5);
    run("view.text.100");
    expect(state().preferences.textSize).toBe(1);
    run("draw.feature.stump");
    expect(state().tool).toBe("feature");
    expect(toolRun.getState().state.choices?.chosen).toBe("stump");
    run("draw.feature.well");
    expect(toolRun.getState().state.choices?.chosen).toBe("well");
    run("draw.earth.wall");
    expect([state().tool, toolRun.getState().state.choices?.chosen]).toEqual(["earth", "wall"]);
    run("draw.select");
  });

  it("pulls a wall of a building that stands, by name and from the menu", () => {
    const pull = commands.find(({ id }) => id === "draw.building.pull");
    showProject(newProject(), { name: null, token: null });
    expect(pull?.whyNot?.(state())).toBe("Draw the building first.");
    showProject(demoProject("pottery-studio"), { name: null, token: null });
    expect(pull).toMatchObject({ place: "Draw", finderOnly: false });
    run("draw.building.pull");
    expect(toolRun.getState().state).toMatchObject({ name: "choosingWall", choices: { chosen: "pull" } });
    run("draw.select");
  });

  it("does nothing where a command makes no sense", () => {
    showProject(newProject(), { name: null, token: null });
    const before = state();
    run("edit.undo");
    run("edit.floorUp");
    run("plan.exportSitePlan");
    expect(state()).toBe(before);
    showStart();
    run("view.settings");
    expect(state().dialog).toBeNull();
  });

  it("says why where a command makes no sense, and has a place in a menu for each", () => {
    showProject(newProject(), { name: null, token: null });
    const why = (id: string) => commands.find((each) => each.id === id)?.whyNot?.(state()) ?? null;
    expect(why("edit.undo")).toBe("There is nothing to undo.");
    expect(why("plan.exportSitePlan")).toBe("Draw the building first.");
    expect(why("view.fit")).toBeNull();
    showStart();
    expect(why("view.fit")).toBe("Open or begin a plan first.");
    expect(commands.every(({ place }) => menuPlaces.includes(place))).toBe(true);
  });

  it("lays a picture only where there is one that isn't locked", () => {
    showProject(newProject(), { name: null, token: null });
    const why = () => commands.find(({ id }) => id === "draw.picturePoints")?.whyNot?.(state()) ?? null;
    expect(why()).toBe("Place a picture first.");
    const underlay = { name: "plat", media: "image/png", data: "AAAA", width: 4, height: 2 } as const;
    runEdit(drawingEdits.addUnderlay, {
      underlay: { ...underlay, at: [0, 0], scale: 1, turn: 0, strength: 1 },
    });
    expect(why()).toBeNull();
    run("draw.picturePoints");
    expect(state().tool).toBe("picture-points");
    expect(state().selection).toEqual([{ kind: "underlay", id: "u1" }]);
    runEdit(drawingEdits.lockThings, { things: [{ kind: "underlay", id: "u1" }], locked: true });
    expect(why()).toContain("locked");
  });

  it("steps the floor, steps in a row being one to undo", () => {
    showProject(demoProject("pottery-studio"), { name: null, token: null });
    const floor = () => present(state().history).building?.floor ?? Number.NaN;
    const start = floor();
    run("edit.floorUp");
    run("edit.floorUp");
    expect(floor() - start).toBeCloseTo(0.0254, 12);
    expect(state().history.steps).toHaveLength(2);
    run("edit.undo");
    expect(floor()).toBe(start);
    run("edit.redo");
    run("edit.floorDown");
    expect(floor() - start).toBeCloseTo(0.0127, 12);
  });

  it("goes through the steps and stops at the ends", () => {
    run("step.lot");
    run("step.previous");
    expect(state().step).toBe("lot");
    run("step.next");
    expect(state().step).toBe("shots");
  });

  it("goes round the themes", () => {
    const seen = [0, 1, 2].map(() => {
      run("view.theme");
      return state().theme;
    });
    expect([...seen].sort()).toEqual(["dark", "light", "system"]);
  });
});
