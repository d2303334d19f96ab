import { mkdir, mkdtemp, readdir, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { fileOfArguments } from "../../electron/argumentFile";
import { FileTokens } from "../../electron/fileTokens";
import { RecentFiles } from "../../electron/recentFiles";
import { Recovery } from "../../electron/recovery";
import { recoveryFolder } from "../../electron/recoveryFolder";
import { Requests } from "../../electron/requests";
import { isOurPage, type Sender } from "../../electron/sender";

let folder: string;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), "drysill-settings-"));
});
afterEach(() => rm(folder, { recursive: true, force: true }));

describe("file tokens", () => {
  it("say nothing of the path, and mean it for as long as the program runs", () => {
    const tokens = new FileTokens();
    const token = tokens.tokenFor("/home/p/studio.json");
    expect(token).toMatch(/^[0-9a-f]{32}$/);
    expect(tokens.tokenFor("/home/p/studio.json")).toBe(token);
    expect(tokens.tokenFor("/home/p/shed.json")).not.toBe(token);
    expect(tokens.pathFor(token)).toBe("/home/p/studio.json");
    expect(tokens.pathFor("0".repeat(32))).toBeNull();
  });
});

describe("recent files", () => {
  const file = () => join(folder, "settings", "recent.json");

  it("are newest first, each once, ten at most, and there after a restart", async () => {
    const recent = await RecentFiles.load(file());
    let changes = 0;
    recent.onChange = () => changes++;
    for (let i = 0; i < 12; i++) await recent.add(`/plans/${i}.json`);
    await recent.add("/plans/5.json");
    await recent.remove("/plans/11.json");
    expect(recent.paths).toEqual([5, 10, 9, 8, 7, 6, 4, 3, 2].map((i) => `/plans/${i}.json`));
    expect(changes).toBe(14);
    expect((await RecentFiles.load(file())).paths).toEqual(recent.paths);
  });

  it.each([["{"], ['{"a":1}'], ["[1, null, {}]"], [""]])(
    "start empty where the list is damaged: %s",
    async (text) => {
      await mkdir(join(folder, "settings"));
      await writeFile(file(), text);
      const recent = await RecentFiles.load(file());
      expect(recent.paths).toEqual([]);
      await recent.add("/plans/a.json");
      expect(JSON.parse(await readFile(file(), "utf8"))).toEqual(["/plans/a.json"]);
    },
  );

  it("last until the end of the program where they can't be written", async () => {
    await writeFile(join(folder, "settings"), "a file where the folder should be");
    const recent = await RecentFiles.load(file());
    await recent.add("/plans/a.json");
    expect(recent.paths).toEqual(["/plans/a.json"]);
  });
});

describe("the recovery journal on disk", () => {
  const work = { name: "studio", text: "{}", token: null };

  it("is found after a crash, with a token for its file, and gone once it is saved", async () => {
    const before = new FileTokens();
    const crashed = new Recovery(folder, before);
    crashed.keep({ ...work, token: before.tokenFor("/plans/studio.json") });
    await crashed.settled();

    const tokens = new FileTokens();
    const next = new Recovery(folder, tokens);
    const found = await next.found();
    expect(found).toMatchObject({ name: "studio", text: "{}" });
    expect(tokens.pathFor(found?.token ?? "")).toBe("/plans/studio.json");
    expect(JSON.stringify(found)).not.toContain("/plans/");
    next.keep(null);
    await next.settled();
    expect(await readdir(folder)).toEqual([]);
  });

  it("finds nothing after a clean end", async () => {
    const clean = new Recovery(folder, new FileTokens());
    clean.keep(work);
    clean.keep(null);
    await clean.settled();
    expect(await new Recovery(folder, new FileTokens()).found()).toBeNull();
  });

  it("hands a lost page's work to the page that comes after it", async () => {
    const recovery = new Recovery(folder, new FileTokens());
    recovery.keep(work);
    await new Promise((resolve) => setTimeout(resolve, 2));
    await recovery.pageLost();
    expect(await recovery.found()).toMatchObject({ name: "studio" });
  });

  it("puts a damaged note aside and gives the one before it", async () => {
    const store = recoveryFolder(folder);
    await store.write("unsaved-1", { name: "older", text: "{}", place: null, when: 1 });
    await writeFile(join(folder, "unsaved-2.json"), '{"name":"newer","te');
    expect(await new Recovery(folder, new FileTokens()).found()).toMatchObject({ name: "older" });
    expect(await readdir(folder)).toEqual(["unsaved-1.json", "unsaved-2.damaged"]);
  });

  it("passes over other files in its folder, and clears what was half written", async () => {
    await writeFile(join(folder, "notes.json"), "{}");
    await writeFile(join(folder, ".drysill-0123456789ab.part"), '{"name":"st');
    expect(await recoveryFolder(folder).orphans()).toEqual([]);
    expect(await readdir(folder)).toEqual(["notes.json"]);
    expect(await recoveryFolder(join(folder, "none")).orphans()).toEqual([]);
  });
});

describe("the file on the command line", () => {
  it("is the last file named; switches and folders are passed over", async () => {
    const plan = join(folder, "plan.txt");
    await writeFile(plan, "");
    expect(fileOfArguments(["electron", folder, plan, "--no-sandbox"], "/")).toBe(plan);
    expect(fileOfArguments(["electron", ".", "plan.txt"], folder)).toBe(plan);
    expect(fileOfArguments(["electron", folder, "--plan.json"], folder)).toBeNull();
    expect(fileOfArguments(["electron"], folder)).toBeNull();
    expect(fileOfArguments(["plan.txt"], folder)).toBeNull();
  });

  it("may be missing, so that the person is told", () =>
    expect(fileOfArguments(["electron", "gone.drysill.json"], folder)).toBe(
      join(folder, "gone.drysill.json"),
    ));
});

describe("requests to the page", () => {
  it("wait until the page listens, and again when it is lost", () => {
    const delivered: unknown[] = [];
    const requests = new Requests((request) => delivered.push(request));
    requests.send({ command: "undo" });
    expect(delivered).toEqual([]);
    requests.pageListens();
    requests.send({ command: "redo" });
    requests.pageLost();
    requests.send({ command: "save" });
    expect(delivered).toEqual([{ command: "undo" }, { command: "redo" }]);
    requests.pageListens();
    expect(delivered.slice(2)).toEqual([{ command: "save" }]);
  });
});

describe("who may use the bridge", () => {
  const origin = "drysill://page";
  const window = {} as Sender["sender"];
  const from = (url: string, parent: unknown = null, sender = window): Sender => ({
    sender,
    senderFrame: { url, parent },
  });

  it("is the top frame of our own page in our own window", () =>
    expect(isOurPage(from(`${origin}/index.html`), window, origin)).toBe(true));

  it.each([
    ["another address", from("https://page/index.html")],
    ["an address that only starts like ours", from(`${origin}.example/index.html`)],
    ["a frame within the page", from(`${origin}/index.html`, {})],
    ["another window", from(`${origin}/index.html`, null, {} as Sender["sender"])],
    ["a frame that is gone", { sender: window, senderFrame: null }],
  ])("is not %s", (_who, sender) => expect(isOurPage(sender, window, origin)).toBe(false));
});
