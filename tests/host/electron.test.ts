import { describe, expect, it } from "vitest";
import type { Bridge } from "../../src/host/bridge";
import { electronHost, findBridge } from "../../src/host/electron";

const opened = { name: "studio.json", text: "{}", token: "t" };

/** A bridge of which only the named acts are there. */
const bridgeWith = (acts: Partial<Bridge>): Bridge => acts as Bridge;

describe("the host of the Electron window", () => {
  it("hands on what the main process answers, also nothing", async () => {
    const host = electronHost(bridgeWith({ openProject: async () => opened, openRecent: async () => null }));
    expect(host.kind).toBe("electron");
    expect(await host.openProject()).toBe(opened);
    expect(await host.openRecent("t")).toBeNull();
  });

  it("puts a refusal of the main process into words instead of failing", async () => {
    const refuse = () => Promise.reject(new Error("the text is too long"));
    const host = electronHost(
      bridgeWith({
        openProject: refuse,
        openPicture: refuse,
        saveProject: refuse,
        saveProjectAs: refuse,
        exportFile: refuse,
      }),
    );
    const words = (act: string) => ({
      failed: `The file couldn't be ${act}: the text is too long. Your work is still open here; try again.`,
    });
    expect(await host.openProject()).toEqual(words("opened"));
    expect(await host.openPicture()).toEqual(words("opened"));
    expect(await host.saveProject("t", "{}")).toEqual(words("saved"));
    expect(await host.saveProjectAs("studio", "{}")).toEqual(words("saved"));
    expect(await host.exportFile("plan.pdf", new Uint8Array(1))).toEqual(words("exported"));
  });

  it("is not there in a plain browser", () => expect(findBridge()).toBeNull());
});
