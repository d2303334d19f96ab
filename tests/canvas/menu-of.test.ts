/** Whom the menu at a place of the plan is about; ten pixels a metre, the origin in the middle. */
import { describe, expect, it } from "vitest";
import { meantByMenu } from "../../src/canvas/select/menuOf";
import { toScreen } from "../../src/canvas/view/view";
import { type Point, type Project, siteEdits } from "../../src/document";
import type { Selected } from "../../src/store/state";
import { checkEdit } from "../support/checkEdit";
import { metricProject, view } from "./support/hand";

const trees: readonly Point[] = [
  [0, 0],
  [10, 0],
  [10, 8],
];

function grove(): Project {
  return trees.reduce(
    (project, at) => checkEdit(project, siteEdits.addFeature, { kind: "tree", points: [at] }),
    metricProject(),
  );
}

const project = grove();
const all = project.lot.features.map(({ id }): Selected => ({ kind: "feature", id }));
const [first, second, third] = all as [Selected, Selected, Selected];
const meant = (selection: readonly Selected[], at: Point, under: Selected | null, turn = 0) => {
  const turned = { ...view, angle: turn };
  return meantByMenu(project, selection, turned, toScreen(turned, at), under);
};

describe("the menu at a place", () => {
  it("is that of all that is selected, on one of it and on the ground between it", () => {
    expect(meant(all, [10, 0], second)).toEqual({ of: "selection", selection: all });
    expect(meant(all, [3, 5], null)).toEqual({ of: "selection", selection: all });
    expect(meant(all, [3, 5], { kind: "underlay", id: "u1" })).toEqual({ of: "selection", selection: all });
  });

  it("is the plan's beside the selection, which stays", () => {
    expect(meant(all, [3, 9], null)).toEqual({ of: "plan", selection: all });
    expect(meant([first], [0.5, 0], null)).toEqual({ of: "plan", selection: [first] });
    expect(meant([], [3, 5], null)).toEqual({ of: "plan", selection: [] });
  });

  it("is that of another thing that is pressed, between them too", () => {
    expect(meant([first, third], [10, 0], second)).toEqual({ of: "selection", selection: [second] });
  });

  it("takes the box as it stands on a turned plan", () => {
    // Turned by 45° the box of the three goes from 0 to 7.07 across and from 0 to 12.73 up; this place is at 0.57, 12.16.
    expect(meant(all, [9, 8.2], null, Math.PI / 4).of).toBe("selection");
    expect(meant(all, [9, 8.2], null).of).toBe("plan");
  });
});
