import { afterEach, describe, expect, it } from "vitest";
import { stakeMarks } from "../../../src/canvas/stage/interactionMarks";
import { pickStakeRow, stakeGridStore } from "../../../src/store/stakeGrid";
import { handOn, metricProject } from "../support/hand";

afterEach(() => pickStakeRow(null));

describe("the row of a grid of stakes", () => {
  it("is clicked: its first stake, then the way it runs", () => {
    const hand = handOn(metricProject());
    hand.use("stakes");
    expect(hand.hint()).toMatch(/^Click where the first stake stands/);
    hand.click(10, 20, { free: true });
    hand.move(13, 24, { free: true });
    expect(hand.texts()).toEqual(["5.000 m"]);
    hand.click(13, 24, { free: true });
    expect(stakeGridStore.getState().picked).toEqual({ row: { from: [10, 20], towards: [13, 24] } });
    expect(hand.tool).toBe("select");
    expect(hand.labels).toEqual([]);
  });

  it("takes no direction from one place, steps back by Esc and gives up by another", () => {
    const hand = handOn(metricProject());
    hand.use("stakes");
    hand.click(10, 20, { free: true });
    hand.click(10, 20, { free: true });
    expect(hand.state()).toBe("second");
    hand.key("Escape");
    expect(hand.state()).toBe("first");
    expect(stakeGridStore.getState().picked).toBeNull();
    hand.key("Escape");
    expect(stakeGridStore.getState().picked).toEqual({ row: null });
  });
});

describe("stakes on the plan", () => {
  it("stand in the order they are walked, each with its number; of very many the first and the last", () => {
    const row = (n: number) => Array.from({ length: n }, (_, i) => [i, 0] as const);
    const texts = (n: number) =>
      stakeMarks(row(n)).flatMap((mark) => (mark.kind === "text" ? mark.text : []));
    expect(texts(3)).toEqual(["1", "2", "3"]);
    expect(texts(100)).toEqual(["1", "100"]);
    expect(stakeMarks([])).toEqual([]);
  });
});
