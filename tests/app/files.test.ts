import { beforeEach, describe, expect, it, vi } from "vitest";
import { askedStore } from "../../src/app/asking";
import { filesThrough, suggestedName } from "../../src/app/files";
import { newProject, openProject, present, projectText, siteEdits } from "../../src/document";
import { draftKey, draftStore, keepDraft } from "../../src/panels/levelbook/drafts";
import { dismiss, run, showProject } from "../../src/store/actions";
import { appStore, isDirty } from "../../src/store/store";
import { demoProject } from "../support/demo";
import { type FakeHost, fakeHost } from "./fakeHost";

const state = () => appStore.getState();
const name = () => present(state().history).name;
const rename = (to: string) => run(siteEdits.renameProject, { name: to });
const file = (text: string, token: string | null = "t0") => ({ name: "studio.drysill.json", text, token });
const studio = demoProject("pottery-studio");

let host: FakeHost;
let files: ReturnType<typeof filesThrough>;

beforeEach(() => {
  host = fakeHost();
  files = filesThrough(host);
  showProject(newProject("before"), { name: null, token: null });
  for (const message of state().messages) dismiss(message.id);
});

/** Answers the question that is open. */
async function choose(id: string): Promise<void> {
  await vi.waitFor(() => expect(askedStore.getState().question).not.toBeNull());
  askedStore.getState().answer(id);
}

describe("opening", () => {
  it("shows the file's project, saved as it is", async () => {
    host.opens = file(projectText(studio));
    await files.open();
    expect(name()).toBe("Pottery studio");
    expect(state().file).toEqual({ name: "studio.drysill.json", token: "t0" });
    expect(isDirty(state())).toBe(false);
  });

  it("shows a demo's file as a demo, and another that can't be saved back as a copy", async () => {
    host.opens = { name: "pottery-studio.drysill.json", text: projectText(studio), token: null };
    await files.open();
    expect(state().file).toEqual({ name: null, token: null, origin: "demo" });
    await files.save();
    expect(host.saved.at(-1)?.name).toBe("pottery-studio.drysill.json");
    host.opens = file(projectText(studio), null);
    await files.open();
    expect(state().file).toEqual({ name: "studio.drysill.json", token: null, origin: "copy" });
  });

  it("shows one's own plan as such, also where it still goes by the demo's file name", async () => {
    const name = "pottery-studio.drysill.json";
    host.opens = { name, text: projectText({ ...studio, about: "Ours, two feet wider." }), token: null };
    await files.open();
    expect(state().file).toEqual({ name, token: null, origin: "copy" });
  });

  it("says where a file is wrong and keeps what is open", async () => {
    host.opens = file('{ "drysill": 1, "truck": { "volume": -3 }, "lot": { "north": "up" } }');
    await files.open();
    expect(name()).toBe("before");
    const [message] = state().messages;
    expect(message?.tone).toBe("error");
    expect(`${message?.text}\n${message?.more}`).toMatch(/studio\.drysill\.json can't be opened/);
    expect(`${message?.text}\n${message?.more}`).toMatch(/truck › volume/);
    expect(`${message?.text}\n${message?.more}`).toMatch(/lot › north/);
  });

  it("tells of fields it doesn't know", async () => {
    host.opens = file('{ "drysill": 1, "name": "later", "moon": 3 }');
    await files.open();
    expect(name()).toBe("later");
    expect(state().messages[0]).toMatchObject({ tone: "caution", more: "moon" });
  });

  it("tells of the host's failure, and nothing where the person cancelled", async () => {
    host.opens = { failed: "The disk is gone." };
    await files.open();
    expect(state().messages[0]?.text).toBe("The disk is gone.");
    host.opens = null;
    await files.open();
    expect(state().messages).toHaveLength(1);
  });

  it("forgets cells of the level book that were another plan's", async () => {
    keepDraft(draftKey("s1", "reading"), { text: "oops", why: "no" });
    host.opens = file(projectText(studio));
    await files.open();
    expect(draftStore.getState().drafts.size).toBe(0);
  });
});

describe("unsaved work", () => {
  it("is asked about before another plan takes its place", async () => {
    rename("changed");
    host.opens = file(projectText(studio));
    const opening = files.open();
    await Promise.resolve();
    await choose("cancel");
    await opening;
    expect(name()).toBe("changed");
    expect(host.saved).toHaveLength(0);
  });

  it("is saved first where that is chosen", async () => {
    rename("changed");
    const leaving = files.mayLeave();
    await choose("save");
    expect(await leaving).toBe(true);
    expect(host.saved).toHaveLength(1);
    expect(isDirty(state())).toBe(false);
  });

  it("stays where saving was cancelled or failed", async () => {
    rename("changed");
    host.saves = null;
    const cancelled = files.mayLeave();
    await choose("save");
    expect(await cancelled).toBe(false);
    host.saves = { failed: "The disk is full." };
    const failed = files.mayLeave();
    await choose("save");
    expect(await failed).toBe(false);
    expect(state().messages.at(-1)).toMatchObject({ tone: "error", text: "The disk is full." });
    expect(isDirty(state())).toBe(true);
  });

  it("may be given up", async () => {
    rename("changed");
    const leaving = files.mayLeave();
    await choose("discard");
    expect(await leaving).toBe(true);
    expect(host.kept).toEqual([null]);
  });

  it("asks nothing where there is none", async () => {
    expect(await files.mayLeave()).toBe(true);
    expect(askedStore.getState().question).toBeNull();
  });
});

describe("saving", () => {
  it("asks for a place once, then saves to it", async () => {
    rename("My shed");
    expect(await files.save()).toBe(true);
    expect(host.saved[0]?.name).toBe("my-shed.drysill.json");
    rename("My other shed");
    await files.save();
    expect(host.saved[1]?.name).toBe("t1");
    const again = openProject(host.saved[1]?.text ?? "");
    expect(again.ok && again.project).toEqual(present(state().history));
  });

  it("saves what was there when it began: a later edit stays unsaved", async () => {
    rename("one");
    const saving = files.save();
    rename("two");
    await saving;
    expect(isDirty(state())).toBe(true);
  });

  it("makes a file name of any plan's name", () => {
    expect(suggestedName(newProject('Shed: A/B "2"'))).toBe("shed-a-b-2.drysill.json");
    expect(suggestedName(newProject("  ?? "), "-site-plan.pdf")).toBe("plan-site-plan.pdf");
  });
});

describe("recovered work", () => {
  it("comes back unsaved", async () => {
    await files.openRecovered({
      name: "studio.drysill.json",
      text: projectText(studio),
      token: "t9",
      when: 0,
    });
    expect(name()).toBe("Pottery studio");
    expect(isDirty(state())).toBe(true);
    expect(state().file.token).toBe("t9");
  });
});
