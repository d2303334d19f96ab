/** What is said over the window doesn't pile up, and leaves once it is over. */
import { beforeEach, describe, expect, it } from "vitest";
import { arrangeEdits, newProject, surveyEdits } from "../../src/document";
import { run, showProject, tell, undoEdit } from "../../src/store/actions";
import { type Told, withMessage } from "../../src/store/messages";
import { pickTool } from "../../src/store/pickTool";
import { appStore } from "../../src/store/store";

const texts = () => appStore.getState().messages.map(({ text }) => text);
const caution = (text: string): Told => ({ tone: "caution", text });
const error = (text: string): Told => ({ tone: "error", text });

describe("messages", () => {
  beforeEach(() => {
    appStore.setState({ messages: [] });
    showProject(newProject(), { name: null, token: null });
  });

  it("said again are counted, and are the newest once more", () => {
    for (const text of ["bad picture", "bad picture", "odd row", "bad picture"]) tell(caution(text));
    expect(appStore.getState().messages.map(({ text, times }) => [text, times])).toEqual([
      ["odd row", 1],
      ["bad picture", 3],
    ]);
  });

  it("give way to newer ones, but an error waits until it is read", () => {
    const told = [error("disk full"), caution("a"), caution("b"), { tone: "done", text: "c" } as const];
    const kept = told.reduce(withMessage, []).map(({ text }) => text);
    expect(kept).toEqual(["disk full", "b", "c"]);
  });

  it("a caution of one tool is over when a person takes another; an error isn't", () => {
    tell(error("disk full"));
    tell(caution("There is no wall there."));
    expect(pickTool("drive")).toBe(true);
    expect(texts()).toEqual(["disk full"]);
  });

  it("a caution is over with the next edit and with undo; an error isn't", () => {
    tell(error("disk full"));
    tell(caution("odd row"));
    run(arrangeEdits.moveThings, { things: [], by: [1, 0] });
    expect(texts()).toEqual(["disk full", "odd row", "Select something first."]);
    run(surveyEdits.addShot, { name: "stake" });
    expect(texts()).toEqual(["disk full"]);
    tell(caution("1 cell could not be read"));
    undoEdit();
    expect(texts()).toEqual(["disk full"]);
  });
});
