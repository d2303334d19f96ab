import { describe, expect, it } from "vitest";
import { swaleSchema } from "../../src/document/schema";
import { swaleResult } from "../../src/drainage";
import type { Point } from "../../src/geometry";
import { laySwale } from "../../src/grading";

const words = {
  length: (m: number) => `${m.toFixed(2)} m`,
  slope: (s: number) => `${(100 * s).toFixed(1)} %`,
};

/** A swale 40 m long to the east over this ground. */
function judged(ground: (x: number) => number, part: Record<string, unknown> = {}) {
  const swale = swaleSchema.parse({
    id: "s",
    name: "swale",
    line: [
      [0, 0],
      [40, 0],
    ],
    depth: 0.2,
    ...part,
  });
  const height = ([x]: Point) => ground(x);
  const line = laySwale(swale, { startGround: ground(0), outletGround: ground(40) });
  return swaleResult(line, height, 0.01, words);
}

describe("a swale", () => {
  it("drains on ground that falls 3 %: bed from 0.2 m down, to the ground at the outlet", () => {
    const result = judged((x) => 100 - 0.03 * x);
    expect(result.drains).toBe(true);
    expect(result.leastFall).toBeCloseTo((1.2 - 0.2) / 40, 12);
    expect(result.stations[0]).toMatchObject({ distance: 0, at: [0, 0], existing: 100, bed: 99.8 });
    expect(result.stations.at(-1)?.bed).toBeCloseTo(98.8, 9);
    expect(result.stations.at(-1)?.fall).toBeNull();
  });

  it.each<[string, (x: number) => number, Record<string, unknown>, RegExp]>([
    ["level", (x) => 100 - 0.005 * x, {}, /is level/],
    ["level but for rounding", (x) => 100 - 0.005 * x - 1e-15 * x, {}, /is level/],
    ["level as far as one can dig", (x) => 100 - 0.00495 * x, {}, /^The bed is level:/],
    ["running backwards", () => 100, {}, /rises towards its outlet/],
    ["too flat for the rule", (x) => 100 - 0.008 * x, {}, /less than the 1.0 % wanted/],
    ["buried at its outlet", () => 100, { fall: 0.02 }, /1.00 m under the ground at its outlet/],
    [
      "left dry by a hollow half way",
      (x) => 100 - 0.03 * x - (x > 15 && x < 25 ? 0.6 : 0),
      {},
      /water leaves the swale/,
    ],
  ])("doesn't drain: %s", (_why, ground, part, why) => {
    const result = judged(ground, part);
    expect(result.drains).toBe(false);
    expect(result.why).toMatch(why);
  });

  it("may come out before its end", () => {
    const result = judged((x) => (x < 20 ? 100 : 100 - 0.1 * (x - 20)), { fall: 0.01 });
    expect(result.drains).toBe(true);
    expect(result.why).toMatch(/comes out/);
  });
});
