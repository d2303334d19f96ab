/** Figures: International Residential Code R401.3 (2012): 6 in within the first 10 ft; 2 % on impervious surfaces. */
import { describe, expect, it } from "vitest";
import { displaySchema } from "../../src/document/schema";
import { notationOf } from "../../src/panels/notation";
import { wallRule, whyLess } from "../../src/panels/wallRule";

const feet = notationOf(displaySchema.parse({}));
const metres = notationOf(displaySchema.parse({ length: "m", rounding: 3, area: "m2", volume: "m3" }));
const source = "the code";
const earth = { needed: 0.1524, within: 3.048, paved: false, source };
const paved = { needed: 0.06096, within: 3.048, paved: true, source };
const near = { needed: 0.1, within: 2, paved: false, source };

describe("the fall asked of walls", () => {
  it("is told with its source, in the plan's notation", () => {
    expect(wallRule([earth], feet)).toBe(
      "Wanted: 6″ within 10′ 0″ of the wall over earth or grass. Source: the code. Your local code decides.",
    );
    expect(wallRule([paved, earth], metres)).toBe(
      "Wanted: 0.152 m within 3.048 m of the wall over earth or grass, 2.0 % over a drive or other hard surface. Source: the code. Your local code decides.",
    );
    expect(wallRule([near], metres)).toBe("Source: the code. Your local code decides.");
  });

  it("is less beside a drive or before another wall, and says why", () => {
    expect(whyLess(earth, feet)).toBeNull();
    expect(whyLess(paved, feet)).toBe(
      "A drive or landing lies against it: on a hard surface 2.0 % is enough.",
    );
    expect(whyLess(near, metres)).toBe("Another wall stands 2.000 m off, so the fall is asked up to there.");
    expect(whyLess({ ...near, paved: true, needed: 0.04 }, metres)).toBe(
      "A drive or landing lies against it: on a hard surface 2.0 % is enough; another wall stands 2.000 m off, so the fall is asked up to there.",
    );
  });
});
