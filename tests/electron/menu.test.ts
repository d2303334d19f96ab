import type { MenuItemConstructorOptions } from "electron";
import { describe, expect, it } from "vitest";
import { accelerator } from "../../electron/accelerator";
import { menuTemplate } from "../../electron/menu";
import { appCommands } from "../../src/app/commands";
import { filesThrough } from "../../src/app/files";
import { fakeHost } from "../app/fakeHost";

type Item = MenuItemConstructorOptions;

const commands = appCommands(filesThrough(fakeHost())).map(({ id, name, place, keys = [] }) => ({
  id,
  name,
  place,
  keys,
}));

const flat = (items: readonly Item[]): Item[] =>
  items.flatMap((item) => [item, ...(Array.isArray(item.submenu) ? flat(item.submenu) : [])]);

function menuOf(platform: NodeJS.Platform, recent: { label: string; path: string }[] = []) {
  const ran: string[] = [];
  const opened: string[] = [];
  const acts = {
    runCommand: (id: string) => ran.push(id),
    openRecent: (path: string) => opened.push(path),
  };
  const menus = menuTemplate(platform, recent, commands, acts);
  const click = (item: Item | undefined) => (item?.click as (() => void) | undefined)?.();
  return { menus, items: flat(menus), ran, opened, click };
}

const shown = (platform: NodeJS.Platform, id: string) => {
  const item = menuOf(platform).items.find((each) => each.id === id);
  return { accelerator: item?.accelerator, registerAccelerator: item?.registerAccelerator };
};

describe("the native menu", () => {
  it("has every command of the window's finder, each once, and runs it by its id", () => {
    const { items, ran, click } = menuOf("linux");
    const own = items.filter(({ id }) => id !== undefined && id !== "recent");
    expect(own.map(({ id }) => id).sort()).toEqual(commands.map(({ id }) => id).sort());
    for (const item of own) click(item);
    expect([...ran].sort()).toEqual(commands.map(({ id }) => id).sort());
  });

  it("has the window's own menus beside the system's", () => {
    const labels = menuOf("linux").menus.map(({ label }) => label?.replace("&", ""));
    expect(labels).toEqual(["File", "Edit", "View", "Arrange", "Draw", "Steps", "Window", "Help"]);
  });

  it("has the platform's usual keys", () => {
    expect(shown("linux", "plan.new").accelerator).toBe("CmdOrCtrl+N");
    expect(shown("linux", "plan.saveAs").accelerator).toBe("Shift+CmdOrCtrl+S");
    expect(shown("linux", "edit.redo").accelerator).toBe("Shift+CmdOrCtrl+Z");
    expect(shown("win32", "edit.redo").accelerator).toBe("CmdOrCtrl+Y");
    expect(shown("linux", "help.guide").accelerator).toBe("F1");
  });

  it("leaves to the page the keys that mean text where a person types", () => {
    for (const { id, keys } of commands) {
      const key = keys[0];
      if (key === undefined || (key.includes("Mod+") && !/^Mod\+[ACDVX]$/.test(key)) || /^F\d+$/.test(key))
        continue;
      expect([id, shown("linux", id).registerAccelerator ?? "not shown"]).toEqual([
        id,
        shown("linux", id).accelerator === undefined ? "not shown" : false,
      ]);
      expect([id, shown("darwin", id).accelerator]).toEqual([id, undefined]);
    }
  });

  it("registers no key twice", () => {
    const keys = menuOf("linux").items.flatMap((item) =>
      item.registerAccelerator === false ? [] : (item.accelerator ?? []),
    );
    expect(new Set(keys).size).toBe(keys.length);
  });

  it("leaves a key of two commands to the page, which knows which of them can be done", () => {
    const { items } = menuOf("linux");
    for (const id of ["arrange.lock", "arrange.unlock"])
      expect(items.find((item) => item.id === id)?.registerAccelerator).toBe(false);
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

  it("has the system's items alone before the page has spoken", () => {
    const acts = { runCommand: () => undefined, openRecent: () => undefined };
    const items = flat(menuTemplate("linux", [], [], acts));
    expect(items.filter(({ id }) => id !== undefined).map(({ id }) => id)).toEqual(["recent"]);
  });
});

describe("a key in the native menu", () => {
  it("is written as the system writes it", () => {
    expect(accelerator(["Mod+,"], "linux")).toEqual({ accelerator: "CmdOrCtrl+," });
    expect(accelerator(["Alt+ArrowUp"], "linux")).toEqual({
      accelerator: "Alt+Up",
      registerAccelerator: false,
    });
    expect(accelerator(["+", "="], "win32")).toEqual({ accelerator: "Plus", registerAccelerator: false });
  });

  it("is left out where the system has no such key", () => {
    expect(accelerator(["?"], "linux")).toEqual({});
    expect(accelerator([], "linux")).toEqual({});
  });
});
