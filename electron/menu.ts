import type { MenuItemConstructorOptions } from "electron";
import type { OfferedCommand } from "../src/host/host";
import { accelerator } from "./accelerator";

type Item = MenuItemConstructorOptions;

export interface MenuActs {
  readonly runCommand: (id: string) => void;
  readonly openRecent: (path: string) => void;
}

export interface RecentItem {
  readonly label: string;
  readonly path: string;
}

/**
 * The native menu: every command that the page offers, in the page's own menus and order, and the system's usual items.
 * Each sends its command to the page, which knows whether it applies. Until the page has spoken only the system's are there.
 */
export function menuTemplate(
  platform: NodeJS.Platform,
  recent: readonly RecentItem[],
  offered: readonly OfferedCommand[],
  acts: MenuActs,
): Item[] {
  const mac = platform === "darwin";
  const shared = sharedKeys(offered);
  const of = (place: string) =>
    offered
      .filter((command) => command.place === place)
      .map((command) => item(command, platform, acts, shared));
  const places = [...new Set(offered.map(({ place }) => place))];
  const own = places
    .filter((place) => !withSystemItems.has(place))
    .map((place): Item => ({ label: withMnemonic(place), submenu: of(place) }));
  return [
    ...(mac ? [{ role: "appMenu" } as const] : []),
    fileMenu(mac, recent, of("Plan"), acts),
    editMenu(of("Edit")),
    viewMenu(mac, of("View")),
    ...own,
    windowMenu(mac),
    { label: "&Help", role: "help", submenu: of("Help") },
  ];
}

const withSystemItems: ReadonlySet<string> = new Set(["Plan", "Edit", "View", "Help"]);

const separator: Item = { type: "separator" };

/** A key of two commands (lock and unlock) is the page's: it knows which of them can be done. */
function sharedKeys(offered: readonly OfferedCommand[]): ReadonlySet<string> {
  const first = offered.flatMap(({ keys }) => keys[0] ?? []);
  return new Set(first.filter((key, i) => first.indexOf(key) !== i));
}

function item(
  { id, name, keys }: OfferedCommand,
  platform: NodeJS.Platform,
  acts: MenuActs,
  shared: ReadonlySet<string>,
): Item {
  const isShared = keys[0] !== undefined && shared.has(keys[0]);
  return {
    id,
    // A single ampersand would mark the next letter.
    label: name.replaceAll("&", "&&"),
    ...(isShared && platform === "darwin" ? {} : accelerator(keys, platform)),
    ...(isShared ? { registerAccelerator: false } : {}),
    click: () => acts.runCommand(id),
  };
}

const withMnemonic = (place: string): string => `&${place}`;

function fileMenu(
  mac: boolean,
  recent: readonly RecentItem[],
  commands: readonly Item[],
  acts: MenuActs,
): Item {
  const recentItems = recent.map(({ label, path }): Item => ({ label, click: () => acts.openRecent(path) }));
  const afterOpen = 1 + commands.findIndex(({ id }) => id === "plan.open");
  return {
    label: "&File",
    submenu: [
      ...commands.slice(0, afterOpen),
      { label: "Open &Recent", id: "recent", enabled: recentItems.length > 0, submenu: recentItems },
      ...commands.slice(afterOpen),
      separator,
      mac ? { role: "close" } : { role: "quit" },
    ],
  };
}

/** The system's cut, copy and paste are of text; they keep those keys. */
function editMenu(commands: readonly Item[]): Item {
  const text = (["cut", "copy", "paste", "selectAll"] as const).map((role): Item => ({ role }));
  const undoing = commands.filter(({ id }) => id === "edit.undo" || id === "edit.redo");
  const others = commands.filter((command) => !undoing.includes(command));
  return { label: "&Edit", submenu: [...undoing, separator, ...text, separator, ...others] };
}

function viewMenu(mac: boolean, commands: readonly Item[]): Item {
  const full: Item = { role: "togglefullscreen", accelerator: mac ? "Ctrl+Cmd+F" : "F11" };
  return { label: "&View", submenu: [...commands, separator, full] };
}

const windowMenu = (mac: boolean): Item =>
  mac ? { role: "windowMenu" } : { label: "&Window", submenu: [{ role: "minimize" }, { role: "close" }] };
