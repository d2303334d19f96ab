import { describe, expect, it } from "vitest";

import { rasterWish } from "../../src/app/import/RasterPart";

const texts = { minX: "100", minY: "−20,5", maxX: "150.25", maxY: "260", most: "5000" };

describe("the part of a grid that is asked for", () => {
  it("is read with a point or a comma, and either minus", () => {
    expect(rasterWish(texts)).toEqual({
      window: { minX: 100, minY: -20.5, maxX: 150.25, maxY: 260 },
      most: 5000,
    });
  });

  it.each([
    [{ maxX: "" }, "East: can't read"],
    [{ minX: "200" }, "East must be more than west"],
    [{ maxY: "-30" }, "North must be more than south"],
    [{ most: "3" }, "at least 4"],
    [{ most: "many" }, "whole number"],
  ])("is refused in words: %j", (change, words) => {
    expect(rasterWish({ ...texts, ...change })).toContain(words);
  });
});
