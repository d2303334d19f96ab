import { beforeEach, describe, expect, it } from "vitest";
import {
  snappingFromText,
  snappingStore,
  snappingToText,
  toggleAllSnaps,
  toggleRightAngles,
  toggleSnap,
  usualSnapping,
} from "../../src/store/snapping";

const now = () => snappingStore.getState();

describe("what is snapped to", () => {
  beforeEach(() => snappingStore.setState(usualSnapping));

  it("is switched kind by kind, and all at once", () => {
    toggleSnap("grid");
    toggleSnap("middles");
    expect(now().on.has("grid")).toBe(true);
    expect(now().on.has("middles")).toBe(false);
    toggleAllSnaps();
    expect(now().on.size).toBe(0);
    toggleAllSnaps();
    expect(now().on).toEqual(usualSnapping.on);
  });

  it("is remembered as text", () => {
    toggleSnap("edges");
    toggleRightAngles();
    expect(snappingFromText(snappingToText(now()))).toEqual(now());
  });

  it.each([[null], ["not json"], ["null"], ["{}"], ['{"on":7}']])("%s leaves what is usual", (text) => {
    expect(snappingFromText(text)).toEqual(usualSnapping);
  });
});
