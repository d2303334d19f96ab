/** Shortcuts: how one is written, and whether a key press is it. */

export interface KeyPress {
  readonly key: string;
  readonly ctrlKey: boolean;
  readonly metaKey: boolean;
  readonly shiftKey: boolean;
  readonly altKey: boolean;
}

/** Whether `press` is the shortcut `keys`; Mod is Cmd on a Mac, else Ctrl. */
export function isPressed(keys: string, press: KeyPress, mac: boolean): boolean {
  const parts = partsOf(keys);
  const key = parts.at(-1) ?? "";
  const wants = (modifier: string) => parts.slice(0, -1).includes(modifier);
  const [mod, other] = mac ? [press.metaKey, press.ctrlKey] : [press.ctrlKey, press.metaKey];
  if (mod !== wants("Mod") || other || press.altKey !== wants("Alt")) return false;
  // "?" and "+" need Shift on most keyboards; there the sign itself says enough.
  const shiftMatters = key.length > 1 || /[a-z0-9]/i.test(key);
  if (shiftMatters && press.shiftKey !== wants("Shift")) return false;
  return press.key.toLowerCase() === key.toLowerCase();
}

function partsOf(keys: string): readonly string[] {
  return keys === "+" ? ["+"] : keys.split("+");
}

/** A shortcut of one plain key: it must not fire while a person types. */
export function isPlainKey(keys: string): boolean {
  return !keys.includes("Mod+") && !keys.includes("Alt+") && !/(^|\+)F\d+$/.test(keys);
}

const arrows: Readonly<Record<string, string>> = { ArrowUp: "↑", ArrowDown: "↓" };
const macSigns: Readonly<Record<string, string>> = { Mod: "⌘", Shift: "⇧", Alt: "⌥" };

/** "Ctrl+K", on a Mac "⌘K". */
export function keysText(keys: string, mac: boolean): string {
  const parts = partsOf(keys).map((part) => arrows[part] ?? part);
  return mac
    ? parts.map((part) => macSigns[part] ?? part).join("")
    : parts.map((part) => (part === "Mod" ? "Ctrl" : part)).join("+");
}

export function onMac(): boolean {
  return /mac|iphone|ipad/i.test(navigator.platform);
}

/** A key whose sign is still to be composed, with the next one or by an input method: the field that it opens gets it. */
export function isComposed({ key }: { readonly key: string }): boolean {
  return key === "Dead" || key === "Process";
}
