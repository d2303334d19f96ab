import { describe, expect, it } from "vitest";
import { featureSchema } from "../../src/document";
import { featureForms, usualKeepClear } from "../../src/document/features";

describe("what is usually kept clear", () => {
  // 29 CFR 1926.1408: 10 ft up to 50 kV. BS 5837: 12 times the trunk (from memory).
  it("of an overhead line and of a tree by its trunk", () => {
    expect(usualKeepClear({ kind: "overhead-line", trunk: null })?.m).toBeCloseTo(10 * 0.3048, 9);
    expect(usualKeepClear({ kind: "tree", trunk: 0.4 })?.m).toBeCloseTo(4.8, 9);
    expect(usualKeepClear({ kind: "fence", trunk: null })).toBeNull();
  });

  it("names its source for each kind that has one, and is never taken by itself", () => {
    for (const kind of Object.keys(featureForms) as (keyof typeof featureForms)[]) {
      const usual = usualKeepClear({ kind, trunk: null });
      if (usual) expect([usual.m > 0, usual.source.length > 10]).toEqual([true, true]);
      expect(featureSchema.parse({ id: "f1", kind, points: [[0, 0]] })).toMatchObject({
        keepClear: 0,
        trunk: null,
      });
    }
  });
});
