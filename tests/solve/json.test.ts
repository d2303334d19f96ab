import { describe, expect, it } from "vitest";
import { projectSchema } from "../../src/document/schema";
import { resultsToJson } from "../../src/solve/json";
import { createSolver } from "../../src/solve/pipeline";
import { plane, site } from "./sites";

const project = site({ surface: plane(100, 0.05, 0.02) });
const results = createSolver().solve(project);
const json = JSON.parse(JSON.stringify(resultsToJson(results, project)));

describe("results as JSON", () => {
  it("have the names that scripts rely on", () => {
    expect(Object.keys(json)).toEqual(
      expect.arrayContaining([
        "floor",
        "topOfWall",
        "corners",
        "earthwork",
        "curve",
        "trench",
        "setout",
        "drives",
        "water",
        "band",
        "bill",
        "problems",
      ]),
    );
    expect(json.corners[0]).toMatchObject({
      name: "A",
      x: 0,
      y: 0,
      ground: expect.closeTo(100, 9),
      guessed: false,
    });
    expect(json.corners[0]).toHaveProperty("wallAboveGround");
    expect(json.earthwork).toMatchObject({
      inside: { area: 96 },
      outside: { error: expect.any(Number) },
      guessedShare: 0,
    });
    expect(json.curve[0]).toEqual({
      floor: expect.any(Number),
      cut: expect.any(Number),
      fill: expect.any(Number),
    });
    expect(json.trench[0]).toMatchObject({
      corner: "A",
      bottom: expect.any(Number),
      belowGround: expect.any(Number),
    });
    expect(json.foundation).toMatchObject({
      kind: "stem-wall",
      heights: { floor: expect.any(Number), lowestBottom: json.trench[0].bottom },
      cover: { counts: "undisturbed", bearing: { needed: 0.3048, at: { place: expect.any(String) } } },
      stepped: { on: false, steps: [] },
      dig: { soil: "C", volume: expect.any(Number) },
      slabFill: { limit: 0.6096 },
      takeOff: { total: expect.any(Number), blocks: null },
    });
    const [side] = json.foundation.walls;
    for (const list of ["distance", "existing", "stripped", "finished", "guessed", "bottom"])
      expect(side[list]).toHaveLength(side.distance.length);
    expect(json.foundation.unbalanced[0]).toMatchObject({ name: "A-B", limit: 4 * 0.3048, passes: true });
    expect(json.setout).toMatchObject({ mark: "bolt", markHeight: 100, beam: 200 });
    expect(json.setout.rows[0]).toMatchObject({ what: "top of wall", where: "all round" });
    expect(json.water.walls[0]).toMatchObject({ name: "A-B", passes: true });
    expect(json.band.rules[0]).toMatchObject({ id: "aboveUphillGround", kind: "notBelow", on: true });
    expect(json.bill[0]).toMatchObject({
      item: expect.any(String),
      quantity: expect.any(Number),
      unit: "m3",
    });
  });

  it("are plain: no typed arrays, no NaN, the same numbers back", () => {
    const raw = resultsToJson(results, project);
    const seen: unknown[] = [];
    const walk = (value: unknown): void => {
      if (typeof value === "number") expect(Number.isFinite(value)).toBe(true);
      else if (typeof value === "object" && value !== null) {
        expect(ArrayBuffer.isView(value)).toBe(false);
        seen.push(value);
        Object.values(value).forEach(walk);
      }
    };
    walk(raw);
    expect(seen.length).toBeGreaterThan(100);
    expect(json.floor).toBe(results.floor);
    expect(json.section.finished).toHaveLength(240);
  });

  it("of an empty project are empty", () => {
    const empty = projectSchema.parse({ drysill: 1 });
    const none = resultsToJson(createSolver().solve(empty), empty);
    expect(none).toMatchObject({ floor: null, earthwork: null, ground: null, corners: [], problems: [] });
  });
});
