import { describe, expect, it } from "vitest";
import { savedWords } from "../../src/panels/savedWords";

describe("whether a plan is saved, in words", () => {
  it.each([
    ["a new plan", false, { name: null, token: null }, "nothing to save yet"],
    ["a file", false, { name: "a.json", token: "t" }, "saved"],
    ["a changed file", true, { name: "a.json", token: "t" }, "not saved yet"],
    ["a demo", false, { name: null, token: null, origin: "demo" }, "demo: a copy of your own"],
    ["a changed demo", true, { name: null, token: null, origin: "demo" }, "not saved yet"],
    [
      "a file that can't be saved back",
      false,
      { name: "a.json", token: null, origin: "copy" },
      "opened as a copy",
    ],
    ["a download", false, { name: "a.json", token: null }, "saved as a download"],
  ] as const)("%s", (_what, dirty, file, words) => {
    expect(savedWords(dirty, file).words).toBe(words);
  });

  it("says what Save will do", () => {
    expect(savedWords(true, { name: "a.json", token: "t" }).more).toBe("Save writes to a.json.");
    expect(savedWords(false, { name: null, token: null, origin: "demo" }).more).toContain("Save asks where");
  });
});
