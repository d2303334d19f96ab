/** What is selected in figures: typed over, refused in words, locked, several at once. */
import { act, cleanup, fireEvent, render, screen } from "@testing-library/react";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { drawingEdits, pitEdits, present, surveyEdits, type Thing, undoLabel } from "../../src/document";
import { Inspector } from "../../src/panels/inspector/Inspector";
import { bearingOf, diagonalsOf, originsOf, placesOf, sidesOf } from "../../src/panels/inspector/places";
import { run, select, setStep, showProject } from "../../src/store/actions";
import { appStore } from "../../src/store/store";
import { demoProject } from "../support/demo";

const project = () => present(appStore.getState().history);
const building: Thing = { kind: "building" };

beforeEach(() => showProject(demoProject("pottery-studio"), { name: null, token: null }));
afterEach(cleanup);

function type(label: string, text: string): HTMLInputElement {
  const field = screen.getByLabelText<HTMLInputElement>(label);
  fireEvent.focus(field);
  fireEvent.change(field, { target: { value: text } });
  fireEvent.keyDown(field, { key: "Enter" });
  return field;
}

describe("the figures of a thing", () => {
  it("are those of the plan", () => {
    const plan = demoProject("pottery-studio");
    expect(placesOf(plan, building).map(({ name }) => name)).toEqual(["A", "B", "C", "D"]);
    expect(sidesOf(plan, building).map(({ name, m }) => [name, Math.round(m / 0.3048)])).toEqual([
      ["A–B", 32],
      ["B–C", 24],
      ["C–D", 32],
      ["D–A", 24],
    ]);
    for (const { m } of diagonalsOf(plan, building)) expect(m / 0.3048).toBeCloseTo(40, 6);
    expect(originsOf(plan).map(({ name }) => name)).toEqual(["the plan's origin", "capped bolt"]);
    expect(bearingOf(plan, building)).toBeCloseTo(Math.PI / 2 - plan.lot.north, 9);
    // The big door, 12′ wide, is in the middle of wall C–D.
    const [, , c, d] = plan.building?.outline ?? [];
    const middle = [((c?.[0] ?? 0) + (d?.[0] ?? 0)) / 2, c?.[1] ?? 0].map((m) => expect.closeTo(m, 6));
    expect(placesOf(plan, { kind: "door", id: "d1" })).toEqual([{ name: "middle", at: middle }]);
  });
});

describe("the inspector", () => {
  it("isn't there without a selection", () => {
    select([]);
    render(<Inspector commands={[]} run={() => undefined} />);
    expect(screen.queryByTestId("inspector")).toBeNull();
  });

  it("gives way to a step that tells of something else, until something is selected anew", () => {
    const [swale] = project().grading.swales;
    const thing: Thing = { kind: "swale", id: swale?.id ?? "" };
    const isOpen = () => screen.queryByRole("button", { name: "Fold the figures away" }) !== null;
    setStep("water");
    select([thing]);
    render(<Inspector commands={[]} run={() => undefined} />);
    expect(isOpen()).toBe(true);
    act(() => setStep("floor"));
    expect(isOpen()).toBe(false);
    fireEvent.click(screen.getByRole("button", { name: "Show the figures" }));
    expect(isOpen()).toBe(true);
    act(() => setStep("quantities"));
    expect(isOpen()).toBe(false);
    act(() => select([building]));
    expect(isOpen()).toBe(true);
  });

  it("leaves the lot's corners to the lot's own step", () => {
    const places = () => screen.queryByRole("region", { name: "Places" });
    setStep("lot");
    select([{ kind: "lot" }]);
    render(<Inspector commands={[]} run={() => undefined} />);
    expect(places()).toBeNull();
    cleanup();
    setStep("floor");
    render(<Inspector commands={[]} run={() => undefined} />);
    expect(places()).not.toBeNull();
  });

  it("takes a corner's place and a bearing, each an undo step", () => {
    select([building]);
    render(<Inspector commands={[]} run={() => undefined} />);
    type("East of A", "39'");
    expect(project().building?.outline[0]?.[0]).toBeCloseTo(39 * 0.3048, 9);
    expect(undoLabel(appStore.getState().history)).toBe("move a place of the building");
    type("Bearing of A–B", "N 80 E");
    expect(bearingOf(project(), building)).toBeCloseTo((80 * Math.PI) / 180, 6);
    expect(undoLabel(appStore.getState().history)).toBe("turn building");
  });

  it("takes the heights of a breakline and the depths of a test pit", () => {
    run(surveyEdits.addBreakline, {
      kind: "ditch",
      points: [
        [1, 1, null],
        [5, 1, null],
      ],
    });
    select([{ kind: "breakline", id: "b1" }]);
    const { unmount } = render(<Inspector commands={[]} run={() => undefined} />);
    type("Height of 2", "99' 6\"");
    expect(project().survey.breaklines[0]?.points[1]?.[2]).toBeCloseTo(99.5 * 0.3048, 9);
    type("Height of 2", "");
    expect(project().survey.breaklines[0]?.points[1]?.[2]).toBeNull();
    unmount();
    run(pitEdits.addPit, { place: { kind: "at", x: 2, y: 2 } });
    select([{ kind: "pit", id: "p1" }]);
    render(<Inspector commands={[]} run={() => undefined} />);
    type("Rock at", "3'");
    expect(project().survey.pits[0]?.rock?.m).toBeCloseTo(3 * 0.3048, 9);
    const field = type("Water at", "-2'");
    expect(field.getAttribute("aria-invalid")).toBe("true");
  });

  it("says what is wrong and keeps what was typed", () => {
    select([building]);
    render(<Inspector commands={[]} run={() => undefined} />);
    const field = type("East of A", "over there");
    expect(field.value).toBe("over there");
    expect(screen.getByRole("alert").textContent).toMatch(/over there/);
    expect(undoLabel(appStore.getState().history)).toBeNull();
  });

  it("shows a locked thing so, and its fields can't be typed into", () => {
    run(drawingEdits.lockThings, { things: [building], locked: true });
    select([building]);
    render(<Inspector commands={[]} run={() => undefined} />);
    expect(screen.getByLabelText<HTMLInputElement>("East of A").readOnly).toBe(true);
    expect(screen.getByRole("note").textContent).toMatch(/^Locked/);
  });

  it("counts several things by kind and keeps one kind of them", () => {
    const [one, two] = project().lot.features;
    select([building, { kind: "feature", id: one?.id ?? "" }, { kind: "feature", id: two?.id ?? "" }]);
    render(<Inspector commands={[]} run={() => undefined} />);
    expect(screen.getByRole("heading", { level: 2 }).textContent).toBe("3 things");
    fireEvent.click(screen.getByRole("button", { name: "Keep only the 2 features" }));
    expect(appStore.getState().selection).toHaveLength(2);
  });

  it("sets the arrow keys' step, and the usual one again when it is emptied", () => {
    select([building]);
    render(<Inspector commands={[]} run={() => undefined} />);
    const label = "Arrow keys move it by (with Shift ten times)";
    type(label, '2"');
    expect(appStore.getState().nudgeStep).toBeCloseTo(0.0508, 9);
    type(label, "");
    expect(appStore.getState().nudgeStep).toBeNull();
    expect(undoLabel(appStore.getState().history)).toBeNull();
  });
});
