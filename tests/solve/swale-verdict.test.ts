import { describe, expect, it } from "vitest";
import type { SwaleResult } from "../../src/solve/results";
import { leastFallWords, swaleVerdict } from "../../src/solve/swale-verdict";

const swale = (leastFall: number, drains: boolean, buried = 0): SwaleResult => ({
  id: "s",
  name: "swale",
  length: 20,
  leastFall,
  drains,
  why: "",
  stations: [{ distance: 20, at: [20, 0], existing: buried, bed: 0, fall: null }],
});

describe("a swale", () => {
  it.each([
    ["drains", swale(0.02, true)],
    ["falls too little", swale(0.001, false)],
    ["doesn't drain", swale(-0.001, false)],
    ["doesn't drain", swale(0, false)],
    ["doesn't drain", swale(0.001, false, 0.3)],
    ["doesn't drain", swale(0.02, false, 0.3)],
  ])("%s", (verdict, result) => {
    expect(swaleVerdict(result, 0.01)).toBe(verdict);
  });
});

describe("what a bed does where it falls least", () => {
  const slope = (ratio: number) => `${(100 * ratio).toFixed(1)} %`;
  it.each([
    [0.012, "falls 1.2 %"],
    [0, "is level"],
    [-3e-17, "is level"],
    [5e-5, "is level"],
    [-0.004, "rises 0.4 %"],
  ])("%d", (fall, said) => {
    expect(leastFallWords(swale(fall, fall > 0.01), { slope })).toBe(said);
  });
});
