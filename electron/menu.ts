import type { MenuItemConstructorOptions } from "electron";
import type { HostRequest } from "../src/host/host";

type Item = MenuItemConstructorOptions;

export interface MenuActs {
  readonly send: (request: Extract<HostRequest, string>) => void;
  readonly openRecent: (path: string) => void;
}

export interface RecentItem {
  readonly label: string;
  readonly path: string;
}

/** The native menu: each item sends its request to the page, which knows whether it applies. */
export function menuTemplate(
  platform: NodeJS.Platform,
  recent: readonly RecentItem[],
  acts: MenuActs,
): Item[] {
  const mac = platform === "darwin";
  const file = fileMenu(mac, recent, acts);
  const rest = [editMenu(platform, acts), viewMenu(mac, acts), windowMenu(mac), helpMenu(acts)];
  return mac ? [{ role: "appMenu" }, file, ...rest] : [file, ...rest];
}

const item = (
  acts: MenuActs,
  label: string,
  request: Extract<HostRequest, string>,
  accelerator?: string,
): Item => ({
  id: request,
  label,
  accelerator,
  click: () => acts.send(request),
});

function fileMenu(mac: boolean, recent: readonly RecentItem[], acts: MenuActs): Item {
  const recentItems: Item[] = recent.map(({ label, path }) => ({
    label,
    click: () => acts.openRecent(path),
  }));
  return {
    label: "&File",
    submenu: [
      item(acts, "&New Plan", "new", "CmdOrCtrl+N"),
      item(acts, "&Open…", "open", "CmdOrCtrl+O"),
      { label: "Open &Recent", id: "recent", enabled: recentItems.length > 0, submenu: recentItems },
      { type: "separator" },
      item(acts, "&Save", "save", "CmdOrCtrl+S"),
      item(acts, "Save &As…", "save-as", "Shift+CmdOrCtrl+S"),
      { type: "separator" },
      item(acts, "&Export Site Plan…", "export-site-plan", "CmdOrCtrl+E"),
      { type: "separator" },
      mac ? { role: "close" } : { role: "quit" },
    ],
  };
}

function editMenu(platform: NodeJS.Platform, acts: MenuActs): Item {
  return {
    label: "&Edit",
    submenu: [
      item(acts, "&Undo", "undo", "CmdOrCtrl+Z"),
      item(acts, "&Redo", "redo", platform === "win32" ? "Ctrl+Y" : "Shift+CmdOrCtrl+Z"),
      { type: "separator" },
      { role: "cut" },
      { role: "copy" },
      { role: "paste" },
      { role: "selectAll" },
      { type: "separator" },
      item(acts, "&Find a Command…", "find-command", "CmdOrCtrl+K"),
    ],
  };
}

function viewMenu(mac: boolean, acts: MenuActs): Item {
  return {
    label: "&View",
    submenu: [
      item(acts, "&Zoom to Fit", "zoom-fit", "CmdOrCtrl+0"),
      item(acts, "&Light or Dark", "toggle-theme"),
      { type: "separator" },
      { role: "togglefullscreen", accelerator: mac ? "Ctrl+Cmd+F" : "F11" },
    ],
  };
}

const windowMenu = (mac: boolean): Item =>
  mac ? { role: "windowMenu" } : { label: "&Window", submenu: [{ role: "minimize" }, { role: "close" }] };

const helpMenu = (acts: MenuActs): Item => ({
  label: "&Help",
  role: "help",
  submenu: [
    item(acts, "&Guide to This Step", "show-guide", "F1"),
    item(acts, "&Words of the Trade", "show-glossary"),
    item(acts, "&Keyboard Shortcuts", "show-shortcuts", "CmdOrCtrl+/"),
    item(acts, "&Tour on a Demo", "start-tour"),
  ],
});
