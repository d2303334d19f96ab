/** The page's keys as a native menu writes them. */

export interface Accelerator {
  readonly accelerator?: string;
  /** False: the menu only shows the key, and the page hears it. */
  readonly registerAccelerator?: boolean;
}

const modifiers: Readonly<Record<string, string>> = { Mod: "CmdOrCtrl", Shift: "Shift", Alt: "Alt" };
const named: Readonly<Record<string, string>> = {
  ArrowUp: "Up",
  ArrowDown: "Down",
  ArrowLeft: "Left",
  ArrowRight: "Right",
  Delete: "Delete",
  "+": "Plus",
};

/** These mean the text where a person types, so the page must hear them first. */
const ofTyping = /^Mod\+[ACDVX]$/;

/**
 * The key that a native menu shows for a command: of several the one usual on the platform. Keys that belong to typing,
 * and keys without Ctrl or Cmd, are left to the page; where the system would take them all the same they aren't shown.
 */
export function accelerator(keys: readonly string[], platform: NodeJS.Platform): Accelerator {
  const key = (platform === "win32" && keys.find((each) => each === "Mod+Y")) || keys[0];
  const native = key === undefined ? null : nativeKey(key);
  if (key === undefined || native === null) return {};
  if ((key.includes("Mod+") && !ofTyping.test(key)) || /^F\d+$/.test(key)) return { accelerator: native };
  return platform === "darwin" ? {} : { accelerator: native, registerAccelerator: false };
}

function nativeKey(key: string): string | null {
  const parts = key === "+" ? [key] : key.split("+");
  const last = parts.pop() ?? "";
  const letter = named[last] ?? (/^([A-Z0-9,\-[\]]|F\d{1,2})$/.test(last) ? last : null);
  if (letter === null || parts.some((part) => !modifiers[part])) return null;
  return [...parts.map((part) => modifiers[part]), letter].join("+");
}
