import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { isEmpty, planNote } from "../../src/canvas/overlays/planNote";
import { barRoom, barRoomOn, scaleBarLength } from "../../src/canvas/overlays/scaleBar";
import { createPlanScene } from "../../src/canvas/scene/planScene";
import { wheelReader } from "../../src/canvas/stage/wheel";
import { buildingPlaces, planBounds } from "../../src/canvas/view/planBounds";
import { scaleLimits } from "../../src/canvas/view/view";
import {
  buildingEdits,
  newProject,
  openProject,
  type Project,
  pitEdits,
  surveyEdits,
} from "../../src/document";
import { textBox } from "../../src/drawing/context";
import { boxesOverlap } from "../../src/drawing/labels";
import type { TextMark } from "../../src/drawing/marks";
import { boundsOf } from "../../src/geometry";
import { createSolver } from "../../src/solve/pipeline";
import { FOOT } from "../../src/units";
import { checkEdit } from "../support/checkEdit";

function studio(): Project {
  const opened = openProject(readFileSync("demo-projects/pottery-studio.drysill.json", "utf8"));
  if (!opened.ok) throw new Error(JSON.stringify(opened.problems));
  return opened.project;
}

describe("the wheel", () => {
  const turn = { deltaX: 0, deltaY: 0, deltaMode: 0, ctrlKey: false, timeStamp: 0 };

  it("zooms in for a notch of a mouse away from the person, about the same each notch", () => {
    const act = wheelReader()({ ...turn, deltaY: -120 });
    expect(act).toEqual({ kind: "zoom", factor: Math.exp(0.216) });
  });

  it("pans for two fingers, and goes on panning when they grow fast", () => {
    const read = wheelReader();
    expect(read({ ...turn, deltaY: 3, timeStamp: 1000 })).toEqual({ kind: "pan", dx: -0, dy: -3 });
    expect(read({ ...turn, deltaY: 180, timeStamp: 1100 }).kind).toBe("pan");
    expect(read({ ...turn, deltaY: 180, timeStamp: 2000 }).kind).toBe("zoom");
  });

  it("zooms for a pinch", () => {
    const act = wheelReader()({ ...turn, deltaY: -2.5, ctrlKey: true });
    expect(act.kind === "zoom" && act.factor).toBeCloseTo(Math.exp(0.025), 12);
  });

  it("takes a wheel that counts lines for a mouse", () => {
    expect(wheelReader()({ ...turn, deltaY: 3, deltaMode: 1 }).kind).toBe("zoom");
  });
});

describe("the scale bar", () => {
  it("is the largest round length with room: 130 px at 25 px a metre hold 17 ft, so 10", () => {
    const bar = scaleBarLength("ft-in", 25, 130);
    expect(bar.text).toBe("10′");
    expect(bar.px).toBeCloseTo(10 * FOOT * 25, 9);
    expect(scaleBarLength("m", 25, 130)).toMatchObject({ m: 5, text: "5 m" });
    expect(scaleBarLength("mm", 400, 130)).toMatchObject({ m: 0.2, text: "0.2 m" });
  });

  it("never grows out of its room, nor to nothing, however far the plan is zoomed", () => {
    const { least, most } = scaleLimits;
    for (const notation of ["ft-in", "m"] as const)
      for (let scale = least; scale <= most; scale *= 1.1) {
        const { px } = scaleBarLength(notation, scale);
        expect(px).toBeLessThanOrEqual(barRoom);
        expect(px).toBeGreaterThan(25);
      }
    expect([400, 900].map(barRoomOn)).toEqual([65, 130]);
    expect(scaleBarLength("ft-in", 1600)).toMatchObject({ text: "3″" });
    expect(scaleBarLength("cm", 1600)).toMatchObject({ text: "5 cm" });
  });
});

describe("what the plan still needs", () => {
  const solver = createSolver();
  const note = (project: Project) => planNote(project, solver.solve(project));

  it("nothing at all is an empty plan", () => {
    expect(isEmpty(newProject())).toBe(true);
    expect(note(newProject())).toBeNull();
    expect(isEmpty(studio())).toBe(false);
  });

  it("counts the shots that are missing, then asks for the building", () => {
    let project = checkEdit(newProject(), surveyEdits.addMark, { name: "bolt", height: "100" });
    project = checkEdit(project, surveyEdits.addShot, { kind: "mark", of: "m1", reading: "40" });
    project = checkEdit(project, surveyEdits.addShot, { reading: "50", place: { kind: "at", x: 0, y: 0 } });
    expect(note(project)).toBe("2 more placed shots with readings show the ground.");
    project = checkEdit(project, surveyEdits.addShot, { reading: "51", place: { kind: "at", x: 10, y: 0 } });
    expect(note(project)).toBe("1 more placed shot with a reading shows the ground.");
    const inLine = checkEdit(project, surveyEdits.addShot, {
      reading: "52",
      place: { kind: "at", x: 20, y: 0 },
    });
    expect(note(inLine)).toMatch(/in one line/);
    project = checkEdit(project, surveyEdits.addShot, { reading: "52", place: { kind: "at", x: 0, y: 9 } });
    expect(note(project)).toBe("Draw the building to see cut and fill.");
    expect(note(studio())).toBeNull();
  });
});

describe("what fits into the view", () => {
  it("is everything that was placed, or the building with its apron", () => {
    const outline = buildingEdits.rectangleOutline([0, 0], 10, 6);
    let project = checkEdit(newProject(), buildingEdits.drawBuilding, { outline, floor: 30 });
    project = checkEdit(project, surveyEdits.addShot, { place: { kind: "at", x: 30, y: -7 } });
    expect(planBounds(project)).toEqual({ minX: 0, minY: -7, maxX: 30, maxY: 6 });
    const pit = checkEdit(project, pitEdits.addPit, { place: { kind: "at", x: 41, y: 2 } });
    expect(planBounds(pit)).toMatchObject({ maxX: 41, maxY: 6 });
    const bent = checkEdit(project, surveyEdits.addBreakline, {
      points: [
        [0, 0, null],
        [3, 12, null],
      ],
    });
    expect(planBounds(bent)).toMatchObject({ maxX: 30, maxY: 12 });
  });

  it("fits the building, three quarters of what is shown with it each way, whatever its apron; turned, as it lies", () => {
    const wide = { ...studio(), building: null };
    expect(buildingPlaces(wide, 0)).toBeNull();
    const outline = buildingEdits.rectangleOutline([0, 0], 12, 6);
    const project = checkEdit(newProject(), buildingEdits.drawBuilding, { outline, floor: 30 });
    const upright = boundsOf((buildingPlaces(project, 0) ?? []).map(([x, y]): [number, number] => [x, y]));
    expect(upright).toEqual({ minX: -2, minY: -1, maxX: 14, maxY: 7 });
    // A square on its corner is as wide as its diagonal.
    const square = buildingEdits.rectangleOutline([0, 0], 6, 6);
    const turn = Math.PI / 4;
    const turned = checkEdit(newProject(), buildingEdits.drawBuilding, { outline: square, floor: 30 });
    const seen = (buildingPlaces(turned, turn) ?? []).map(([x, y]): [number, number] => [
      x * Math.cos(turn) - y * Math.sin(turn),
      x * Math.sin(turn) + y * Math.cos(turn),
    ]);
    const { minX, maxX, minY, maxY } = boundsOf(seen);
    expect(maxX - minX).toBeCloseTo((6 * Math.SQRT2) / 0.75, 9);
    expect(maxY - minY).toBeCloseTo((6 * Math.SQRT2) / 0.75, 9);
    expect((minX + maxX) / 2).toBeCloseTo(0, 9);
    expect((minY + maxY) / 2).toBeCloseTo(3 * Math.SQRT2, 9);
  });
});

describe("the scene", () => {
  const solver = createSolver();
  const hidden = new Set<never>();
  const project = studio();
  const results = solver.solve(project);
  const input = { project, results, hidden, metresPerMm: 0.2, turn: 0, labelsRest: false };

  it("draws what belongs to a step in that step alone", () => {
    const scene = createPlanScene();
    const drawn = () => scene.layers("design").map(({ id }) => id);
    scene.update({ ...input, step: "floor" });
    expect(drawn()).not.toContain("squaring");
    expect(scene.update({ ...input, step: "building" })).toContain("design");
    expect(drawn()).toContain("squaring");
  });

  it("draws everything once, and then nothing while nothing changes", () => {
    const scene = createPlanScene();
    expect([...scene.update(input)].sort()).toEqual(["design", "ground", "shots"]);
    expect(scene.update(input).size).toBe(0);
    expect(scene.layers("design").map(({ id }) => id)).toContain("building");
    expect(scene.layers("shots").map(({ id }) => id)).toEqual([
      "breaklines",
      "pits",
      "shots",
      "marks",
      "notes",
    ]);
  });

  it("writes nothing under the tools of a fitted plan, and leaves texts where they are once the plan is pushed aside", () => {
    const scene = createPlanScene();
    const texts = () =>
      scene
        .layers("design")
        .flatMap(({ marks }) => marks.filter((mark): mark is TextMark => mark.kind === "text"));
    scene.update(input);
    const box = (mark: TextMark) => textBox(mark, input.metresPerMm, 0);
    const before = texts().find(({ text }) => text.startsWith("steepest"));
    if (!before) throw new Error("the demo's steepest place is named");
    const tools = { ...box(before), width: box(before).width + 8, height: 60, angle: 0 };
    expect(texts().some((mark) => boxesOverlap(box(mark), tools))).toBe(true);
    expect(scene.update({ ...input, covered: [tools] }).has("design")).toBe(true);
    const anew = texts().filter(({ style }) => style === before.style);
    expect(anew).toHaveLength(1);
    expect(anew.filter((mark) => boxesOverlap(box(mark), tools))).toEqual([]);
    expect(scene.update(input).size).toBe(0);
  });

  it("draws only the design while the floor is under the hand: ground and shots stay the same objects", () => {
    const scene = createPlanScene();
    scene.update(input);
    const before = { ground: scene.layers("ground"), shots: scene.layers("shots") };
    const floor = (project.building?.floor ?? 0) + 0.05;
    const dragged = solver.solve(project, { floor, detail: "drag" });
    expect([...scene.update({ ...input, results: dragged, labelsRest: true })]).toEqual(["design"]);
    expect(scene.layers("ground")).toEqual(before.ground);
    expect(scene.layers("shots")[0]).toBe(before.shots[0]);
    const corners = scene.layers("design").find(({ id }) => id === "corners");
    const values = corners?.marks.flatMap((mark) => (mark.kind === "text" ? [mark.text] : []));
    // 11¾″ out at the demo's floor; 0.05 m is 1 31⁄32″ more, to the eighth 1′ 1¾″.
    expect(values).toContain("1′ 1¾″ out");
  });

  it("leaves the shots as they are while the building is under the hand, and places them anew when it lets go", () => {
    const scene = createPlanScene();
    // The first move leaves the shots that were tied to its corners on the ground.
    const loose = checkEdit(project, buildingEdits.moveBuilding, { dx: 1, dy: 0 });
    scene.update({ ...input, project: loose, results: solver.solve(loose) });
    const shots = () => scene.layers("shots").find(({ id }) => id === "shots");
    const before = shots();
    const moved = checkEdit(loose, buildingEdits.moveBuilding, { dx: 1.5, dy: 0 });
    const results = solver.solve(moved);
    scene.update({ ...input, project: moved, results, labelsRest: true });
    expect(shots()).toBe(before);
    expect(scene.update({ ...input, project: moved, results })).toContain("shots");
    expect(shots()).not.toBe(before);
  });

  it("leaves out what is switched off", () => {
    const scene = createPlanScene();
    scene.update({ ...input, hidden: new Set(["shots", "lot"] as const) });
    expect(scene.layers("shots").map(({ id }) => id)).toEqual(["breaklines", "marks", "notes"]);
    expect(scene.layers("design").map(({ id }) => id)).not.toContain("lot");
  });

  it("places labels anew at another scale", () => {
    const scene = createPlanScene();
    scene.update(input);
    expect(scene.update({ ...input, metresPerMm: 0.1 }).size).toBe(3);
  });
});
