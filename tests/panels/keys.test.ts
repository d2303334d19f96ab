import { describe, expect, it } from "vitest";
import { isPlainKey, isPressed, type KeyPress, keysText } from "../../src/panels/keys";

const press = (key: string, held: Partial<KeyPress> = {}): KeyPress => ({
  key,
  ctrlKey: false,
  metaKey: false,
  shiftKey: false,
  altKey: false,
  ...held,
});

describe("a key press is a shortcut", () => {
  it.each([
    ["Mod+K", press("k", { ctrlKey: true }), false, true],
    ["Mod+K", press("k", { metaKey: true }), true, true],
    ["Mod+K", press("k", { metaKey: true }), false, false],
    ["Mod+Z", press("Z", { ctrlKey: true, shiftKey: true }), false, false],
    ["Shift+Mod+Z", press("Z", { ctrlKey: true, shiftKey: true }), false, true],
    ["?", press("?", { shiftKey: true }), false, true],
    ["+", press("+", { shiftKey: true }), false, true],
    ["F", press("f"), false, true],
    ["F", press("F", { shiftKey: true }), false, false],
    ["F", press("f", { altKey: true }), false, false],
    ["Alt+ArrowUp", press("ArrowUp", { altKey: true }), false, true],
  ] as const)("%s %o on a Mac %s: %s", (keys, event, mac, is) => {
    expect(isPressed(keys, event, mac)).toBe(is);
  });

  it("knows which ones a field keeps for itself", () => {
    expect(["F6", "Shift+F6"].map(isPlainKey)).toEqual([false, false]);
    expect(["F", "?", "Shift+F", "Mod+K", "Alt+ArrowUp"].map(isPlainKey)).toEqual([
      true,
      true,
      true,
      false,
      false,
    ]);
  });

  it("is written as people see it on their keyboard", () => {
    expect(keysText("Shift+Mod+S", false)).toBe("Shift+Ctrl+S");
    expect(keysText("Shift+Mod+S", true)).toBe("⇧⌘S");
    expect(keysText("Alt+ArrowUp", false)).toBe("Alt+↑");
    expect(keysText("+", false)).toBe("+");
  });
});
