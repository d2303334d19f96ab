import type { MenuItemConstructorOptions } from "electron";
import { describe, expect, it } from "vitest";
import { menuTemplate } from "../../electron/menu";

type Item = MenuItemConstructorOptions;

const flat = (items: readonly Item[]): Item[] =>
  items.flatMap((item) => [item, ...(Array.isArray(item.submenu) ? flat(item.submenu) : [])]);

function menuOf(platform: NodeJS.Platform, recent: { label: string; path: string }[] = []) {
  const sent: string[] = [];
  const opened: string[] = [];
  const acts = {
    send: (request: string) => sent.push(request),
    openRecent: (path: string) => opened.push(path),
  };
  const items = flat(menuTemplate(platform, recent, acts));
  const click = (item: Item | undefined) => (item?.click as (() => void) | undefined)?.();
  return { items, sent, opened, click };
}

const accelerators = (platform: NodeJS.Platform) =>
  Object.fromEntries(
    menuOf(platform).items.flatMap(({ id, accelerator }) => (id ? [[id, accelerator]] : [])),
  );

describe("the native menu", () => {
  it("has the platform's usual keys", () => {
    expect(accelerators("linux")).toMatchObject({
      new: "CmdOrCtrl+N",
      open: "CmdOrCtrl+O",
      save: "CmdOrCtrl+S",
      "save-as": "Shift+CmdOrCtrl+S",
      undo: "CmdOrCtrl+Z",
      redo: "Shift+CmdOrCtrl+Z",
    });
    expect(accelerators("win32").redo).toBe("Ctrl+Y");
  });

  it("gives no key twice", () => {
    const keys = menuOf("linux").items.flatMap(({ accelerator }) => accelerator ?? []);
    expect(new Set(keys).size).toBe(keys.length);
  });

  it("sends each request that it knows to the page", () => {
    const { items, sent, click } = menuOf("linux");
    const requests = items.filter(({ id, click }) => id !== undefined && click);
    for (const item of requests) click(item);
    expect(sent).toEqual([
      "new",
      "open",
      "save",
      "save-as",
      "export-site-plan",
      "undo",
      "redo",
      "find-command",
      "zoom-fit",
      "toggle-theme",
      "show-guide",
      "show-glossary",
      "show-shortcuts",
      "start-tour",
    ]);
  });

  it("opens recent files, and offers none where there are none", () => {
    const recent = [{ label: "studio – ~/plans", path: "/home/p/plans/studio.json" }];
    const { items, opened, click } = menuOf("linux", recent);
    expect(items.find(({ id }) => id === "recent")?.enabled).toBe(true);
    click(items.find(({ label }) => label === "studio – ~/plans"));
    expect(opened).toEqual(["/home/p/plans/studio.json"]);
    expect(menuOf("linux").items.find(({ id }) => id === "recent")?.enabled).toBe(false);
  });

  it("follows the platform: quitting, the program's own menu, the window's", () => {
    const roles = (platform: NodeJS.Platform) => menuOf(platform).items.map(({ role }) => role);
    expect(roles("linux")).toContain("quit");
    expect(roles("linux")).not.toContain("appMenu");
    expect(roles("darwin")).toEqual(expect.arrayContaining(["appMenu", "windowMenu"]));
    expect(roles("darwin")).not.toContain("quit");
  });
});
