import { cleanup, fireEvent, render, screen, within } from "@testing-library/react";
import { afterEach, describe, expect, it } from "vitest";
import { type Project, present } from "../../src/document";
import { WaterPanel } from "../../src/panels/steps/WaterPanel";
import { showProject } from "../../src/store/actions";
import { appStore } from "../../src/store/store";
import { demoProject } from "../support/demo";

const plan = () => present(appStore.getState().history);
const water = () => appStore.getState().results.water;

function open(project: Project) {
  showProject(project, { name: null, token: null });
  render(<WaterPanel />);
}

const studio = () => demoProject("pottery-studio");
const part = (title: string) => screen.getByText(title).closest("details") as HTMLElement;

function type(field: HTMLElement, text: string) {
  fireEvent.focus(field);
  fireEvent.change(field, { target: { value: text } });
  fireEvent.blur(field);
}

afterEach(cleanup);

describe("the water step", () => {
  it("tells every wall, the worst first, and folds what isn't in use", () => {
    const demo = demoProject("potting-barn");
    open({
      ...demo,
      grading: { ...demo.grading, apron: { ...demo.grading.apron, leave: [0] } },
    });
    const rows = screen.getAllByRole("button", { name: /, (north|east|south|west)$/ });
    expect(rows).toHaveLength(4);
    expect(rows[0]?.textContent).toContain("A–B");
    for (const title of [
      "Roof",
      "Drain round the footing",
      "While the earth lies bare",
      "Ground round the walls",
    ])
      expect(part(title)).toHaveProperty("open", false);
  });

  it("looks for what mends a wall, and does it when asked", async () => {
    const demo = demoProject("potting-barn");
    open({
      ...demo,
      grading: { ...demo.grading, apron: { ...demo.grading.apron, leave: [0] } },
    });
    expect(water().walls[0]?.passes).toBe(false);
    fireEvent.click(screen.getByRole("button", { name: "Look for a mend" }));
    const mends = await screen.findByRole("list", { name: "Mends of wall A–B" }, { timeout: 30_000 });
    const row = await within(mends).findByText(/^Let the ground fall/, {}, { timeout: 30_000 });
    fireEvent.click(within(row.closest("li") as HTMLElement).getByRole("button", { name: "Try it" }));
    expect(plan().grading.apron.leave).toEqual([]);
    expect(water().walls.every(({ passes }) => passes)).toBe(true);
    expect(screen.queryByText("Look for a mend")).toBeNull();
  }, 60_000);

  it("lays a swale out of a hollow by one click", () => {
    open(demoProject("potting-barn"));
    expect(water().ponds).toHaveLength(1);
    fireEvent.click(screen.getByRole("button", { name: "Lay a swale out of it" }));
    expect(plan().grading.swales).toHaveLength(1);
    expect(water().ponds).toHaveLength(0);
    expect(screen.getByText("It drains.")).toBeTruthy();
  });
});

describe("rain", () => {
  it("typed as one figure gives each swale its peak; a table takes its place, by the time of concentration", () => {
    open(studio());
    type(screen.getByLabelText("It rains"), "2");
    expect(plan().storm.intensity).toBeCloseTo((2 * 0.0254) / 3600, 12);
    expect(water().flows[0]?.peak).toBeGreaterThan(0);
    fireEvent.click(screen.getByRole("button", { name: "Type a table by duration instead" }));
    expect(screen.queryByLabelText("It rains")).toBeNull();
    const [row] = plan().storm.table;
    expect(row).toEqual({ duration: 300, intensity: plan().storm.intensity });
    type(screen.getByLabelText("Storm 1 rains"), "4");
    expect(water().flows[0]?.intensity).toBeCloseTo((4 * 0.0254) / 3600, 12);
    type(screen.getByLabelText("Storm 1 rains"), "hard");
    expect(screen.getByText(/Can't read “hard”/)).toBeTruthy();
    fireEvent.click(screen.getByRole("button", { name: "Remove row 1 of the rain" }));
    expect(plan().storm.table).toEqual([]);
  });
});

describe("the roof", () => {
  it("told its shape has its sides with area and peak, and one is led into the swale", () => {
    open(studio());
    type(screen.getByLabelText("It rains"), "2");
    const roof = part("Roof");
    fireEvent.change(roof.querySelector("select") as HTMLElement, { target: { value: "gable" } });
    expect(plan().drainage.roof.shape).toBe("gable");
    const sides = water().roof ?? [];
    expect(sides).toHaveLength(2);
    for (const { name } of sides)
      expect(screen.getByText(`Side at wall ${name.replace("-", "–")}`)).toBeTruthy();
    // The first asks for the shape.
    const choice = roof.querySelectorAll("select")[1];
    if (!choice) throw new Error("each side asks");
    fireEvent.change(choice, { target: { value: plan().grading.swales[0]?.id } });
    expect(plan().drainage.roof.outlets).toHaveLength(1);
    expect(water().roof?.[0]?.joins).toBe("swale");
    expect(water().flows[0]?.roof).toBeGreaterThan(10);
  });
});

describe("pipes", () => {
  it("aren't asked about where no swale crosses a drive; where one does its size follows from the rain", () => {
    open(studio());
    expect(screen.queryByText("Pipes under drives")).toBeNull();
    cleanup();
    const project = studio();
    const [drive] = project.grading.drives;
    const [[x = 0, y = 0] = []] = drive?.line ?? [];
    const [swale] = project.grading.swales;
    if (!swale) throw new Error("it has a swale");
    const line: [number, number][] = [
      [x - 8, y + 3],
      [x + 8, y + 3],
    ];
    open({ ...project, grading: { ...project.grading, swales: [{ ...swale, line }] } });
    expect(screen.getByText("Pipes under drives")).toBeTruthy();
    const [pipe] = water().pipes;
    expect(screen.getByText(`${pipe?.name}.`)).toBeTruthy();
    type(screen.getByLabelText("Bore"), '12"');
    expect(plan().drainage.pipe.bore).toBeCloseTo(0.3048, 9);
    type(screen.getByLabelText("Bore"), "");
    expect(plan().drainage.pipe.bore).toBeNull();
  });
});

describe("drain, lot lines, bare earth", () => {
  it("the drain round the footing says whether it comes out once it is asked", () => {
    open(studio());
    fireEvent.click(screen.getByLabelText("Ask where it can come out"));
    expect(plan().drainage.footingDrain.on).toBe(true);
    expect(water().footingDrain).not.toBeNull();
    expect(
      screen.getByText(water().footingDrain?.outlet ? /^It comes out / : /^It can't come out/),
    ).toBeTruthy();
  });

  it("each lot line over which water leaves has its area before and after; a rise is told as more for the neighbour", () => {
    open(studio());
    const told = water().leaving.filter(({ before, after }) => Math.max(before, after) >= 5);
    for (const { line } of told) expect(screen.getByText(`Line ${line + 1}`)).toBeTruthy();
    expect(screen.queryAllByText(/runs off to the neighbour than before/)).toHaveLength(
      told.filter(({ rises }) => rises).length,
    );
  });

  it("bare earth is marked by a steepness and a length of one's own", () => {
    open(studio());
    const before = water().bareEarth?.slopes.length ?? 0;
    type(screen.getByLabelText("and longer than"), "1'");
    type(screen.getByLabelText("Marked if steeper than"), "10 %");
    expect(plan().drainage.bareEarth).toEqual({ steepness: 0.1, length: 0.3048 });
    expect(water().bareEarth?.slopes.length).toBeGreaterThan(before);
    expect(screen.getByText("Silt barrier along the low side")).toBeTruthy();
  });
});
