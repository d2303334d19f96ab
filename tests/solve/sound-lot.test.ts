import { describe, expect, it } from "vitest";
import { createSolver } from "../../src/solve/pipeline";
import { site } from "./sites";

const corners = {
  round: [
    [-20, -20],
    [32, -20],
    [32, 28],
    [-20, 28],
  ],
  // The same corners in an order that crosses.
  crossed: [
    [-20, -20],
    [32, 28],
    [32, -20],
    [-20, 28],
  ],
};
const setbacks = [0, 1, 2, 3].map((line) => ({ line, distance: { text: "3", m: 3 }, name: "" }));
const solved = (outline: readonly (readonly number[])[]) =>
  createSolver().solve(site({ surface: (_x, y) => 100 + y / 50, rest: { lot: { outline, setbacks } } }));

describe("a lot whose lines cross", () => {
  it("is told, and counts in no figure: as if none were drawn, but for the message", () => {
    const [crossed, none] = [solved(corners.crossed), solved([])];
    expect(crossed.problems.find(({ code }) => code === "lot-crosses")?.what).toContain("no figure");
    expect(crossed.plot.setbacks).toEqual(none.plot.setbacks);
    expect(crossed.water.leaving).toEqual([]);
    expect(crossed.band).toEqual(none.band);
    expect(crossed.earthwork).toEqual(none.earthwork);
    expect(crossed.problems.filter(({ code }) => code !== "lot-crosses")).toEqual(none.problems);
  });

  it("counts again once it goes round", () => {
    const round = solved(corners.round);
    expect(round.problems.some(({ code }) => code === "lot-crosses")).toBe(false);
    expect(round.plot.setbacks).toHaveLength(4);
    expect(round.water.leaving.length).toBeGreaterThan(0);
    expect(round.band.rules.find(({ id }) => id === "fillFits")?.place).not.toContain("no lot");
  });
});
