/** What is typed but not on the plan yet (a grid of stakes) is shown whole; a view that shows it already stays. */
import { afterEach, describe, expect, it } from "vitest";
import { placesDrawnBy, planView, showWhole } from "../../src/canvas/view/planView";
import { isSeen, type XY } from "../../src/canvas/view/view";

const stakes: readonly XY[] = [
  [10, 5],
  [90, 5],
  [90, 65],
  [10, 65],
];

describe("places that are shown before they are on the plan", () => {
  afterEach(() => placesDrawnBy(() => []));

  it("are all brought into sight, and a view that shows them isn't moved", () => {
    placesDrawnBy(() => stakes);
    planView.setState({ view: { centre: [0, 0], scale: 12, angle: 0, width: 800, height: 600 } });
    const { view: before } = planView.getState();
    expect(stakes.every((at) => isSeen(before, at, 0))).toBe(false);
    showWhole(stakes);
    const { view } = planView.getState();
    expect(stakes.every((at) => isSeen(view, at, 0))).toBe(true);
    showWhole(stakes.slice(1));
    expect(planView.getState().view).toBe(view);
  });
});
