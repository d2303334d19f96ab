import { describe, expect, it } from "vitest";
import {
  buildingEdits,
  drawingEdits,
  gradingEdits,
  newProject,
  type Project,
  siteEdits,
  surveyEdits,
} from "../../src/document";
import { checkEdit } from "../support/checkEdit";

/** A 10 by 6 building at the origin, a shot on its corner B (10, 6), a door in the south wall with a drive to it. */
function site(): Project {
  const outline = buildingEdits.rectangleOutline([0, 0], 10, 6);
  let project = checkEdit(newProject(), buildingEdits.drawBuilding, { outline, floor: 30 });
  project = checkEdit(project, surveyEdits.addShot, { reading: "60", place: { kind: "corner", corner: 1 } });
  project = checkEdit(project, buildingEdits.addDoor, { wall: 2, offset: 3, width: 4 });
  return checkEdit(project, siteEdits.addDrive, {
    line: [
      [5, -20],
      [5, 0],
    ],
    door: "d1",
  });
}

const shotPlace = (project: Project) => project.survey.shots[0]?.place;
const driveId = (project: Project) => project.grading.drives[0]?.id ?? "";
const driveEnd = (project: Project) => project.grading.drives[0]?.line.at(-1);

describe("when the building changes", () => {
  it("the ground read at a corner stays where it was read, the drive's end goes along", () => {
    const moved = checkEdit(site(), buildingEdits.moveBuilding, { dx: 2, dy: 1 });
    expect(shotPlace(moved)).toEqual({ kind: "at", x: 10, y: 6 });
    expect(driveEnd(moved)).toEqual([7, 1]);
  });

  it("a grade break slides with the run, and back with it, so that none is left against the landing", () => {
    const broken = checkEdit(site(), gradingEdits.addGradeBreak, { id: driveId(site()), at: 13, height: 29 });
    const landing = broken.grading.drives[0]?.landing.length ?? 0;
    const places = (project: Project) => project.grading.drives[0]?.breaks.map(({ at }) => at);
    // 20 m of drive become 12: the run keeps its shares.
    const nearer = checkEdit(broken, buildingEdits.moveBuilding, { dx: 0, dy: -8 });
    expect(places(nearer)).toEqual([expect.closeTo((13 * (12 - landing)) / (20 - landing), 9)]);
    const back = checkEdit(nearer, buildingEdits.moveBuilding, { dx: 0, dy: 8 });
    expect(places(back)).toEqual([expect.closeTo(13, 9)]);
  });

  it("a shot on a corner that didn't move stays tied to it", () => {
    // Resized about corner D: A goes up, B and C go right, D stays.
    let project = checkEdit(site(), surveyEdits.addShot, {
      reading: "61",
      place: { kind: "corner", corner: 3 },
    });
    project = checkEdit(project, buildingEdits.resizeBuilding, { width: 12, depth: 7 });
    expect(project.survey.shots.map(({ place }) => place)).toEqual([
      { kind: "at", x: 10, y: 6 },
      { kind: "corner", corner: 3 },
    ]);
  });

  it("a removed building leaves its shots on the ground", () => {
    expect(shotPlace(checkEdit(site(), buildingEdits.removeBuilding, {}))).toEqual({
      kind: "at",
      x: 10,
      y: 6,
    });
  });

  it("a door that is slid takes the drive's end along: wall C-D runs west, so 1 m more of offset is 1 m west", () => {
    const slid = checkEdit(site(), buildingEdits.changeDoor, { id: "d1", patch: { offset: 4 } });
    expect(driveEnd(slid)).toEqual([4, 0]);
    expect(shotPlace(slid)).toEqual({ kind: "corner", corner: 1 });
  });

  it("a drive that is given a door ends in its middle", () => {
    const loose = checkEdit(site(), siteEdits.changeDrive, {
      id: "v1",
      patch: {
        door: null,
        line: [
          [5, -20],
          [9, -4],
        ],
      },
    });
    const door = loose.building?.doors[0]?.id ?? "";
    expect(driveEnd(checkEdit(loose, siteEdits.changeDrive, { id: "v1", patch: { door } }))).toEqual([5, 0]);
  });

  it("a drive that isn't tied to a door stays", () => {
    const loose = checkEdit(site(), siteEdits.changeDrive, { id: "v1", patch: { door: null } });
    expect(driveEnd(checkEdit(loose, buildingEdits.moveBuilding, { dx: 2, dy: 1 }))).toEqual([5, 0]);
  });
});

describe("a dimension from a corner", () => {
  const measured = () =>
    checkEdit(site(), drawingEdits.addDimension, {
      from: { kind: "corner", corner: 3 },
      to: { kind: "at", x: -5, y: 0 },
    });
  const ends = (project: Project) => {
    const [dimension] = project.drawing.dimensions;
    return dimension && [dimension.from, dimension.to];
  };

  it("stays on the corner while the building moves", () => {
    const moved = checkEdit(measured(), buildingEdits.moveBuilding, { dx: 2, dy: 1 });
    expect(ends(moved)?.[0]).toEqual({ kind: "corner", corner: 3 });
  });

  it("stays where the corner was when the corner or the building is gone", () => {
    const gone = checkEdit(measured(), buildingEdits.removeBuilding, {});
    expect(ends(gone)).toEqual([
      { kind: "at", x: 0, y: 0 },
      { kind: "at", x: -5, y: 0 },
    ]);
    const cut = checkEdit(measured(), buildingEdits.setOutline, {
      outline: [
        [0, 6],
        [10, 6],
        [10, 0],
      ],
    });
    expect(ends(cut)?.[0]).toEqual({ kind: "at", x: 0, y: 0 });
  });
});

describe("what a change of the building leaves alone", () => {
  it("stays the same object, so that nothing is reckoned anew from it", () => {
    const before = checkEdit(site(), surveyEdits.changeShot, {
      id: site().survey.shots[0]?.id ?? "",
      patch: { place: { kind: "at", x: 1, y: 1 } },
    });
    const moved = checkEdit(before, buildingEdits.moveBuilding, { dx: 2, dy: 1 });
    expect(moved.grading.drives).not.toBe(before.grading.drives);
    expect(moved.survey).toBe(before.survey);
    expect(moved.drawing).toBe(before.drawing);
  });
});
