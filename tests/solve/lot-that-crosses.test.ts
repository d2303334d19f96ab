/** A lot whose lines cross has no inside: it is asked about, and no figure leans on it. */
import { describe, expect, it } from "vitest";
import type { Point } from "../../src/document/schema";
import { lotAreaWhy } from "../../src/help/why/building";
import { createSolver } from "../../src/solve/pipeline";
import type { Results } from "../../src/solve/results";
import { plane, shed, site } from "./sites";

/** Round the building, and near enough for its slopes to reach. */
const square: Point[] = [
  [-5, -5],
  [17, -5],
  [17, 13],
  [-5, 13],
];
/** The same corners in an order that crosses. */
const bow: Point[] = [square[0], square[2], square[1], square[3]] as Point[];

function solved(outline: readonly Point[]): Results {
  const lot = { outline, setbacks: outline.map((_, line) => ({ line, distance: { text: "7", m: 7 } })) };
  return createSolver().solve(
    site({ surface: plane(100, -0.02, -0.06), building: { ...shed, floor: 102 }, rest: { lot } }),
  );
}

const ofTheLot = (results: Results) =>
  results.problems
    .filter(({ code }) => /^(lot-|grading-past|in-setback|fit)/.test(code))
    .map(({ code }) => code);
const rule = (results: Results, id: string) => results.band.rules.find((each) => each.id === id);

describe("a lot whose lines cross", () => {
  const [whole, crossed, none] = [solved(square), solved(bow), solved([])];

  it("is asked about in words, and only that", () => {
    expect(ofTheLot(whole)).toContain("in-setback");
    expect(ofTheLot(whole)).toContain("grading-past-lot");
    expect(ofTheLot(crossed)).toEqual(["lot-crosses"]);
  });

  it("has no setbacks, and nothing stands in one", () => {
    expect(whole.plot.setbacks.length).toBe(4);
    expect(crossed.plot.setbacks).toEqual([]);
    expect(crossed.plot.crossings).toEqual([]);
  });

  it("limits no slope and keeps no floor", () => {
    expect(rule(none, "fillFits")).toMatchObject({
      height: null,
      place: "no lot that encloses ground is drawn",
    });
    expect(rule(whole, "fillFits")).not.toEqual(rule(none, "fillFits"));
    for (const id of ["fillFits", "cutFits"]) expect(rule(crossed, id)).toEqual(rule(none, id));
    expect(whole.grading?.fits.length).toBeGreaterThan(0);
    expect(crossed.grading?.fits).toEqual(none.grading?.fits);
  });

  it("tells no water that leaves over its lines", () => {
    expect(whole.water.leaving.length).toBe(4);
    expect(crossed.water.leaving).toEqual([]);
  });

  it("encloses no area that help could explain", () => {
    const asked = (outline: Point[]) => {
      const project = site({ rest: { lot: { outline } } });
      const results = createSolver().solve(project);
      return lotAreaWhy({ project, results, figures: { area: String, length: String } } as never);
    };
    expect(asked(square)?.figure).toBe("396");
    expect(asked(bow)).toBeNull();
  });
});
