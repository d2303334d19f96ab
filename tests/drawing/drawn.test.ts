/** Notes, a person's dimensions, section lines, windows and features as marks: where they lie and what they say. */
import { describe, expect, it } from "vitest";
import {
  buildingEdits,
  drawingEdits,
  newProject,
  type Project,
  siteEdits,
  windowEdits,
} from "../../src/document";
import { type DrawingMark, drawPlan, type MarkLayer } from "../../src/drawing";
import { textBox } from "../../src/drawing/context";
import { boxesOverlap } from "../../src/drawing/labels";
import { noteLines, noteTexts, widestNote } from "../../src/drawing/notes";
import { textWidth } from "../../src/drawing/text-width";
import { createSolver } from "../../src/solve/pipeline";
import { checkEdit } from "../support/checkEdit";

const metresPerMm = 0.1;
type Id = MarkLayer["id"];

/** A 10 by 6 building at the origin: A (0,6), B (10,6), C (10,0), D (0,0); lengths in metres. */
function site(): Project {
  const blank = newProject();
  const metric: Project = { ...blank, display: { ...blank.display, length: "m", rounding: 2 } };
  const outline = buildingEdits.rectangleOutline([0, 0], 10, 6);
  return checkEdit(metric, buildingEdits.drawBuilding, { outline, floor: 30 });
}

function layer(project: Project, id: Id, medium: "screen" | "paper" = "screen"): readonly DrawingMark[] {
  const layers = drawPlan(project, createSolver().solve(project), { metresPerMm, medium });
  return layers.find((one) => one.id === id)?.marks ?? [];
}

const textsOf = (marks: readonly DrawingMark[]) => marks.flatMap((m) => (m.kind === "text" ? [m.text] : []));
const linesOf = (marks: readonly DrawingMark[], style: string) =>
  marks.flatMap((m) => (m.kind === "line" && m.style === style ? [Array.from(m.points)] : []));

describe("a note", () => {
  it("breaks its words where the person did, and where a line gets too long", () => {
    const words = "the spring behind the shed runs from March to June and then falls dry for the year";
    const lines = noteLines(`look here\n${words}`);
    expect(lines[0]).toBe("look here");
    expect(lines.slice(1).join(" ")).toBe(words);
    expect(lines.length).toBeGreaterThan(2);
    for (const line of lines) expect(textWidth(line, 3)).toBeLessThanOrEqual(widestNote);
  });

  it("stands on the side away from what it points to, as the plan is turned", () => {
    const at: [number, number] = [0, 0];
    const side = (pointsTo: [number, number] | null, turn = 0) => {
      const project = { ...site(), drawing: { ...site().drawing, turn } };
      return noteTexts(project, { at, text: "a", pointsTo })[0]?.anchor;
    };
    expect(side(null)).toBe("start");
    expect(side([5, 1])).toBe("end");
    expect(side([-5, 1])).toBe("start");
    // Half a turn: what lies east is seen on the left.
    expect(side([5, 1], Math.PI)).toBe("start");
  });

  it("is drawn with its leader, unless it is hidden", () => {
    const noted = checkEdit(site(), drawingEdits.addNote, {
      at: [20, 9],
      text: "old well",
      pointsTo: [15, 5],
    });
    const marks = layer(noted, "notes");
    expect(textsOf(marks)).toEqual(["old well"]);
    expect(linesOf(marks, "note-leader")).toEqual([[20, 9, 15, 5]]);
    const hidden = checkEdit(noted, drawingEdits.hideThings, {
      things: [{ kind: "note", id: "n1" }],
      hidden: true,
    });
    expect(layer(hidden, "notes")).toEqual([]);
  });
});

describe("a person's dimension", () => {
  const measured = (offset: number, project = site()) =>
    checkEdit(project, drawingEdits.addDimension, {
      from: { kind: "corner", corner: 3 },
      to: { kind: "at", x: 8, y: 0 },
      offset,
    });

  it("stands off to the left of its way and tells the length between its places", () => {
    const marks = layer(measured(1.5), "user-dimensions");
    // From D (0, 0) east to (8, 0): left is north.
    expect(linesOf(marks, "dimension")).toContainEqual([0, 1.5, 8, 1.5]);
    expect(textsOf(marks)).toEqual(["8.00 m"]);
    expect(linesOf(layer(measured(-2), "user-dimensions"), "dimension")).toContainEqual([0, -2, 8, -2]);
  });

  it("drops the unit on metric paper, and follows its corner", () => {
    expect(textsOf(layer(measured(1.5), "user-dimensions", "paper"))).toEqual(["8.00"]);
    const moved = checkEdit(measured(1.5), buildingEdits.moveBuilding, { dx: -2, dy: 0 });
    expect(textsOf(layer(moved, "user-dimensions"))).toEqual(["10.00 m"]);
  });

  it("has no extension lines where it stands on its places", () => {
    expect(linesOf(layer(measured(0), "user-dimensions"), "dimension")).toHaveLength(1);
    expect(linesOf(layer(measured(1.5), "user-dimensions"), "dimension")).toHaveLength(3);
  });
});

describe("a section line", () => {
  it("has its letter and an arrow at both ends; one looks to the left of its way", () => {
    const cut = checkEdit(site(), drawingEdits.addSection, {
      line: [
        [-5, 3],
        [15, 3],
      ],
    });
    const marks = layer(cut, "sections");
    expect(textsOf(marks)).toEqual(["P", "P"]);
    const arrows = marks.filter((mark) => mark.kind === "symbol");
    expect(arrows).toHaveLength(2);
    for (const mark of arrows) expect(mark.kind === "symbol" && mark.angle).toBeCloseTo(Math.PI / 2, 12);
  });
});

describe("a window", () => {
  it("takes its piece of the wall and says its width inside, where there is room", () => {
    const lit = checkEdit(site(), windowEdits.addWindow, { wall: 0, offset: 2, width: 1.2 });
    const marks = layer(lit, "windows");
    const [line] = linesOf(marks, "window");
    for (const [i, value] of [2, 6, 3.2, 6].entries()) expect(line?.[i]).toBeCloseTo(value, 9);
  });
});

describe("features", () => {
  const keepClear = (project: Project) => linesOf(layer(project, "features"), "keep-clear");
  const feature = (kind: "well" | "buried-line" | "septic", points: [number, number][]) => {
    const project = checkEdit(site(), siteEdits.addFeature, { kind, points });
    return checkEdit(project, siteEdits.changeFeature, { id: "f1", patch: { keepClear: 3 } });
  };
  const reach = (line: number[], to: (x: number, y: number) => number) =>
    line.flatMap((x, i) => (i % 2 === 0 ? [to(x, line[i + 1] as number)] : []));

  it("show what is kept clear round a place", () => {
    const [ring] = keepClear(feature("well", [[20, 20]]));
    for (const d of reach(ring ?? [], (x, y) => Math.hypot(x - 20, y - 20))) expect(d).toBeCloseTo(3, 9);
  });

  it("along both sides of a line", () => {
    const lines = keepClear(
      feature("buried-line", [
        [20, 0],
        [20, 30],
      ]),
    );
    expect(lines.map((line) => line[0]).sort()).toEqual([17, 23]);
  });

  it("and outside an area, never inside it, whichever way it was drawn", () => {
    const corners: [number, number][] = [
      [20, 0],
      [30, 0],
      [30, 8],
      [20, 8],
    ];
    for (const ring of [corners, [...corners].reverse()]) {
      const [line] = keepClear(feature("septic", ring));
      const inside = reach(line ?? [], (x, y) => Math.max(20 - x, x - 30, 0 - y, y - 8));
      expect(Math.min(...inside)).toBeGreaterThan(0);
    }
  });
});

describe("what a person put on the plan", () => {
  it("keeps other texts off its own", () => {
    let project = site();
    for (const [text, at] of [
      ["spring", [5, 3]],
      ["stone wall to stay as it is", [11, 5]],
    ] as const) {
      project = checkEdit(project, drawingEdits.addNote, { text, at: [at[0], at[1]] });
    }
    project = checkEdit(project, drawingEdits.addDimension, {
      from: { kind: "corner", corner: 0 },
      to: { kind: "corner", corner: 1 },
      offset: 1,
    });
    const layers = drawPlan(project, createSolver().solve(project), { metresPerMm });
    const boxes = layers
      .flatMap(({ marks }) => marks as readonly DrawingMark[])
      .flatMap((mark) => (mark.kind === "text" ? [{ mark, box: textBox(mark, metresPerMm, -0.2) }] : []));
    expect(boxes.length).toBeGreaterThan(5);
    for (const [i, one] of boxes.entries()) {
      for (const other of boxes.slice(i + 1)) {
        const met = boxesOverlap(one.box, other.box) ? `${one.mark.text} on ${other.mark.text}` : "";
        expect(met).toBe("");
      }
    }
  });
});
