import { cleanup, fireEvent, render, screen } from "@testing-library/react";
import { afterEach, describe, expect, it } from "vitest";
import type { Display } from "../../src/document";
import { present } from "../../src/document";
import { FloorPanel } from "../../src/panels/steps/FloorPanel";
import { showProject, undoEdit } from "../../src/store/actions";
import { appStore } from "../../src/store/store";
import { plane, shed, site } from "../solve/sites";

const state = () => appStore.getState();

function open(display: Partial<Display>) {
  const project = site({
    surface: plane(100, 0, 0.11),
    spacing: 20,
    building: { ...shed, foundation: { kind: "crawl-space" } },
  });
  showProject({ ...project, display: { ...project.display, ...display } }, { name: null, token: null });
  render(<FloorPanel />);
}

afterEach(cleanup);

describe("where no floor keeps every limit", () => {
  it.each([
    ["metres", {}, /walls [\d.]+ m taller/],
    ["feet and inches", { length: "ft-in", rounding: 8 } as const, /walls .*″ taller/],
  ])(
    "the clash is named, a way out is tried and undone: %s",
    async (_units, display, words) => {
      open(display);
      const before = present(state().history);
      expect(screen.getByText(/top of wall above the high ground beside it \(.*asks for/)).toBeTruthy();
      fireEvent.click(screen.getByRole("button", { name: "Look for ways out" }));
      const row = (await screen.findByText(words, {}, { timeout: 20_000 })).closest("li");
      const tried = row?.querySelector("button");
      expect(tried?.textContent).toBe("Try it");
      if (tried) fireEvent.click(tried);
      expect(state().results.band.empty).toBe(false);
      expect(screen.queryByText("Look for ways out")).toBeNull();
      const { options, building } = present(state().history);
      expect(options.map(({ name }) => name)).toEqual(["before the ways out", expect.stringMatching(words)]);
      expect(options[0]?.building).toEqual(before.building);
      expect(options[1]?.building).toEqual(building);
      undoEdit();
      expect(present(state().history)).toBe(before);
    },
    30_000,
  );
});
