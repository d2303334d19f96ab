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
  stop = listenToKeys([command("door", ["D"]), command("find", ["Mod+K"])]);
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
});
