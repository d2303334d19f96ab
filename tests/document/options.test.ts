import { describe, expect, it } from "vitest";

import {
  buildingEdits,
  mostOptions,
  newProject,
  openProject,
  optionEdits,
  type Project,
  projectText,
  siteEdits,
} from "../../src/document";

function must(edit: ReturnType<(typeof optionEdits.keepOption)["run"]>): Project {
  if (!edit.ok) throw new Error(edit.why);
  return edit.project;
}

function withBuilding(): Project {
  const outline: [number, number][] = [
    [0, 0],
    [8, 0],
    [8, 6],
    [0, 6],
  ];
  return must(buildingEdits.drawBuilding.run(newProject(), { outline, floor: 10 }));
}

describe("options kept by name", () => {
  it("hold the building and the drives as they were, and bring them back in one step", () => {
    const kept = must(optionEdits.keepOption.run(withBuilding(), { name: "low floor" }));
    const raised = must(buildingEdits.setFloor.run(kept, { floor: 11 }));
    const more = must(
      siteEdits.addDrive.run(raised, {
        line: [
          [20, 0],
          [8, 3],
        ],
      }),
    );
    const back = must(optionEdits.takeOption.run(more, { id: kept.options[0]?.id ?? "" }));
    expect(back.building?.floor).toBe(10);
    expect(back.grading.drives).toEqual([]);
    expect(back.options).toEqual(kept.options);
  });

  it("leave readings, lot and rules as they are now", () => {
    const kept = must(optionEdits.keepOption.run(withBuilding(), {}));
    const later = { ...kept, rules: { ...kept.rules, leastShowing: 0.3 }, name: "renamed plan" };
    const back = must(optionEdits.takeOption.run(later, { id: "o1" }));
    expect(back.rules.leastShowing).toBe(0.3);
    expect(back.name).toBe("renamed plan");
  });

  it("get a free name where none is typed, and no name twice", () => {
    let project = must(optionEdits.keepOption.run(withBuilding(), { name: "option 2" }));
    project = must(optionEdits.keepOption.run(project, {}));
    expect(project.options.map(({ name }) => name)).toEqual(["option 2", "option 3"]);
    const twice = optionEdits.keepOption.run(project, { name: "option 2" });
    expect(twice).toMatchObject({ ok: false, why: expect.stringContaining("another name") });
    const renamed = optionEdits.renameOption.run(project, { id: "o1", name: "option 3" });
    expect(renamed).toMatchObject({ ok: false, why: expect.stringContaining("another name") });
  });

  it("can be renewed, named anew and removed", () => {
    const kept = must(optionEdits.keepOption.run(withBuilding(), {}));
    const raised = must(buildingEdits.setFloor.run(kept, { floor: 11 }));
    const renewed = must(optionEdits.renewOption.run(raised, { id: "o1" }));
    expect(renewed.options[0]?.building?.floor).toBe(11);
    const named = must(optionEdits.renameOption.run(renewed, { id: "o1", name: " by the road " }));
    expect(named.options[0]?.name).toBe("by the road");
    expect(must(optionEdits.removeOption.run(named, { id: "o1" })).options).toEqual([]);
  });

  it("are refused without a building, beyond the most, without a name and where they are gone", () => {
    expect(optionEdits.keepOption.run(newProject(), {})).toMatchObject({ ok: false });
    let project = withBuilding();
    for (let i = 0; i < mostOptions; i++) project = must(optionEdits.keepOption.run(project, {}));
    expect(optionEdits.keepOption.run(project, {})).toMatchObject({
      ok: false,
      why: expect.stringContaining(`${mostOptions} options`),
    });
    expect(optionEdits.renameOption.run(project, { id: "o1", name: "  " })).toMatchObject({ ok: false });
    expect(optionEdits.takeOption.run(project, { id: "nowhere" })).toMatchObject({ ok: false });
  });

  it("are kept in the file", () => {
    const kept = must(optionEdits.keepOption.run(withBuilding(), { name: "low floor" }));
    const opened = openProject(projectText(kept));
    expect(opened.ok && opened.project.options).toEqual(kept.options);
  });
});
