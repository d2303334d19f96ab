import { act, cleanup, fireEvent, render, screen, within } from "@testing-library/react";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { newProject, present } from "../../src/document";
import { notationOf } from "../../src/panels/notation";
import { SentenceBar } from "../../src/panels/SentenceBar";
import { StepsRail } from "../../src/panels/StepsRail";
import { FloorPanel } from "../../src/panels/steps/FloorPanel";
import { optionFigures } from "../../src/solve/compare";
import { cancelFloorDrag, dragFloor, showProject } from "../../src/store/actions";
import { appStore } from "../../src/store/store";
import { demoProject } from "../support/demo";

const state = () => appStore.getState();
const floor = () => present(state().history).building?.floor ?? Number.NaN;

function Window() {
  return (
    <>
      <StepsRail />
      <SentenceBar />
      <FloorPanel />
    </>
  );
}

beforeEach(() => showProject(demoProject("pottery-studio"), { name: null, token: null }));
afterEach(cleanup);

describe("the floor's panel", () => {
  it("reads the curve at its floor as the options tell it: one figure", () => {
    render(<FloorPanel />);
    const project = demoProject("pottery-studio");
    const { volume } = notationOf(project.display);
    const { cut, fill } = optionFigures(null, "now", project, state().results);
    expect(document.querySelector(".curve-read")?.textContent).toBe(
      `floor at 99′ 5″: ${volume(fill ?? 0)} of fill, ${volume(cut ?? 0)} of cut`,
    );
  });

  it("tells the figure, the mark and each corner from the results", () => {
    render(<Window />);
    expect(screen.getByLabelText("Height of the finished floor")).toHaveProperty("value", "99′ 5″");
    expect(screen.getByText("7″ below the mark")).toBeTruthy();
    const table = screen.getByRole("table", { name: "The floor at each corner" });
    const [first] = state().results.corners;
    const row = within(table).getByRole("row", { name: /^A / });
    expect(row.textContent).toContain(
      notationOf(demoProject("pottery-studio").display).length(first?.ground ?? 0),
    );
  });

  it("tells where the cut makes the fill, and sets the floor there in one step", () => {
    const project = demoProject("joinery-shed");
    showProject(project, { name: null, token: null });
    const view = render(<Window />);
    // Limits that don't allow that floor are said, and no step leads to it.
    expect(screen.getByText(/the limits don.t allow that floor/)).toBeTruthy();
    expect(screen.queryByRole("button", { name: "Set the floor there" })).toBeNull();
    view.unmount();
    const off = state().results.band.rules.map(({ id }) => id);
    showProject({ ...project, rules: { ...project.rules, off } }, { name: null, token: null });
    render(<Window />);
    const balanced = state().results.balance?.floor ?? Number.NaN;
    fireEvent.click(screen.getByRole("button", { name: "Set the floor there" }));
    expect(floor()).toBe(balanced);
    expect(state().history.steps.at(-1)?.label).toBe("floor to where the cut makes the fill");
  });

  it("moves by a typed height, as one step to undo", () => {
    render(<Window />);
    const field = screen.getByLabelText("Height of the finished floor");
    fireEvent.change(field, { target: { value: "99' 6\"" } });
    fireEvent.keyDown(field, { key: "Enter" });
    expect(floor()).toBeCloseTo(99.5 * 0.3048, 12);
    expect(state().history.steps.at(-1)?.label).toBe("floor to 99′ 6″");
  });

  it("follows the hand while the floor is dragged, in panel, sentence and rail", () => {
    render(<Window />);
    act(() => dragFloor(100 * 0.3048));
    expect(screen.getByLabelText("Height of the finished floor")).toHaveProperty("value", "100′ 0″");
    expect(screen.getByText("level with the mark")).toBeTruthy();
    expect(screen.getByRole("button", { name: /^Floor: needs attention/ })).toBeTruthy();
    const high = state().results.corners.find(({ name }) => name === "A");
    const said = notationOf(demoProject("pottery-studio").display).length(high?.floorAboveGround ?? 0);
    expect(document.querySelector(".say")?.textContent).toContain(said);
    act(() => cancelFloorDrag());
    expect(screen.getByLabelText("Height of the finished floor")).toHaveProperty("value", "99′ 5″");
  });

  it("a limit opens to its source and its switch, and can be switched off", () => {
    render(<Window />);
    fireEvent.click(screen.getByRole("button", { name: /Not above:.*fill under the slab/ }));
    const item = screen.getByRole("button", { name: /fill under the slab/ }).closest("li");
    if (!item) throw new Error("no limit");
    expect(within(item).getByText(/International Residential Code R506\.2\.1/)).toBeTruthy();
    const before = state().results.band.high ?? 0;
    fireEvent.click(within(item).getByRole("switch", { name: "Counts" }));
    expect(present(state().history).rules.off).toEqual(["fillUnderSlab"]);
    expect(state().results.band.high ?? 0).toBeGreaterThan(before);
  });

  it("keeps the order of the limits while the floor is under the hand", () => {
    render(<Window />);
    const names = () => [...document.querySelectorAll(".limit-name")].map((name) => name.textContent);
    const before = names();
    expect(before.length).toBeGreaterThan(3);
    act(() => dragFloor(101 * 0.3048));
    expect(names()).toEqual(before);
    act(() => cancelFloorDrag());
  });

  it("says what to do before there is a building", () => {
    act(() => showProject(newProject(), { name: null, token: null }));
    render(<Window />);
    expect(screen.getByText("Draw the building first")).toBeTruthy();
    expect(screen.getByRole("button", { name: "Go to the building" })).toBeTruthy();
  });
});
