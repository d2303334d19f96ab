/** Usual soils: every figure says where it comes from. */
import { describe, expect, it } from "vitest";
import { figureSource, projectSchema, soils } from "../../src/document";

const materials = projectSchema.parse({ drysill: 1 }).materials;
const withSoil = (kind: string) => {
  const soil = soils.find((each) => each.kind === kind);
  if (!soil) throw new Error(kind);
  return {
    ...materials,
    swell: soil.swell,
    shrink: soil.shrink,
    weights: { ...materials.weights, earth: soil.weight },
  };
};

describe("usual soils", () => {
  it("have the figures of the tables they name", () => {
    // Sand in place 100, loose 111, compacted 95.
    expect(soils.find(({ kind }) => kind === "sand-gravel")).toMatchObject({ swell: 1.11, shrink: 0.95 });
    // Loam swells by 25, clay by 40, blasted rock by 65 per cent.
    expect(soils.find(({ kind }) => kind === "loam")?.swell).toBe(1.25);
    expect(soils.find(({ kind }) => kind === "clay")?.swell).toBe(1.4);
    expect(soils.find(({ kind }) => kind === "rock")).toMatchObject({ swell: 1.65, shrink: 1.36 });
    // Earth 100 and rock 150 lb a cubic foot in place.
    expect(soils.find(({ kind }) => kind === "loam")?.weight).toBeCloseTo(
      (100 * 0.45359237) / 0.3048 ** 3,
      0,
    );
    expect(soils.find(({ kind }) => kind === "rock")?.weight).toBeCloseTo(
      (150 * 0.45359237) / 0.3048 ** 3,
      0,
    );
  });

  it("weigh what the tables have: sand and gravel 1,930, clay 1,840 kg/m³ in place, topsoil 2,400 lb a cubic yard", () => {
    expect(soils.find(({ kind }) => kind === "sand-gravel")?.weight).toBe(1930);
    expect(soils.find(({ kind }) => kind === "clay")?.weight).toBe(1840);
    expect(materials.weights.topsoil).toBeCloseTo((2400 * 0.45359237) / 0.9144 ** 3, 0);
    // Common earth: 0.90 compacted for one in the bank.
    expect(materials.shrink).toBe(0.9);
  });

  it("tell of each figure its table", () => {
    for (const soil of soils)
      for (const figure of ["swell", "shrink", "weight"] as const)
        expect(soil.sources[figure]).toMatch(/table|notes|compendium/);
    expect(figureSource(withSoil("sand-gravel"), "swell")).toMatch(/111 loose/);
    expect(figureSource(withSoil("loam"), "shrink")).toMatch(/0\.90 compacted/);
    expect(figureSource(materials, "topsoil")).toMatch(/2,400 lb/);
  });

  it("say of a figure without a table that it is our own, between which published ones it lies, and what to do", () => {
    const told = figureSource(materials, "stoneLoose");
    // Sand and gravel: 111 loose and 95 compacted of 100 in place. Dry gravel: 1.15 loose, 0.93 compacted.
    expect(told).toContain(`sand ${(1.11 / 0.95).toFixed(2)}`);
    expect(told).toContain(`dry gravel ${(1.15 / 0.93).toFixed(2)}`);
    expect(told).toMatch(/^a round figure of our own: no table was read for crushed stone/);
    expect(told).toMatch(/ask your supplier/);
    expect(figureSource({ ...materials, stoneLoose: 1.2 }, "stoneLoose")).toBe("your own figure");
  });

  it("know a figure of one's own, each by itself", () => {
    const own = { ...materials, swell: 1.3 };
    expect(figureSource(own, "swell")).toBe("your own figure");
    expect(figureSource(own, "shrink")).toBe("your own figure");
    expect(figureSource(materials, "swell")).not.toBe("your own figure");
    expect(figureSource(materials, "stone")).toMatch(/supplier/);
    expect(figureSource({ ...materials, weights: { ...materials.weights, stone: 1500 } }, "stone")).toBe(
      "your own figure",
    );
  });
});
