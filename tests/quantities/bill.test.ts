import { describe, expect, it } from "vitest";
import { materialsSchema, workSchema } from "../../src/document/schema";
import { bill, billCost } from "../../src/quantities";

const input = {
  cut: 10,
  fill: 45,
  disturbedArea: 300,
  concrete: { wall: 8, footing: 3, slab: 9, base: 7 },
  drives: [{ id: "d", name: "drive", area: 60, thickness: 0.2 }],
  materials: materialsSchema.parse({ stripDepth: 0.15, swell: 1.25, shrink: 0.9, cutAsFill: false }),
  truck: { volume: 9, payload: null },
};
const quantity = (id: string, part = {}) =>
  bill({ ...input, ...part }).find((item) => item.id === id)?.quantity;

describe("the cut made into fill", () => {
  // 45 of fill take 50 in the bank, 40 more than the cut of 10 has.
  const own = { materials: materialsSchema.parse({ stripDepth: 0.15, swell: 1.25, shrink: 0.9 }) };

  it.each([
    ["brought: (45 ÷ 0.9 − 10) × 1.25", {}, 50, 6, 0, 0],
    ["nothing comes, and nothing goes, where it just makes it", { cut: 50 }, 0, 0, 0, 0],
    ["taken away: (60 − 50) × 1.25", { cut: 60 }, 0, 0, 12.5, 2],
    [
      "sand or gravel under the slab is brought all the same",
      { fillInside: 45, slabFill: "sand-gravel" },
      0,
      6,
      12.5,
      2,
    ],
  ])("%s", (_why, part, fillLoose, fillLoads, cutLoose, cutLoads) => {
    const figures = ["fill-loose", "fill-loads", "cut-loose", "cut-loads"].map((id) =>
      quantity(id, { ...own, ...part }),
    );
    expect(figures).toEqual([expect.closeTo(fillLoose, 9), fillLoads, expect.closeTo(cutLoose, 9), cutLoads]);
  });

  it("is bought and hauled only as far as it doesn't, so that the balance costs neither", () => {
    const prices = { "fill-loose": 30, "cut-loose": 12 };
    const total = (cut: number) => billCost(bill({ ...input, ...own, cut, prices })).total;
    expect(total(10)).toBeCloseTo(50 * 30, 9);
    expect(total(50)).toBeCloseTo(0, 9);
    expect(total(60)).toBeCloseTo(12.5 * 12, 9);
  });
});

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

  it("tells what the trench takes and leaves: 12 dug, 7 back, 5 × 1.25 over on one truck of 9", () => {
    const trench = { volume: 12, backfill: 7, leftOver: 5 };
    expect(quantity("trench-dig", { trench })).toBe(12);
    expect(quantity("trench-back", { trench })).toBe(7);
    expect(quantity("trench-left", { trench })).toBeCloseTo(6.25, 9);
    const left = bill({ ...input, trench }).find(({ id }) => id === "trench-left");
    expect(left?.trucked?.loads).toBe(1);
    // 12.5 of cut and 6.25 on the same trucks of 9: 2.08.
    expect(quantity("cut-loads", { trench })).toBe(3);
    const hours = (id: string, part = {}) =>
      quantity(id, { work: workSchema.parse({ dig: 10, place: 10, turn: 0.5 }), ...part }) ?? 0;
    expect(hours("machine-hours", { trench }) - hours("machine-hours")).toBeCloseTo(1.9, 9);
    expect(hours("truck-hours", { trench }) - hours("truck-hours")).toBeCloseTo(0.5, 9);
    expect(quantity("trench-dig")).toBeUndefined();
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
    expect(unpriced).toEqual(["topsoil", "cut-loose", "footing", "wall", "base", "gravel-d"]);
  });

  it("no price at all: nothing is invented", () => {
    expect(billCost(bill(input)).total).toBe(0);
    expect(bill(input).every(({ price }) => price === null)).toBe(true);
  });
});

describe("the order of work", () => {
  const part = (patch: object) => bill({ ...input, ...patch });
  const quantityIn = (items: ReturnType<typeof bill>, id: string) =>
    items.find((item) => item.id === id)?.quantity;

  it("stages follow each other as the work does", () => {
    const items = part({
      soilArea: 200,
      stumps: 2,
      materials: materialsSchema.parse({ respread: 0.1, undercuts: [{ id: "u", area: 10, depth: 0.5 }] }),
      work: workSchema.parse({ dig: 20, place: 30, turn: 0.75 }),
      concrete: { ...input.concrete, drain: { pipe: 40, stone: 6 } },
    });
    const stages = [...new Set(items.map(({ stage }) => stage))];
    expect(stages).toEqual([
      "strip",
      "undercut",
      "earth",
      "foundation",
      "drain",
      "base",
      "drive",
      "topsoil",
      "hours",
    ]);
  });

  it("a stump's hole, 1.2 m across and 0.5 deep, takes π/4 × 1.44 × 0.5 of compacted fill", () => {
    const materials = { ...input.materials, stumpHole: { width: 1.2, depth: 0.5 } };
    const items = part({ stumps: 3, materials });
    const hole = (Math.PI / 4) * 1.44 * 0.5;
    expect(quantityIn(items, "stumps")).toBeCloseTo(3 * hole, 9);
    expect(quantityIn(items, "fill-loose")).toBeCloseTo(((45 + 3 * hole) / 0.9) * 1.25, 9);
    expect(quantityIn(items, "fill")).toBe(45);
  });

  it("soft ground comes out and fill goes in; it isn't set against the fill", () => {
    const materials = {
      ...input.materials,
      undercuts: [{ id: "u", name: "wet corner", area: 20, depth: 0.5 }],
    };
    const items = part({ materials });
    expect(quantityIn(items, "undercut")).toBe(10);
    expect(quantityIn(items, "cut-loose")).toBeCloseTo((10 + 10) * 1.25, 9);
    expect(quantityIn(items, "short")).toBeCloseTo((45 + 10) / 0.9 - 10, 9);
  });

  it("topsoil back on 200 m2, 0.1 deep; the rest of the 45 stripped is left over", () => {
    const items = part({ soilArea: 200, materials: { ...input.materials, respread: 0.1 } });
    expect(quantityIn(items, "topsoil-back")).toBeCloseTo(20, 9);
    expect(quantityIn(items, "topsoil-left")).toBeCloseTo(25, 9);
    expect(quantityIn(items, "seed")).toBe(200);
    const much = part({ soilArea: 200, materials: { ...input.materials, respread: 0.3 } });
    expect(quantityIn(much, "topsoil-short")).toBeCloseTo(15, 9);
  });

  it("the fill by kind sums to the whole, and isn't paid for twice", () => {
    const items = part({ fillInside: 12, slabFill: "sand-gravel", prices: { "fill-inside": 99 } });
    expect(quantityIn(items, "fill-inside")).toBe(12);
    expect(quantityIn(items, "fill-outside")).toBe(33);
    expect(items.find(({ id }) => id === "fill-inside")).toMatchObject({
      item: "of it inside the walls, clean sand or gravel",
      price: null,
    });
  });

  it("stone in two layers sums to the whole", () => {
    const items = part({ drives: [{ id: "d", name: "drive", area: 60, thickness: 0.2, top: 0.05 }] });
    expect(quantityIn(items, "gravel-d")).toBeCloseTo(9, 9);
    expect(quantityIn(items, "gravel-top-d")).toBeCloseTo(3, 9);
  });

  it("a truck that is full by weight before it is full by volume takes more loads", () => {
    // 62.5 m3 loose of earth of 1602 kg/m3 in the bank: 1281.6 loose, 80.1 t.
    const heavy = part({ truck: { volume: 9, payload: 10_000 } });
    expect(quantityIn(heavy, "fill-loads")).toBe(9);
    expect(heavy.find(({ id }) => id === "fill-loose")?.trucked?.mass).toBeCloseTo(62.5 * 1281.6, 6);
    expect(quantityIn(part({ truck: { volume: 9, payload: 20_000 } }), "fill-loads")).toBe(7);
  });

  it("ranges by the grid's error, and by the topsoil that test pits met", () => {
    const items = part({ error: 0.9, topsoilMet: [0.1, 0.2] });
    const range = (id: string) => items.find((item) => item.id === id)?.range;
    expect(range("fill")).toEqual([44.1, 45.9]);
    expect(range("fill-loose")?.[0]).toBeCloseTo(62.5 - 1.25, 9);
    expect(range("topsoil")).toEqual([30, 60]);
    expect(bill(input).every((item) => item.range === null)).toBe(true);
  });

  it("hours: nothing without a rate; else volumes by the rate, loads by the turn", () => {
    expect(bill(input).some(({ unit }) => unit === "hours")).toBe(false);
    const items = part({ work: workSchema.parse({ dig: 20, turn: 0.5 }) });
    expect(quantityIn(items, "machine-hours")).toBeCloseTo((45 + 10) / 20, 9);
    // 7 of fill, 2 of cut, base 7 × 1.15 = 8.05: 1, drive 12 × 1.15 = 13.8: 2.
    expect(quantityIn(items, "truck-hours")).toBeCloseTo(12 * 0.5, 9);
  });
});
