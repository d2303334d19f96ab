import { describe, expect, it } from "vitest";
import {
  buildingEdits,
  newProject,
  type Point,
  type Project,
  siteEdits,
  surveyEdits,
} from "../../src/document";
import { checkEdit, refusal } from "../support/checkEdit";

const inches = (project: Project): Project => ({
  ...project,
  display: { ...project.display, reading: "in", length: "ft-in" },
});

function withBuilding(): Project {
  const outline = buildingEdits.rectangleOutline([10, 20], 9.6, 7.2);
  return checkEdit(newProject(), buildingEdits.drawBuilding, { outline, floor: 30 });
}

describe("survey edits", () => {
  it("keep what was typed beside its value", () => {
    let project = checkEdit(inches(newProject()), surveyEdits.addMark, { name: "bolt", height: "100'" });
    expect(project.survey.marks[0]?.height).toEqual({ text: "100'", m: 30.48 });
    project = checkEdit(project, surveyEdits.addShot, { reading: "62 5/8", kind: "mark", of: "m1" });
    expect(project.survey.shots[0]?.reading).toEqual({ text: "62 5/8", m: 1.590675 });
    expect(project.survey.setups).toHaveLength(1);
  });

  it("refuse what isn't a length, and say so", () => {
    const project = checkEdit(newProject(), surveyEdits.addShot, {});
    expect(refusal(project, surveyEdits.setReading, { id: "s1", text: "sixty" })).toMatch(/sixty/);
    expect(refusal(project, surveyEdits.setReading, { id: "s9", text: "60" })).toMatch(/gone/);
  });

  it("clear a reading by an empty text", () => {
    let project = checkEdit(newProject(), surveyEdits.addShot, { reading: "60" });
    project = checkEdit(project, surveyEdits.setReading, { id: "s1", text: " " });
    expect(project.survey.shots[0]?.reading).toBeNull();
  });

  it("give fresh ids that don't collide with those in use", () => {
    let project = newProject();
    for (let i = 0; i < 3; i++) project = checkEdit(project, surveyEdits.addShot, {});
    project = checkEdit(project, surveyEdits.removeShots, { ids: ["s2"] });
    project = checkEdit(project, surveyEdits.addShot, {});
    expect(project.survey.shots.map(({ id }) => id)).toEqual(["s1", "s3", "s4"]);
  });

  it("refuse to pull a mark or a turning point out from under what hangs on it", () => {
    let project = checkEdit(newProject(), surveyEdits.addMark, { name: "bolt", height: "100" });
    project = checkEdit(project, surveyEdits.addShot, { kind: "mark", of: "m1", reading: "50" });
    project = checkEdit(project, surveyEdits.addShot, { kind: "turning", reading: "60", name: "rock" });
    project = checkEdit(project, surveyEdits.addShot, { kind: "turning", of: "s2", reading: "20" });
    expect(refusal(project, surveyEdits.removeMark, { id: "m1" })).toMatch(/Remove those rows/);
    expect(refusal(project, surveyEdits.removeShots, { ids: ["s2"] })).toMatch(/hangs on/);
    expect(refusal(project, surveyEdits.removeSetup, { id: "u1" })).toMatch(/still has shots/);
    checkEdit(project, surveyEdits.removeShots, { ids: ["s2", "s3"] });
  });
});

describe("building edits", () => {
  it("name A the upper left corner and go round clockwise", () => {
    expect(buildingEdits.rectangleOutline([0, 0], 10, 6)).toEqual([
      [0, 6],
      [10, 6],
      [10, 0],
      [0, 0],
    ]);
  });

  it("resize about corner D and keep the turn", () => {
    const turned = checkEdit(withBuilding(), buildingEdits.turnBuilding, {
      angle: Math.PI / 6,
      about: [10, 20],
    });
    const wider = checkEdit(turned, buildingEdits.resizeBuilding, { width: 12, depth: 5 });
    const outline = wider.building?.outline ?? [];
    expect(outline[3]?.[0]).toBeCloseTo(10, 12);
    expect(outline[2]?.[0]).toBeCloseTo(10 + 12 * Math.cos(Math.PI / 6), 12);
    expect(buildingEdits.wallLength(outline, 0)).toBeCloseTo(12, 12);
    expect(buildingEdits.wallLength(outline, 1)).toBeCloseTo(5, 12);
  });

  it("leave a door where it stands on the ground when its wall is made shorter or longer at one end", () => {
    const door = { wall: 2, offset: 5, width: 3.6 };
    const project = checkEdit(withBuilding(), buildingEdits.addDoor, door);
    // Wall C-D, 9.6 m long, keeps D; C comes 3.6 m nearer or goes 2.4 m out.
    const shorter = checkEdit(project, buildingEdits.resizeBuilding, { width: 6, depth: 7.2 });
    expect(shorter.building?.doors[0]?.offset).toBeCloseTo(5 - 3.6, 9);
    const longer = checkEdit(project, buildingEdits.resizeBuilding, { width: 12, depth: 7.2 });
    expect(longer.building?.doors[0]?.offset).toBeCloseTo(5 + 2.4, 9);
    // The wall as a whole comes out: the door goes with it.
    const deeper = checkEdit(project, buildingEdits.resizeBuilding, { width: 9.6, depth: 9 });
    expect(deeper.building?.doors[0]?.offset).toBeCloseTo(5, 9);
    expect(deeper.building?.doors[0]?.width).toBe(3.6);
  });

  it("slide a door that its wall has no room for there any more, and ask about one that doesn't fit at all", () => {
    const door = { wall: 2, offset: 0.2, width: 3.6 };
    const project = checkEdit(withBuilding(), buildingEdits.addDoor, door);
    const shorter = checkEdit(project, buildingEdits.resizeBuilding, { width: 6, depth: 7.2 });
    expect(shorter.building?.doors[0]).toMatchObject({ width: 3.6, offset: 0 });
    expect(buildingEdits.resizeBuilding.run(project, { width: 3, depth: 7.2 })).toMatchObject({
      ok: false,
      why: expect.stringContaining("wouldn't fit in its wall"),
    });
  });

  it("refuse crossing walls, doubled corners and doors that don't fit", () => {
    const cross = [
      [0, 0],
      [10, 10],
      [10, 0],
      [0, 10],
    ] as const;
    expect(
      refusal(newProject(), buildingEdits.drawBuilding, {
        outline: cross.map(([x, y]): Point => [x, y]),
        floor: 1,
      }),
    ).toMatch(/cross/);
    expect(refusal(withBuilding(), buildingEdits.addDoor, { wall: 1, offset: 5, width: 3 })).toMatch(/wider/);
    expect(refusal(withBuilding(), buildingEdits.addDoor, { wall: 9, offset: 0, width: 1 })).toMatch(
      /no such wall/,
    );
    expect(refusal(newProject(), buildingEdits.setFloor, { floor: 3 })).toMatch(/no building/);
    expect(refusal(withBuilding(), buildingEdits.setFloor, { floor: Number.NaN })).toMatch(/not a number/);
    expect(refusal(withBuilding(), buildingEdits.changeFoundation, { patch: { wallHeight: 0 } })).toMatch(
      /wall height must be more than 0/,
    );
  });

  it("refuse a door over another of the same wall, added, slid or widened; touching ones and other walls are free", () => {
    const one = checkEdit(withBuilding(), buildingEdits.addDoor, { wall: 2, offset: 2, width: 3 });
    for (const [offset, width] of [
      [3, 1],
      [4.9, 2],
      [0, 2.1],
      [1, 6],
    ] as const)
      expect(refusal(one, buildingEdits.addDoor, { wall: 2, offset, width })).toMatch(/overlap.*free piece/);
    const touching = checkEdit(one, buildingEdits.addDoor, { wall: 2, offset: 5, width: 1 });
    const two = checkEdit(touching, buildingEdits.addDoor, { wall: 0, offset: 2, width: 3 });
    expect(refusal(two, buildingEdits.changeDoor, { id: "d2", patch: { offset: 4.5 } })).toMatch(/overlap/);
    expect(refusal(two, buildingEdits.changeDoor, { id: "d1", patch: { width: 3.2 } })).toMatch(/overlap/);
    expect(refusal(two, buildingEdits.changeDoor, { id: "d3", patch: { wall: 2 } })).toMatch(/overlap/);
    const slid = checkEdit(two, buildingEdits.changeDoor, { id: "d2", patch: { offset: 6 } });
    expect(slid.building?.doors[1]).toMatchObject({ offset: 6, width: 1 });
  });

  it("let a door be renamed that a file laid over another", () => {
    let project = checkEdit(withBuilding(), buildingEdits.addDoor, { wall: 2, offset: 2, width: 3 });
    const [door] = project.building?.doors ?? [];
    if (!project.building || !door) throw new Error("no door");
    project = { ...project, building: { ...project.building, doors: [door, { ...door, id: "d2" }] } };
    project = checkEdit(project, buildingEdits.changeDoor, { id: "d2", patch: { name: "side door" } });
    expect(project.building?.doors[1]?.name).toBe("side door");
  });

  it("untie the drive from a door that is taken away", () => {
    let project = checkEdit(withBuilding(), buildingEdits.addDoor, { wall: 2, offset: 3, width: 3 });
    project = checkEdit(project, siteEdits.addDrive, {
      line: [
        [14, 0],
        [14, 20],
      ],
      door: "d1",
    });
    project = checkEdit(project, buildingEdits.removeDoor, { id: "d1" });
    expect(project.grading.drives[0]?.door).toBeNull();
  });
});

describe("site edits", () => {
  it("take lines of two places or more, a lot of three corners or more", () => {
    expect(refusal(newProject(), siteEdits.addDrive, { line: [[0, 0]] })).toMatch(/two places/);
    expect(refusal(newProject(), siteEdits.addSwale, { line: [[0, 0]] })).toMatch(/two places/);
    expect(
      refusal(newProject(), siteEdits.setLotOutline, {
        outline: [
          [0, 0],
          [1, 1],
        ],
      }),
    ).toMatch(/three corners/);
    expect(refusal(newProject(), siteEdits.changeSlopes, { patch: { fill: 0 } })).toMatch(
      /should be more than 0: 3 means 3 : 1/,
    );
  });

  it("change settings one at a time", () => {
    let project = checkEdit(newProject(), siteEdits.renameProject, { name: " Barn " });
    project = checkEdit(project, siteEdits.changeDisplay, { patch: { length: "m", rounding: 3 } });
    project = checkEdit(project, siteEdits.changeRules, { patch: { off: ["frost"] } });
    project = checkEdit(project, siteEdits.changeApron, { patch: { fall: 0.02 } });
    expect(project).toMatchObject({
      name: "Barn",
      display: { length: "m", area: "ft2" },
      grading: { apron: { fall: 0.02, width: 3.048 } },
    });
  });
});
