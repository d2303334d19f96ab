import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { searched } from "../../src/solve/floor-search";

describe("a limit of the floor found by trying floors", () => {
  it("kept from one height up, or down, to a tenth of a micrometre", () => {
    const up = searched((floor) => floor - 100.123456, 98, 103, "notBelow");
    expect(up.kind).toBe("notBelow");
    expect(up.height).toBeCloseTo(100.123456, 6);
    const down = searched((floor) => 0.3 * (101.7 - floor), 98, 103, "notAbove");
    expect(down).toMatchObject({ kind: "notAbove" });
    expect(down.height).toBeCloseTo(101.7, 6);
  });

  it("takes the kept side: the height it tells keeps the margin itself", () =>
    fc.assert(
      fc.property(
        fc.double({ min: 98.1, max: 102.9, noNaN: true }),
        fc.constantFrom(1, -1),
        fc.double({ min: 0.01, max: 50, noNaN: true }),
        (turn, way, steep) => {
          // A bend and a jump: what a wall that begins to be wetted and a load of fill look like.
          const margin = (floor: number) => {
            const t = way * (floor - turn);
            return t < 0 ? steep * t - 0.01 : Math.min(t, 0.2 + 0.1 * t);
          };
          const { height, kind } = searched(margin, 98, 103, "notBelow");
          expect(kind).toBe(way > 0 ? "notBelow" : "notAbove");
          expect(margin(height as number)).toBeGreaterThanOrEqual(-1e-9);
          expect(Math.abs((height as number) - turn)).toBeLessThanOrEqual(1e-7);
        },
      ),
    ));

  it("within: kept between two heights, or beyond them", () => {
    const between = searched((floor) => 1 - Math.abs(floor - 100.4), 98, 103, "notAbove");
    expect(between).toMatchObject({ kind: "within", height: null });
    expect(between.heights?.[0]?.[0]).toBeCloseTo(99.4, 6);
    expect(between.heights?.[0]?.[1]).toBeCloseTo(101.4, 6);
    const beyond = searched((floor) => Math.abs(floor - 100.4) - 1, 98, 103, "notAbove");
    expect(beyond.heights).toHaveLength(2);
    expect(beyond.heights?.[0]?.[0]).toBeNull();
    expect(beyond.heights?.[1]?.[1]).toBeNull();
  });

  it("says where the floor doesn't decide", () => {
    expect(searched(() => 0, 98, 103, "notAbove")).toEqual({
      kind: "notAbove",
      height: null,
      atAnyFloor: "kept",
    });
    expect(searched(() => -1, 98, 103, "notBelow").atAnyFloor).toBe("broken");
  });

  it("the closer margin decides the turn", () => {
    const rough = (floor: number) => floor - 100.2;
    const close = (floor: number) => floor - 100.25;
    expect(searched(rough, 98, 103, "notBelow", close).height).toBeCloseTo(100.25, 6);
  });
});
