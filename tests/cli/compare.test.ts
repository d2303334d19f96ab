import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";

import { compare } from "../../src/cli/compare";
import { buildingEdits, openProject, optionEdits, type Project, projectText } from "../../src/document";
import { run } from "./fakeIo";

function must(edit: ReturnType<(typeof optionEdits.keepOption)["run"]>): Project {
  if (!edit.ok) throw new Error(edit.why);
  return edit.project;
}

/** The pottery studio with its floor kept as an option, then raised by 0.2 m. */
function raised(): { text: string; floor: number } {
  const opened = openProject(readFileSync("demo-projects/pottery-studio.drysill.json", "utf8"));
  if (!opened.ok) throw new Error("the demo opens");
  const floor = opened.project.building?.floor ?? 0;
  const kept = must(optionEdits.keepOption.run(opened.project, { name: "as drawn" }));
  return { text: projectText(must(buildingEdits.setFloor.run(kept, { floor: floor + 0.2 }))), floor };
}

describe("compare", () => {
  it("tells the plan as it is now and each option, as JSON", async () => {
    const { text, floor } = raised();
    const done = await run(["compare", "p.json", "--json"], [compare], { "p.json": text });
    expect(done.code).toBe(0);
    const { now, options, about } = JSON.parse(done.out);
    expect(options).toHaveLength(1);
    expect(options[0]).toMatchObject({ name: "as drawn" });
    expect(options[0].floor).toBeCloseTo(floor, 9);
    expect(now.floor).toBeCloseTo(floor + 0.2, 9);
    expect(now.fill).toBeGreaterThan(options[0].fill);
    expect(now.floorAboveGround.m - options[0].floorAboveGround.m).toBeCloseTo(0.2, 9);
    expect(about["options[].mostShowing.m"].unit).toBe("m");
    expect(about["now.cutLoads"].unit).toBe("loads");
  });

  it("prints a line for each", async () => {
    const done = await run(["compare", "p.json"], [compare], { "p.json": raised().text });
    const lines = done.out.trim().split("\n");
    expect(lines).toHaveLength(3);
    expect(lines[0]).toMatch(/drive {2,}wall showing {2,}floor over ground {2,}water/);
    expect(lines[1]).toMatch(/^as it is now {2}/);
    expect(lines[1]).toMatch(/″ at [A-Z](-[A-Z])? {2,}.*″ at /);
    expect(lines[2]).toMatch(/^as drawn {2,}/);
  });

  it("says what to do where no option is kept", async () => {
    const text = readFileSync("demo-projects/pottery-studio.drysill.json", "utf8");
    const done = await run(["compare", "p.json"], [compare], { "p.json": text });
    expect(done.code).toBe(2);
    expect(done.said).toMatch(/keeps no options\. Keep one/);
  });
});
