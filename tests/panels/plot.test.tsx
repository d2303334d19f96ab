/** The deed, the tapes and the test pits in their panels. */
import { act, cleanup, fireEvent, render, screen } from "@testing-library/react";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { pitEdits, plotEdits, present, siteEdits } from "../../src/document";
import { DeedSection } from "../../src/panels/plot/DeedSection";
import { FeatureCard } from "../../src/panels/plot/FeatureCard";
import { Pits } from "../../src/panels/plot/Pits";
import { Setbacks } from "../../src/panels/plot/Setbacks";
import { Squaring } from "../../src/panels/plot/Squaring";
import { EarthFields } from "../../src/panels/steps/EarthFields";
import { deedOutline } from "../../src/plot";
import { run, showProject } from "../../src/store/actions";
import { appStore } from "../../src/store/store";
import { demoProject } from "../support/demo";

const project = () => present(appStore.getState().history);
const type = (label: string, text: string) => {
  const field = screen.getByLabelText(label);
  fireEvent.change(field, { target: { value: text } });
  fireEvent.keyDown(field, { key: "Enter" });
};

beforeEach(() => showProject(demoProject("pottery-studio"), { name: null, token: null }));
afterEach(cleanup);

describe("test pits", () => {
  it("show their place, take typed depths, and offer what they met for the strip", () => {
    run(pitEdits.addPit, { place: { kind: "at", x: 10, y: 12 } });
    render(
      <>
        <Pits />
        <EarthFields />
      </>,
    );
    type("Topsoil down to", '9"');
    expect(project().survey.pits[0]?.topsoil?.m).toBeCloseTo(9 * 0.0254, 12);
    expect(screen.getByRole("table", { name: "Ground below the trench's corners" })).toBeTruthy();
    fireEvent.click(screen.getByRole("button", { name: "Take 9″" }));
    expect(project().materials.stripDepth).toBeCloseTo(9 * 0.0254, 12);
    type("East", "40'");
    expect(project().survey.pits[0]?.place).toEqual({ kind: "at", x: 40 * 0.3048, y: 12 });
  });
});

describe("the deed", () => {
  it("asks for a curve's radius and changes nothing before it is typed", () => {
    run(plotEdits.addCourse, { bearing: "N 10 E", distance: "30'" });
    render(<DeedSection />);
    const course = () => project().lot.deed?.courses[0];
    fireEvent.click(screen.getByRole("button", { name: "Course 1 is a curve" }));
    expect(course()?.curve).toBeNull();
    type("Curve, radius", "50'");
    expect(course()?.curve).toMatchObject({ radius: { text: "50'" }, turns: "right" });
    expect(course()?.distance.text).toBe("30'");
    type("Curve, radius", "");
    expect(course()?.curve).toBeNull();
  });
});

describe("a lot with a curve", () => {
  it("has a setback a course, each on its own side", () => {
    const courses = [
      { bearing: "N 90 E", distance: "40 m" },
      { bearing: "N 0 E", distance: "30 m" },
      { bearing: "N 45 W", distance: "15.708 m", radius: "10 m", turns: "left" as const },
      { bearing: "N 90 W", distance: "30 m" },
      { bearing: "S 0 E", distance: "40 m" },
    ];
    for (const course of courses) run(plotEdits.addCourse, course);
    const { lot } = project();
    run(plotEdits.drawDeed, { outline: (lot.deed && deedOutline(lot.deed, lot.north)?.outline) ?? [] });
    render(<Setbacks />);
    for (const side of ["1, south", "2, east", "3, north-east, curve", "4, north", "5, west"])
      expect(screen.getByLabelText(`Line ${side}`)).toBeTruthy();
    type("Line 3, north-east, curve", "5 m");
    expect(project().lot.setbacks.length).toBeGreaterThan(15);
    expect(screen.getByLabelText("Line 3, north-east, curve")).toHaveProperty(
      "value",
      expect.stringContaining("16′ 4"),
    );
  });
});

describe("the taped building", () => {
  it("tells what a tape that lay on the slope still needs", () => {
    const { building } = project();
    if (!building) throw new Error("the studio has a building");
    render(<Squaring building={building} />);
    type("A–B as taped", "32'");
    fireEvent.click(screen.getByRole("button", { name: "A–B: the tape lay on the slope" }));
    expect(project().staking.tapes[0]?.held).toBe("slope");
    type("A–B as taped", "");
    expect(project().staking.tapes).toEqual([]);
  });
});

describe("a thing on the lot", () => {
  it("is offered the usual distance, with whose it is, and takes it on request only", () => {
    run(siteEdits.addFeature, { kind: "tree", points: [[3, 4]] });
    const tree = () => {
      const found = project().lot.features.at(-1);
      if (!found) throw new Error("no tree");
      return found;
    };
    const shown = render(<FeatureCard feature={tree()} />);
    type("Trunk's thickness", '10"');
    expect(tree().trunk).toBeCloseTo(0.254, 12);
    expect(tree().keepClear).toBe(0);
    act(() => shown.rerender(<FeatureCard feature={tree()} />));
    expect(screen.getByText(/BS 5837/)).toBeTruthy();
    fireEvent.click(screen.getByRole("button", { name: "Take 10′ 0″" }));
    expect(tree().keepClear).toBeCloseTo(12 * 0.254, 12);
  });
});
