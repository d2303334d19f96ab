/** What one step of the floor does to the loads: what the bill says there less what it says here. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { openProject } from "../../src/document/open";
import type { Project } from "../../src/document/schema";
import { createSolver } from "../../src/solve/pipeline";
import { site } from "./sites";

const inch = 0.0254;
const solver = createSolver();

function hillside(): Project {
  const opened = openProject(readFileSync("demo-projects/open-hillside.drysill.json", "utf8"));
  if (!opened.ok) throw new Error("the demo doesn't open");
  return opened.project;
}

/** What the bill has on trucks at a floor, m3 loose. */
function onTrucks(project: Project, floor: number) {
  const { bill } = solver.solve(project, { floor });
  const sum = (...ids: string[]) =>
    bill.reduce((total, { id, quantity }) => (ids.includes(id) ? total + quantity : total), 0);
  return {
    in: sum("fill-loose", "slab-fill-loose"),
    out: sum("cut-loose", "trench-left"),
    fill: sum("fill"),
    cut: sum("cut"),
  };
}

function stepAt(project: Project, floor: number, step: number) {
  const told = solver.solve(project, { floor }).oneStep.find((one) => one.step === step);
  if (!told) throw new Error("no such step");
  return told;
}

describe("one inch of floor", () => {
  // The bill's earth is refined floor by floor within half a per cent; the step's on one grid.
  it.each([
    { floor: 105.3, brings: true },
    { floor: 104.6, brings: false },
  ])("brings and takes what the bill says, own cut used as fill, at $floor", ({ floor, brings }) => {
    const project = hillside();
    expect(project.materials.cutAsFill).toBe(true);
    const [here, above] = [onTrucks(project, floor), onTrucks(project, floor + inch)];
    const told = stepAt(project, floor, inch);
    const { volume } = project.truck;
    expect(told.loadsIn).toBeCloseTo((above.in - here.in) / volume, 1);
    expect(told.loadsOut).toBeCloseTo((above.out - here.out) / volume, 1);
    expect(told.fill / (above.fill - here.fill)).toBeCloseTo(1, 1);
    expect(told.cut / (above.cut - here.cut)).toBeCloseTo(1, 1);
    // A floor with earth to spare sends less of it away; one that lacks earth has more brought.
    if (brings) expect(told.loadsIn).toBeGreaterThan(1.5);
    else expect(told.loadsOut).toBeLessThan(-0.3);
  });

  it("is counted by weight where the truck is full by weight first", () => {
    const loadsIn = (payload: number) =>
      stepAt(site({ rest: { truck: { volume: 10, payload } } }), 100.5, inch).loadsIn;
    expect(loadsIn(500) / loadsIn(1000)).toBeCloseTo(2, 6);
    expect(loadsIn(1e6)).toBeCloseTo(
      stepAt(site({ rest: { truck: { volume: 10 } } }), 100.5, inch).loadsIn,
      9,
    );
  });
});
