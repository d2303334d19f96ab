import { describe, expect, it } from "vitest";
import {
  buildingEdits,
  drawingEdits,
  newProject,
  type Project,
  siteEdits,
  visibleProject,
} from "../../src/document";
import { checkEdit } from "../support/checkEdit";

function site(): Project {
  const outline = buildingEdits.rectangleOutline([0, 0], 10, 6);
  let project = checkEdit(newProject(), buildingEdits.drawBuilding, { outline, floor: 30 });
  project = checkEdit(project, siteEdits.addFeature, { kind: "tree", points: [[20, 20]] });
  project = checkEdit(project, siteEdits.addFeature, { kind: "well", points: [[30, 20]] });
  return checkEdit(project, drawingEdits.addNote, { at: [1, 1], text: "spring" });
}

describe("what has too few points to be drawn", () => {
  it("is left out of the drawing, and stays in the document", () => {
    const drawn = checkEdit(site(), siteEdits.addSwale, {
      line: [
        [0, 20],
        [9, 22],
      ],
    });
    const [swale] = drawn.grading.swales;
    if (!swale) throw new Error("should be drawn");
    const swales = [swale, { ...swale, id: "w9", line: [[3, 3] as [number, number]] }];
    const project = { ...drawn, grading: { ...drawn.grading, swales } };
    expect(visibleProject(project).grading.swales).toEqual([swale]);
    expect(visibleProject(project)).toBe(visibleProject(project));
    expect(visibleProject(drawn)).toBe(drawn);
  });
});

describe("hidden things", () => {
  it("leave a project that hides nothing as it is", () => {
    const project = site();
    expect(visibleProject(project)).toBe(project);
  });

  it("are left out, the others stay, and the document keeps them all", () => {
    const project = checkEdit(site(), drawingEdits.hideThings, {
      things: [{ kind: "feature", id: "f1" }, { kind: "note", id: "n1" }, { kind: "building" }],
      hidden: true,
    });
    const seen = visibleProject(project);
    expect(seen.lot.features.map(({ id }) => id)).toEqual(["f2"]);
    expect(seen.drawing.notes).toEqual([]);
    expect(seen.building).toBeNull();
    expect(project.lot.features).toHaveLength(2);
  });

  it("leave lists that didn't change the same objects, so that nothing else is drawn again", () => {
    const hidden = checkEdit(site(), drawingEdits.hideThings, {
      things: [{ kind: "feature", id: "f1" }],
      hidden: true,
    });
    const renamed = checkEdit(hidden, siteEdits.renameProject, { name: "shed" });
    const [a, b] = [visibleProject(hidden), visibleProject(renamed)];
    expect(b).not.toBe(a);
    expect(b.lot.features).toBe(a.lot.features);
    expect(b.drawing.notes).toBe(hidden.drawing.notes);
  });
});
