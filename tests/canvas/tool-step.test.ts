import { describe, expect, it } from "vitest";
import { setStep, setTool } from "../../src/store/actions";
import { appStore } from "../../src/store/store";

const step = () => appStore.getState().step;

describe("a tool that is picked", () => {
  it.each([
    ["shot", "shots"],
    ["mark", "shots"],
    ["lot", "lot"],
    ["building", "building"],
    ["door", "building"],
    ["drive", "drive"],
    ["swale", "water"],
  ] as const)("%s opens the panel of %s", (tool, panel) => {
    setStep("quantities");
    setTool(tool);
    expect(step()).toBe(panel);
  });

  it("leaves the panel where it is for selecting, as after each thing drawn", () => {
    setStep("quantities");
    setTool("select");
    expect(step()).toBe("quantities");
  });
});
