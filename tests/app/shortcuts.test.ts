// @vitest-environment jsdom
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { listenToKeys } from "../../src/app/shortcuts";
import type { AppCommand } from "../../src/panels/command";
import { openDialog } from "../../src/store/actions";

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

let stop: () => void;
beforeEach(() => {
  done.length = 0;
  stop = listenToKeys([command("door", ["D"]), command("find", ["Mod+K"]), command("copy", ["Mod+C"])]);
});
afterEach(() => {
  stop();
  openDialog(null);
});

describe("shortcuts", () => {
  it("fire on their keys", () => {
    press("d");
    press("k", { ctrlKey: true });
    expect(done).toEqual(["door", "find"]);
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
});
