import { describe, expect, it } from "vitest";
import { materialsSchema } from "../../src/document/schema";
import { bill, billCost } from "../../src/quantities";

const input = {
  cut: 10,
  fill: 45,
  disturbedArea: 300,
  concrete: { wall: 8, footing: 3, slab: 9, base: 7 },
  drives: [{ id: "d", name: "drive", gravel: 12 }],
  materials: materialsSchema.parse({ stripDepth: 0.15, swell: 1.25, shrink: 0.9 }),
  truckVolume: 9,
};
const quantity = (id: string, part = {}) =>
  bill({ ...input, ...part }).find((item) => item.id === id)?.quantity;

describe("the bill", () => {
  it.each([
    ["topsoil: 300 m2 × 0.15", "topsoil", 45],
    ["fill compacted in place", "fill", 45],
    ["loose: 45 ÷ 0.9 × 1.25", "fill-loose", 62.5],
    ["loads: 62.5 ÷ 9 = 6.9", "fill-loads", 7],
    ["cut loose: 10 × 1.25", "cut-loose", 12.5],
    ["loads of cut: 12.5 ÷ 9 = 1.4", "cut-loads", 2],
    ["short: 45 ÷ 0.9 − 10, in the bank", "short", 40],
    ["stone for the drive", "gravel-d", 12],
  ])("%s", (_why, id, want) => {
    expect(quantity(id)).toBeCloseTo(want, 9);
  });

  it("says what is left over where the cut is more than the fill takes", () => {
    expect(quantity("left-over", { cut: 60 })).toBeCloseTo(10, 9);
    expect(quantity("short", { cut: 60 })).toBeUndefined();
  });

  it("needs no truck for nothing, and none for a rounding unit over a full one", () => {
    expect(quantity("fill-loads", { fill: 0 })).toBe(0);
    expect(quantity("cut-loads", { cut: (18 / 1.25) * (1 + 1e-15) })).toBe(2);
  });

  it("says how every figure came about", () => {
    for (const item of bill(input)) expect(item.how.length).toBeGreaterThan(5);
  });
});

describe("typed prices", () => {
  const priced = bill({
    ...input,
    prices: { "fill-loose": 20, slab: 200, cut: 1000 },
    concreteWaste: 0.1,
  });
  const cost = (id: string) => priced.find((item) => item.id === id)?.cost;

  it("62.5 loose at 20; 9 of slab with a tenth more at 200", () => {
    expect(cost("fill-loose")).toBeCloseTo(1250, 9);
    expect(cost("slab")).toBeCloseTo(1980, 9);
  });

  it("none for an item without a price, and none for an amount that is told twice", () => {
    expect(cost("base")).toBeNull();
    expect(cost("cut")).toBeNull();
    expect(cost("fill")).toBeNull();
  });

  it("the parts sum to the total, and what has no price is named", () => {
    const { total, unpriced } = billCost(priced);
    expect(total).toBeCloseTo(3230, 9);
    expect(unpriced).toEqual(["topsoil", "cut-loose", "base", "footing", "wall", "gravel-d"]);
  });

  it("no price at all: nothing is invented", () => {
    expect(billCost(bill(input)).total).toBe(0);
    expect(bill(input).every(({ price }) => price === null)).toBe(true);
  });
});
