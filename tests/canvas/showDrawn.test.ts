/** What is drawn by figures may reach out of the plan that is seen: the view goes with it, and what was begun stays in sight. */
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { panPlan, placesDrawnBy, planView, showDrawn, showGrowth } from "../../src/canvas/view/planView";
import { slotsLieOver } from "../../src/canvas/view/slots";
import { isSeen, type XY } from "../../src/canvas/view/view";
import { newProject, type Project, siteEdits } from "../../src/document";
import { setTool, showProject } from "../../src/store/actions";

const view = { centre: [0, 0], scale: 12, angle: 0, width: 800, height: 600 } as const;
const seen = (at: XY) => isSeen(planView.getState().view, at, 20);

function lotOf(outline: readonly XY[]): Project {
  const edit = siteEdits.setLotOutline.run(newProject(), { outline: outline.map(([x, y]) => [x, y]) });
  if (!edit.ok) throw new Error(edit.why);
  return edit.project;
}

describe("a line drawn by figures that reaches out of sight", () => {
  const start: XY = [-20, -10];
  const places: XY[] = [start];

  beforeEach(() => {
    places.splice(0, places.length, start);
    placesDrawnBy(() => places);
    slotsLieOver(null);
    showProject(newProject(), { name: null, token: null });
    setTool("lot");
    planView.setState({ view, moving: false });
  });
  afterEach(() => {
    placesDrawnBy(() => []);
    setTool("select");
  });

  const draw = (at: XY) => {
    places.push(at);
    showDrawn(at);
  };

  it("stays as it is while the next place is in sight", () => {
    draw([10, -10]);
    expect(planView.getState().view).toBe(view);
  });

  it("is shown from its start to its last place, zoomed out as far as that takes", () => {
    for (const at of [
      [80, -10],
      [80, 140],
      [-90, 140],
    ] as const) {
      draw(at);
      expect(places.every(seen), `at ${at}`).toBe(true);
    }
    expect(planView.getState().view.scale).toBeLessThan(12);
  });

  it("only moves where it has room as it is: figures never zoom in", () => {
    places.splice(0, 1, [10, -10]);
    draw([34, -10]);
    expect(places.every(seen)).toBe(true);
    expect(planView.getState().view.scale).toBeCloseTo(12, 9);
  });

  it("is fitted with the plan once it is on it; a view that a hand has moved since stays", () => {
    const outline: XY[] = [start, [80, -10], [80, 60]];
    draw([80, -10]);
    draw([80, 60]);
    const lot = lotOf(outline);
    showProject(lot, { name: null, token: null });
    setTool("lot");
    showGrowth(newProject(), lot);
    expect(outline.every(seen)).toBe(true);

    draw([200, 60]);
    panPlan(5, 0);
    const moved = planView.getState().view;
    showGrowth(lot, lot);
    expect(planView.getState().view).toBe(moved);
  });
});
