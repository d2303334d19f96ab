// @vitest-environment jsdom
/** Keys reach what is being drawn wherever the focus went, and nobody loses a key of their own. */
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { listenToKeys } from "../../src/canvas/stage/keys";
import { machine, pointerAt, toolRun } from "../../src/canvas/stage/toolRun";
import { drawingEdits, newProject, siteEdits } from "../../src/document";
import { openDialog, run, select, setPointer, setTool, showProject } from "../../src/store/actions";
import { appStore } from "../../src/store/store";

let plan: HTMLElement;
let stop: () => void;

function put(html: string): HTMLElement {
  document.body.insertAdjacentHTML("beforeend", html);
  return document.body.lastElementChild as HTMLElement;
}

/** Presses a key where the focus is; true when nobody else gets it. */
function press(key: string): boolean {
  const at = document.activeElement ?? document.body;
  return !at.dispatchEvent(new KeyboardEvent("keydown", { key, bubbles: true, cancelable: true }));
}

function click(element: HTMLElement, detail = 1): void {
  element.focus();
  element.dispatchEvent(new MouseEvent("click", { bubbles: true, detail }));
}

const typed = () => toolRun.getState().entry.texts[0];
const tool = () => appStore.getState().tool;

beforeEach(() => {
  document.body.innerHTML = "";
  plan = put(`<div tabindex="0"></div>`);
  stop = listenToKeys(plan).stop;
  setTool("lot");
});
afterEach(() => {
  stop();
  openDialog(null);
  setTool("select");
});

describe("marks of feet and inches on keyboards where they wait for a letter", () => {
  const key = (init: KeyboardEventInit) =>
    plan.dispatchEvent(new KeyboardEvent("keydown", { bubbles: true, cancelable: true, ...init }));
  const dead = (shiftKey: boolean) => key({ key: "Dead", code: "Quote", shiftKey });

  beforeEach(() => {
    machine().press(pointerAt([0, 0]));
    machine().release(pointerAt([0, 0]));
  });

  it("are taken at once: 40'6\"", () => {
    for (const each of ["4", "0"]) key({ key: each });
    dead(false);
    key({ key: "6" });
    dead(true);
    expect(typed()).toBe("40'6\"");
  });

  it("aren't typed twice by the space that frees them, and a space that is a space stays", () => {
    for (const each of ["4", "0"]) key({ key: each });
    dead(false);
    key({ key: "'", code: "Space" });
    key({ key: " ", code: "Space" });
    key({ key: "6" });
    dead(true);
    expect(typed()).toBe("40' 6\"");
  });

  it("leave other waiting keys alone, and pick no tool", () => {
    key({ key: "4" });
    key({ key: "Dead", code: "BracketLeft" });
    expect(typed()).toBe("4");
    expect(tool()).toBe("lot");
  });

  it("come by AltGr as well, and as a curled mark", () => {
    const third = new KeyboardEvent("keydown", {
      key: "'",
      ctrlKey: true,
      altKey: true,
      modifierAltGraph: true,
    });
    key({ key: "4" });
    plan.dispatchEvent(third);
    key({ key: "6" });
    key({ key: "”" });
    expect(typed()).toBe("4'6”");
  });
});

describe("while a tool draws", () => {
  it("Esc steps back from a button and from nowhere", () => {
    put("<button>Zoom in</button>").focus();
    expect(press("Escape")).toBe(true);
    expect(tool()).toBe("select");
    setTool("lot");
    document.body.focus();
    press("Escape");
    expect(tool()).toBe("select");
  });

  it("figures typed on a button arrive, and Enter after them is the plan's", () => {
    put("<button>Zoom out</button>").focus();
    expect(press("Enter")).toBe(false);
    expect(press("2")).toBe(true);
    expect(document.activeElement).toBe(plan);
    press("0");
    expect(typed()).toBe("20");
  });

  it("with nothing in focus every key is the plan's", () => {
    press("7");
    press("Backspace");
    press("5");
    expect(typed()).toBe("5");
  });

  it("a figure that nothing here can take is answered, not lost in silence", async () => {
    setTool("stakes");
    document.body.focus();
    press("5");
    await new Promise((rest) => setTimeout(rest));
    expect(appStore.getState().messages.at(-1)?.text).toMatch(/^Figures have no use here\. \w/);
  });

  it("signs of a keyboard's third level arrive, whatever is held for them; shortcuts stay shortcuts", () => {
    plan.focus();
    press("1");
    const held = (key: string, how: KeyboardEventInit) =>
      plan.dispatchEvent(new KeyboardEvent("keydown", { key, bubbles: true, cancelable: true, ...how }));
    held("½", { altKey: true, ctrlKey: true });
    held("¾", { altKey: true });
    held("2", { altKey: true });
    held("°", { metaKey: true });
    expect(typed()).toBe("1½¾");
  });

  it("a field, a menu and a dialog keep theirs", () => {
    for (const html of [
      "<input>",
      "<textarea></textarea>",
      `<ul role="menu" tabindex="0"></ul>`,
      `<div role="dialog" tabindex="0"></div>`,
    ]) {
      put(html).focus();
      expect(press("Escape"), html).toBe(false);
      expect(press("2"), html).toBe(false);
    }
    put("<button>behind it</button>").focus();
    openDialog("commands");
    expect(press("Escape")).toBe(false);
    expect([tool(), typed()]).toEqual(["lot", ""]);
  });

  it("a click on a marked part gives the keys back, a press by key doesn't", () => {
    const button = put(`<div data-keys-to-plan><button>Zoom in</button></div>`)
      .firstElementChild as HTMLElement;
    click(button, 0);
    expect(document.activeElement).toBe(button);
    click(button);
    expect(document.activeElement).toBe(plan);
  });
});

describe("with nothing drawn", () => {
  beforeEach(() => setTool("select"));

  it("Esc lets go of the selection from anywhere, other keys stay where they are", () => {
    select([{ kind: "building" }]);
    put("<button>Align</button>").focus();
    expect(press("2")).toBe(false);
    press("Escape");
    expect(appStore.getState().selection).toEqual([]);
  });

  it("a click gives the keys back only where that is always meant", () => {
    const mere = put(`<div data-keys-to-plan><button>Zoom in</button></div>`)
      .firstElementChild as HTMLElement;
    click(mere);
    expect(document.activeElement).toBe(mere);
    click(put(`<button data-keys-to-plan="always">Align left</button>`));
    expect(document.activeElement).toBe(plan);
  });
});

describe("what is pointed at", () => {
  const tree = { kind: "feature", id: "f1" } as const;
  const hint = () => toolRun.getState().state.hint;

  beforeEach(() => {
    setTool("select");
    const project = siteEdits.addFeature.run(newProject(), { kind: "tree", points: [[0, 0]] });
    if (project.ok) showProject(project.project, { name: null, token: null });
    select([tree]);
    setPointer([0, 0]);
    machine().move(pointerAt([0, 0]));
  });
  afterEach(() => {
    setPointer(null);
    select([]);
  });

  it("is told anew at once when it was hidden or let go, though the hand rests", () => {
    expect(hint()).toMatch(/^Drag to move the feature/);
    run(drawingEdits.hideThings, { things: [tree], hidden: true });
    select([]);
    expect(hint()).toMatch(/^Click a thing to select it/);
    expect(toolRun.getState().state.hovered).toBeNull();
  });

  it("is nothing once the hand has left the plan", () => {
    setPointer(null);
    run(drawingEdits.lockThings, { things: [tree], locked: true });
    expect(hint()).toBe("The feature is selected and locked: right click to unlock, Esc lets go");
    select([]);
    expect(hint()).toMatch(/^Click a thing to select it/);
  });
});
