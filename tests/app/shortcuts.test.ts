// @vitest-environment jsdom
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { appCommands } from "../../src/app/commands";
import { filesThrough } from "../../src/app/files";
import { listenToKeys } from "../../src/app/shortcuts";
import { machine, pickAnew } from "../../src/canvas/stage/toolRun";
import type { PlanPointer } from "../../src/canvas/tools/tool";
import type { AppCommand } from "../../src/panels/command";
import { pickOnPlan } from "../../src/panels/survey/pickOnPlan";
import { openDialog, setTool, showStart } from "../../src/store/actions";
import { pickTool } from "../../src/store/pickTool";
import { appStore } from "../../src/store/store";
import { fakeHost } from "./fakeHost";

const done: string[] = [];
const command = (id: string, keys: string[]): AppCommand => ({
  id,
  name: id,
  place: "View",
  keys,
  run: () => void done.push(id),
});
const press = (key: string, held: KeyboardEventInit = {}) =>
  window.dispatchEvent(new KeyboardEvent("keydown", { key, cancelable: true, ...held }));

const drawDoor = () => {
  done.push("draw.door");
  pickTool("door");
};

let stop: () => void;
beforeEach(() => {
  done.length = 0;
  stop = listenToKeys([
    { ...command("draw.door", ["D"]), run: drawDoor },
    command("find", ["Mod+K"]),
    command("copy", ["Mod+C"]),
  ]);
});
afterEach(() => {
  stop();
  openDialog(null);
});

describe("shortcuts", () => {
  it("fire on their keys", () => {
    press("d");
    press("k", { ctrlKey: true });
    expect(done).toEqual(["draw.door", "find"]);
  });

  it("shared by what does and what undoes mean the one that can be done", () => {
    stop();
    let locked = false;
    const whyNot = (wants: boolean) => () => (locked === wants ? null : "It is so already.");
    stop = listenToKeys([
      { ...command("lock", ["Shift+Mod+L"]), whyNot: whyNot(false) },
      { ...command("unlock", ["Shift+Mod+L"]), whyNot: whyNot(true) },
    ]);
    press("L", { ctrlKey: true, shiftKey: true });
    locked = true;
    press("L", { ctrlKey: true, shiftKey: true });
    expect(done).toEqual(["lock", "unlock"]);
  });

  it("of one plain key stay silent from the moment a dialog is asked for", () => {
    openDialog("commands");
    press("d");
    press("k", { ctrlKey: true });
    expect(done).toEqual(["find"]);
  });

  it("that copy and paste things leave a field where a person types alone", () => {
    const field = document.body.appendChild(document.createElement("input"));
    field.dispatchEvent(new KeyboardEvent("keydown", { key: "c", ctrlKey: true, bubbles: true }));
    field.dispatchEvent(new KeyboardEvent("keydown", { key: "k", ctrlKey: true, bubbles: true }));
    field.remove();
    press("c", { ctrlKey: true });
    expect(done).toEqual(["find", "copy"]);
  });

  it("of another tool leave what is half drawn alone, and so do its button, its kinds and its places in lists", () => {
    const at = (x: number): PlanPointer => ({
      at: [x, 0],
      screen: [x, 0],
      free: true,
      adds: false,
      copies: false,
      touch: false,
    });
    const click = (x: number) => {
      machine().press(at(x));
      machine().release(at(x));
    };
    appStore.setState({ screen: "plan" });
    setTool("measure");
    click(0);
    const begins = (id: string) => () =>
      appCommands(filesThrough(fakeHost()))
        .find((each) => each.id === id)
        ?.run();
    const ways = [
      () => press("d"),
      begins("draw.door"),
      begins("draw.feature.tree"),
      begins("arrange.turn"),
      () => pickAnew("measure"),
      () => pickOnPlan({ id: "1", place: { kind: "none" } }),
    ];
    for (const begin of ways) {
      appStore.setState({ messages: [] });
      begin();
      expect(appStore.getState()).toMatchObject({ tool: "measure", selection: [] });
      expect(machine().halfDrawn()).toBe(true);
      expect(appStore.getState().messages.map(({ text }) => text)).toEqual([
        "What you draw isn't finished. Enter ends it, Esc gives it up; then take the other tool.",
      ]);
    }
    click(20);
    machine().key("Enter", false);
    expect(machine().state().name).toBe("measured");
    press("d");
    expect(appStore.getState().tool).toBe("door");
    setTool("select");
    showStart();
  });
});
