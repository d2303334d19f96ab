/** What is selected in figures: typed over, refused in words, locked, several at once. */
import { act, cleanup, fireEvent, render, screen, within } from "@testing-library/react";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import {
  drawingEdits,
  gradingEdits,
  pitEdits,
  present,
  surveyEdits,
  type Thing,
  undoLabel,
  windowEdits,
} from "../../src/document";
import { Inspector } from "../../src/panels/inspector/Inspector";
import { countFrom } from "../../src/panels/inspector/origin";
import { bearingOf, diagonalsOf, originsOf, placesOf, sidesOf } from "../../src/panels/inspector/places";
import { SidePanel } from "../../src/panels/SidePanel";
import { run, select, setStep, showProject } from "../../src/store/actions";
import type { StepName } from "../../src/store/state";
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

describe("the inspector beside the step that tells of the same thing", () => {
  const names = () => [
    ...screen.queryAllByRole("textbox").map((field) => (field as HTMLInputElement).labels?.[0]?.textContent),
    ...[...document.querySelectorAll(".fact dt")].map((name) => name.textContent),
  ];
  const show = (step: StepName, thing: Thing) => {
    cleanup();
    setStep(step);
    select([thing]);
    render(
      <>
        <SidePanel run={() => undefined} />
        <Inspector commands={[]} run={() => undefined} />
      </>,
    );
  };
  const inspected = () => screen.getByTestId("inspector");

  it("tells the building's figures once, and has what the step hasn't", () => {
    show("building", building);
    expect(names().filter((name) => /^(Name|Diagonal .*|Round it)$/.test(name ?? ""))).toEqual([
      "Name",
      "Round it",
      "Diagonal A–C",
      "Diagonal B–D",
    ]);
    expect(within(inspected()).queryByRole("region", { name: "Places" })).toBeNull();
    expect(within(inspected()).queryByRole("region", { name: "Sides" })).toBeNull();
    within(inspected()).getByLabelText("Finished floor");
    within(inspected()).getByLabelText("Bearing of A–B");
    type("Corner A, east", "39'");
    expect(project().building?.outline[0]?.[0]).toBeCloseTo(39 * 0.3048, 9);
    // No rectangle any more: two of its walls don't say the other two.
    within(inspected()).getByLabelText("C–D");
  });

  it("counts the corners in the building's step from a mark too", () => {
    show("building", building);
    const [corner] = project().building?.outline ?? [];
    const mark = project().survey.marks.find(({ at }) => at !== null)?.at;
    if (!corner || !mark) throw new Error("the studio has a building and a mark with a place");
    expect(screen.getByRole("button", { name: /Counted from/ }).textContent).toBe("from the plan's origin");
    act(() => countFrom(project().survey.marks.find(({ at }) => at !== null)?.id ?? ""));
    type("Corner A, east", "0");
    expect(project().building?.outline[0]?.[0]).toBeCloseTo(mark[0], 6);
    act(() => countFrom("plan"));
  });

  it("leaves nothing out: what it tells elsewhere stands in the step or in it", () => {
    run(gradingEdits.addPad, {
      outline: [
        [1, 1],
        [5, 1],
        [5, 4],
      ],
    });
    run(gradingEdits.addBerm, {
      line: [
        [1, 6],
        [5, 8],
        [9, 8],
      ],
    });
    run(gradingEdits.addRetainingWall, {
      line: [
        [1, 9],
        [5, 9],
      ],
    });
    run(gradingEdits.addGradePoint, { at: [2, 3], height: 30 });
    run(pitEdits.addPit, { place: { kind: "at", x: 2, y: 2 } });
    run(surveyEdits.addBreakline, {
      kind: "ditch",
      points: [
        [1, 1, null],
        [5, 1, null],
      ],
    });
    run(windowEdits.addWindow, { wall: 0, offset: 1, width: 1 });
    const { lot, grading, survey, building: house } = project();
    const of = (kind: Thing["kind"], list: readonly { readonly id: string }[] | undefined) =>
      (list ?? []).map(({ id }) => ({ kind, id }) as Thing);
    const things: Record<string, readonly Thing[]> = {
      lot: of("feature", lot.features),
      shots: [...of("mark", survey.marks), ...of("breakline", survey.breaklines)],
      building: [building, ...of("door", house?.doors), ...of("window", house?.windows)],
      drive: [
        ...of("drive", grading.drives),
        ...of("pad", grading.pads),
        ...of("berm", grading.berms),
        ...of("retaining-wall", grading.walls),
        ...of("grade-point", grading.points),
      ],
      water: of("swale", grading.swales),
      foundation: of("pit", survey.pits),
    };
    const figures = (part: ParentNode) => [
      ...[...part.querySelectorAll<HTMLInputElement>("input:not([type=checkbox])")].map(({ value }) => value),
      ...[...part.querySelectorAll(".fact dd")].map((fact) => fact.textContent ?? ""),
    ];
    /** Said in another way in the step: a mark's height as a length, a door's wall by a choice. */
    const otherwise: Partial<Record<Thing["kind"], readonly unknown[]>> = {
      mark: ["100'"],
      door: [expect.stringMatching(/^[A-D]–[A-D]/)],
      window: [expect.stringMatching(/^[A-D]–[A-D]/)],
    };
    for (const [step, some] of Object.entries(things))
      for (const thing of some) {
        show("quantities", thing);
        const elsewhere = figures(inspected());
        show(step as StepName, thing);
        const here = figures(document.body);
        expect(
          elsewhere.filter((figure) => !here.includes(figure)),
          `${step}: ${thing.kind}`,
        ).toEqual(otherwise[thing.kind] ?? []);
        expect(figures(inspected()).length, `${step}: ${thing.kind}`).toBeLessThan(elsewhere.length);
      }
  });
});

describe("the part of a step that tells of a thing", () => {
  it("is marked while that thing alone is selected, and comes into sight when it is", () => {
    const seen = vi.fn();
    Element.prototype.scrollIntoView = seen;
    const [one, two] = project().lot.features;
    const thing = (id = "") => ({ kind: "feature", id }) as const;
    setStep("lot");
    select([thing(one?.id)]);
    const { container } = render(<SidePanel run={() => undefined} />);
    const marked = () => [...container.querySelectorAll(".told-selected")];
    // A step that is gone to begins at its head.
    expect(seen).not.toHaveBeenCalled();
    expect(marked()).toHaveLength(1);
    act(() => select([thing(two?.id)]));
    expect(seen).toHaveBeenCalledOnce();
    expect(
      within(marked()[0] as HTMLElement).getByRole<HTMLInputElement>("textbox", { name: "Name" }).value,
    ).toBe(two?.name);
    act(() => select([thing(one?.id), thing(two?.id)]));
    expect(marked()).toEqual([]);
  });
});
