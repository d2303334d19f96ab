import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { floorMoveLabel, floorSteps } from "../../src/canvas/rod/floorSteps";
import { gathered, rodLines, tickLabel } from "../../src/canvas/rod/rodLabels";
import { type RodTick, rodTicks } from "../../src/canvas/rod/rodMarks";
import { nearEnds, nextRange, rangeFor, rodHeight, rodY, scaleTicks } from "../../src/canvas/rod/rodScale";
import { floorInWords } from "../../src/canvas/rod/rodWords";
import { spreadBetween, spreadRound } from "../../src/canvas/rod/spread";
import { newProject } from "../../src/document";
import type { CornerResult } from "../../src/solve/results";
import { FOOT, INCH } from "../../src/units";

const feet = { ...newProject().display, length: "ft-in", rounding: 8 } as const;
const metric = { ...newProject().display, length: "m", rounding: 3 } as const;

describe("roads beside the rod", () => {
  const roads = (...names: string[]) => {
    const results = {
      corners: [],
      drives: names.map((name, i) => ({ id: `v${i}`, name, stations: [{ finished: 100 + i }] })),
      water: { swales: [] },
      survey: { mark: null },
      band: { rules: [] },
    } as unknown as Parameters<typeof rodTicks>[1];
    return rodTicks(newProject(), results).map((tick) => tickLabel(tick, 49));
  };

  it("are told apart, whole, where there is more than one drive", () => {
    expect(roads("Drive")).toEqual(["road"]);
    expect(roads("Drive to the garage", "Drive to the barn")).toEqual(["drive 1", "drive 2"]);
  });
});

describe("the rod's range", () => {
  it("shows all heights with room, and ends on half feet", () => {
    const range = rangeFor([97 * FOOT, 100 * FOOT], "ft-in");
    // 3 ft and 24 % of it: 3.72 ft, so 1.2 m (3.94 ft) about 98.5 ft, out to half feet.
    expect(range.low / FOOT).toBeCloseTo(96.5, 9);
    expect(range.high / FOOT).toBeCloseTo(100.5, 9);
  });

  it("never shrinks a hair to an inch: one height still gets 1.2 m", () => {
    const range = rangeFor([100], "m");
    expect(range.high - range.low).toBeGreaterThanOrEqual(1.2 - 1e-9);
  });

  it("stays while it serves, and is drawn anew when it doesn't", () => {
    const shown = { low: 99.5, high: 101.5 };
    expect(nextRange(shown, [99.9, 101], 100.5, "m", false)).toBe(shown);
    expect(nextRange(shown, [99.9, 103], 100.5, "m", false)).not.toBe(shown);
    expect(nextRange({ low: 90, high: 110 }, [99.9, 101], 100.5, "m", false)).not.toEqual({
      low: 90,
      high: 110,
    });
  });

  it("doesn't move under the hand; at its end it grows by whole steps", () => {
    const shown = { low: 99, high: 102 };
    expect(nextRange(shown, [90, 110], 100, "m", true)).toBe(shown);
    const grown = nextRange(shown, [99], 102.3, "m", true);
    expect(grown.low).toBe(99);
    expect(grown.high).toBeCloseTo(102.4, 9);
  });

  it("leaves out an end of the band that lies far off", () => {
    expect(nearEnds([99.5, null], [100, 102])).toEqual([99.5]);
    expect(nearEnds([90, 102.9], [100, 102])).toEqual([102.9]);
  });

  it("goes from heights to pixels and back", () =>
    fc.assert(
      fc.property(
        fc.integer({ min: -50_000, max: 50_000 }),
        fc.integer({ min: 100, max: 2000 }),
        (mm, height) => {
          const rule = { range: { low: -50, high: 50 }, height };
          expect(rodHeight(rule, rodY(rule, mm / 1000))).toBeCloseTo(mm / 1000, 9);
        },
      ),
    ));
});

describe("the rod's scale", () => {
  it("numbers whole feet and ticks inches where there is room: 4 ft on 480 px", () => {
    const ticks = scaleTicks({ range: { low: 96 * FOOT, high: 100 * FOOT }, height: 480 }, "ft-in");
    expect(ticks).toHaveLength(49);
    expect(ticks.filter(({ weight }) => weight === 2)).toHaveLength(5);
    expect(ticks.filter(({ weight }) => weight === 1)).toHaveLength(4);
  });

  it("never crowds: numbers keep 34 px apart, lines 3.5", () =>
    fc.assert(
      fc.property(
        fc.constantFrom("ft-in", "ft", "m", "mm"),
        fc.integer({ min: 12, max: 12_000 }),
        fc.integer({ min: 200, max: 1200 }),
        (notation, decimetres, height) => {
          const ticks = scaleTicks({ range: { low: 0, high: decimetres / 10 }, height }, notation as "m");
          const gaps = (list: readonly { y: number }[]) =>
            list.slice(1).map(({ y }, i) => Math.abs(y - (list[i]?.y ?? 0)));
          const numbered = ticks.filter(({ weight }) => weight === 2);
          for (const gap of gaps(numbered)) expect(gap).toBeGreaterThanOrEqual(33.9);
          for (const gap of gaps(ticks)) expect(gap).toBeGreaterThanOrEqual(3.4);
        },
      ),
    ));
});

describe("labels spread beside the rod", () => {
  it("leaves alone what doesn't touch", () => {
    expect(spreadBetween([10, 40, 90], 15, { from: 0, to: 100 })).toEqual([10, 40, 90]);
  });

  it("parts two at one height evenly", () => {
    expect(spreadBetween([50, 50], 15, { from: 0, to: 100 })).toEqual([42.5, 57.5]);
  });

  it("pools a crowd at its mean: 48, 50, 52 of 15 px stand at 35, 50, 65", () => {
    expect(spreadBetween([48, 50, 52], 15, { from: 0, to: 100 })).toEqual([35, 50, 65]);
  });

  it("stays within its room", () => {
    expect(spreadBetween([0, 2], 15, { from: 0, to: 100 })).toEqual([7.5, 22.5]);
    expect(spreadBetween([97, 99], 15, { from: 0, to: 100 })).toEqual([77.5, 92.5]);
  });

  it("parts round the floor's flag, above and below", () => {
    expect(spreadRound([52, 48], 15, { from: 0, to: 100 }, { from: 30, to: 70 })).toEqual([77.5, 22.5]);
  });

  it("goes to the flag's other side where its own has no room left", () => {
    const ends = { from: 0, to: 100 };
    expect(spreadRound([10, 12, 14], 15, ends, { from: 30, to: 60 })).toEqual([7.5, 22.5, 67.5]);
    expect(spreadRound([96, 90, 94], 15, ends, { from: 50, to: 80 })).toEqual([92.5, 27.5, 42.5]);
  });

  it("keeps order and distance, for any heights", () =>
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 600 }), { maxLength: 20 }), (wanted) => {
        const sorted = [...wanted].sort((a, b) => a - b);
        const places = spreadBetween(sorted, 15, { from: 0, to: 600 });
        for (let i = 1; i < places.length; i++)
          expect((places[i] as number) - (places[i - 1] as number)).toBeGreaterThanOrEqual(15 - 1e-9);
      }),
    ));
});

describe("steps of the floor", () => {
  it("are those of the notation", () => {
    expect(floorSteps(feet)).toMatchObject({ fine: INCH / 4, coarse: INCH, hand: INCH / 8 });
    expect(floorSteps(metric)).toMatchObject({ fine: 0.005, coarse: 0.02, hand: 0.001 });
  });

  it("are named by what they did", () => {
    expect(floorMoveLabel(INCH, feet)).toBe("floor up 1″");
    expect(floorMoveLabel(-14.5 * INCH, feet)).toBe("floor down 1′ 2½″");
    expect(floorMoveLabel(0.04, metric)).toBe("floor up 0.040 m");
    expect(floorMoveLabel(0, feet)).toBeNull();
  });
});

describe("the floor in words", () => {
  const corner = (name: string, floorAboveGround: number) =>
    ({ name, floorAboveGround }) as Partial<CornerResult> as CornerResult;
  const bandOf = (low: number, high: number) => ({ low, high, spans: [[low, high]] as const, empty: false });
  const corners = [corner("A", 10.75 * INCH), corner("B", 20 * INCH), corner("C", 30.5 * INCH)];
  const floor = (99 * 12 + 5.5) * INCH;

  it("tells the height, the highest and the lowest corner, and the limits", () => {
    const band = bandOf(floor - 0.1, floor + 0.1);
    expect(floorInWords(floor, corners, band, feet)).toBe(
      "99′ 5½″, 10¾″ out of the ground at A, 2′ 6½″ out of the ground at C, inside its limits",
    );
  });

  it("tells how far it is beyond its limits, and when no height keeps them all", () => {
    expect(floorInWords(100, [], bandOf(100.02, 101), metric)).toBe("100.000 m, 0.020 m below its limits");
    expect(
      floorInWords(100, [corner("A", -0.2)], { low: 101, high: 99, spans: [], empty: true }, metric),
    ).toBe("100.000 m, 0.200 m below the ground at A, no height keeps all limits");
  });
});

describe("names beside the rod", () => {
  const corner = (label: string, z: number, guessed = false): RodTick => ({
    id: `corner ${label}`,
    label,
    z,
    kind: "corner",
    guessed,
  });
  const road: RodTick = { id: "road", label: "road", z: 9.99, kind: "road", guessed: false };

  it("stand each for itself while they have room", () => {
    const ticks = [corner("A", 10), corner("B", 10), road];
    expect(gathered(ticks, 3).map(({ label }) => label)).toEqual(["A", "B", "road"]);
  });

  it("of corners nearly level share a line where they are too many, at the middle of their heights", () => {
    const ticks = [corner("C", 12), corner("B", 10.2), corner("A", 10, true), road];
    expect(gathered(ticks, 3).map(({ label, z }) => [label, z])).toEqual([
      ["A? B", 10.1],
      ["C", 12],
      ["road", 9.99],
    ]);
  });

  it("are cut short with dots rather than by the rod's rim", () => {
    expect(tickLabel({ ...road, label: "road, to the lower yard" }, 56)).toMatch(/^road.*…$/);
    expect(tickLabel(road, 56)).toBe("road");
    expect(rodLines("uphill ground", 45)).toEqual(["uphill", "ground"]);
    expect(rodLines("neighbourhood", 45)[0]).toMatch(/^neigh.*…$/);
    expect(rodLines("not over the shed's old sill", 45)).toEqual(["not", "over", "the…"]);
  });
});
