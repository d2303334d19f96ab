import { describe, expect, it } from "vitest";
import { understoodPreferences } from "../../src/app/preferences";
import { ruleSetOf } from "../../src/document";
import { rulesSchema } from "../../src/document/schema";

describe("kept preferences", () => {
  it("come back as they were chosen", () => {
    const ruleSets = [ruleSetOf(rulesSchema.parse({ leastShowing: 0.2 }), "county")];
    const kept = { textSize: 1.5, motion: "less", opens: "last", ruleSets };
    expect(understoodPreferences(JSON.stringify(kept))).toEqual(kept);
  });

  it("that are spoilt, or of another version, are left out one by one", () => {
    expect(understoodPreferences(null)).toEqual({});
    expect(understoodPreferences("{")).toEqual({});
    expect(understoodPreferences("7")).toEqual({});
    expect(
      understoodPreferences('{"ruleSets":[{"name":""},7,{"name":"county","values":{"off":["x"]}}]}'),
    ).toEqual({
      ruleSets: [ruleSetOf(rulesSchema.parse({ off: ["x"] }), "county")],
    });
    expect(understoodPreferences('{"textSize":9,"motion":"less","more":1}')).toEqual({ motion: "less" });
  });
});
