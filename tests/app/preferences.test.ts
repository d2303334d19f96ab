import { describe, expect, it } from "vitest";
import { understoodPreferences } from "../../src/app/preferences";

describe("kept preferences", () => {
  it("come back as they were chosen", () => {
    const kept = { textSize: 1.5, motion: "less", opens: "last" };
    expect(understoodPreferences(JSON.stringify(kept))).toEqual(kept);
  });

  it("that are spoilt, or of another version, are left out one by one", () => {
    expect(understoodPreferences(null)).toEqual({});
    expect(understoodPreferences("{")).toEqual({});
    expect(understoodPreferences("7")).toEqual({});
    expect(understoodPreferences('{"textSize":9,"motion":"less","more":1}')).toEqual({ motion: "less" });
  });
});
