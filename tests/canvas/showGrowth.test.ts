import { beforeEach, describe, expect, it } from "vitest";
import { fitPlan, panPlan, planView, resizePlan, showGrowth, zoomPlan } from "../../src/canvas/view/planView";
import { isSeen, toScreen } from "../../src/canvas/view/view";
import { newProject, type Point, type Project, present, siteEdits } from "../../src/document";
import { cancelFloorDrag, setTool, showProject } from "../../src/store/actions";
import { appStore } from "../../src/store/store";

function withLot(side: number): Project {
  const outline: Point[] = [
    [0, 0],
    [side, 0],
    [side, side],
    [0, side],
  ];
  const edit = siteEdits.setLotOutline.run(newProject(), { outline });
  if (!edit.ok) throw new Error(edit.why);
  return edit.project;
}

const seen = (at: Point) => isSeen(planView.getState().view, at, 0);

describe("an edit that makes the plan larger", () => {
  beforeEach(() => resizePlan(800, 600, [0, 0]));

  it("brings what was typed out of sight into the picture", () => {
    const large = withLot(500);
    showProject(large, { name: null, token: null });
    expect(seen([500, 500])).toBe(false);
    showGrowth(withLot(20), large);
    expect(seen([0, 0]) && seen([500, 500])).toBe(true);
  });

  it("leaves the view alone when nothing lies beyond it, or nothing grew", () => {
    const large = withLot(500);
    showProject(large, { name: null, token: null });
    showGrowth(withLot(20), large);
    const whole = planView.getState().view;
    showGrowth(withLot(490), large);
    expect(planView.getState().view).toBe(whole);

    zoomPlan(8, [400, 300]);
    const near = planView.getState().view;
    showGrowth(large, withLot(400));
    expect(planView.getState().view).toBe(near);
  });
});

describe("the plan's part of the window gets another size", () => {
  beforeEach(() => {
    resizePlan(800, 600, [0, 0]);
    showProject(withLot(40), { name: null, token: null });
    fitPlan();
  });

  it("fits the plan again while nobody has moved the view, lower and taller", () => {
    const before = planView.getState().view;
    resizePlan(800, 300, [0, 0]);
    expect(seen([0, 0]) && seen([40, 40])).toBe(true);
    expect(planView.getState().view.scale).toBeLessThan(before.scale);
    resizePlan(800, 600, [0, 0]);
    expect(planView.getState().view).toEqual(before);
  });

  it("keeps the middle and the scale of a view that a hand has moved", () => {
    zoomPlan(4, [400, 300]);
    panPlan(30, 20);
    const { centre, scale } = planView.getState().view;
    resizePlan(800, 300, [0, 0]);
    expect(planView.getState().view).toMatchObject({ centre, scale, height: 300 });
  });

  it("holds the drawing where it is on the screen while the floor is under the hand", () => {
    const place = () => {
      const { view } = planView.getState();
      // Counted from the lower rim, which doesn't move when the sentence above the plan grows.
      return toScreen(view, [40, 40])[1] - view.height;
    };
    const before = place();
    const { scale } = planView.getState().view;
    appStore.setState({ floorDrag: 30 });
    resizePlan(800, 580, [0, 20]);
    expect(planView.getState().view.scale).toBe(scale);
    expect(place()).toBeCloseTo(before, 9);
    cancelFloorDrag();
    resizePlan(800, 600, [0, 0]);
    expect(planView.getState().view.scale).toBe(scale);
    expect(place()).toBeCloseTo(before, 9);
  });

  it("holds the drawing too while a picture is being laid, whichever rim moved", () => {
    const place = (top: number) => toScreen(planView.getState().view, [40, 40])[1] + top;
    const before = place(0);
    setTool("picture-points");
    appStore.setState({ preview: present(appStore.getState().history) });
    // The dock below opens, then the sentence above grows.
    resizePlan(800, 525, [0, 0]);
    expect(place(0)).toBeCloseTo(before, 9);
    resizePlan(800, 505, [0, 20]);
    expect(place(20)).toBeCloseTo(before, 9);
    appStore.setState({ preview: null });
    setTool("select");
  });
});
