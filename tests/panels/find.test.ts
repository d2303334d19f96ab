import { describe, expect, it } from "vitest";
import type { AppCommand } from "../../src/panels/command";
import { findCommands } from "../../src/panels/dialogs/find";

const command = (id: string, name: string, also = ""): AppCommand => ({
  id,
  name,
  also,
  place: "View",
  run: () => undefined,
});
const all = [
  command("fit", "Fit everything", "zoom all"),
  command("in", "Zoom in"),
  command("theme", "Change the theme", "dark light"),
  command("export", "Export site plan…", "pdf print"),
];
const found = (typed: string) => findCommands(all, typed).map(({ id }) => id);

describe("finding a command", () => {
  it("shows all in their order before anything is typed", () => {
    expect(found("")).toEqual(["fit", "in", "theme", "export"]);
  });
  it("by the beginning of any word, the name before other words", () => {
    expect(found("zoom")).toEqual(["in", "fit"]);
    expect(found("pl si")).toEqual(["export"]);
    expect(found("DARK")).toEqual(["theme"]);
  });
  it("wants every word", () => {
    expect(found("zoom theme")).toEqual([]);
  });
  it("by the parts of a word with a hyphen, and by the word without it", () => {
    const hyphen = [command("pegs", "Two-peg check"), command("marks", "Marks", "set-out")];
    const ids = (typed: string) => findCommands(hyphen, typed).map(({ id }) => id);
    expect(ids("peg")).toEqual(["pegs"]);
    expect(ids("setout")).toEqual(["marks"]);
    expect(ids("two-peg")).toEqual(["pegs"]);
  });
  it("forgives letters left out", () => {
    expect(found("evrthg")).toEqual(["fit"]);
  });
});
