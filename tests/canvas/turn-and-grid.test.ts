/** The plan's turn and its grid. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { wheelReader } from "../../src/canvas/stage/wheel";
import { gridLines, gridStep } from "../../src/canvas/view/grid";
import { buildingLevel, northUp, turnChoices } from "../../src/canvas/view/turnChoices";
import { toScreen, toWorld, turnAt, type View } from "../../src/canvas/view/view";
import { newProject } from "../../src/document";
import { demoProject } from "../support/demo";

const view: View = { centre: [12, -7], scale: 20, angle: 0.2, width: 900, height: 600 };

describe("turning the view", () => {
  it("keeps the place under the pointer, and turns everything about it", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 900 }),
        fc.integer({ min: 0, max: 600 }),
        fc.integer({ min: -314, max: 314 }),
        (x, y, hundredths) => {
          const by = hundredths / 100;
          const turned = turnAt(view, [x, y], by);
          const [px, py] = toScreen(turned, toWorld(view, [x, y]));
          expect(px).toBeCloseTo(x, 6);
          expect(py).toBeCloseTo(y, 6);
          // A place to the right of it is now at the angle, counter-clockwise: up the screen.
          const [qx, qy] = toScreen(turned, toWorld(view, [x + 100, y]));
          expect(qx - x).toBeCloseTo(100 * Math.cos(by), 6);
          expect(y - qy).toBeCloseTo(100 * Math.sin(by), 6);
        },
      ),
    );
  });

  it("has Shift and the wheel turn, three degrees a notch", () => {
    const read = wheelReader();
    const notch = { deltaMode: 0, ctrlKey: false, shiftKey: true, timeStamp: 1 };
    const act = read({ ...notch, deltaX: 0, deltaY: -100 });
    expect(act).toEqual({ kind: "turn", by: expect.closeTo((3 * Math.PI) / 180, 9) });
    // Where the system hands it on sideways it means the same.
    expect(read({ ...notch, deltaX: -100, deltaY: 0 })).toEqual(act);
  });

  it("names one and the same turn once, so that one choice alone is lit", () => {
    const project = demoProject("pottery-studio");
    const choices = turnChoices({ ...project, lot: { ...project.lot, north: 0 } });
    expect(choices[0]?.words).toMatch(/^as it was drawn, north up/);
    for (const [i, { turn }] of choices.entries())
      for (const other of choices.slice(i + 1))
        expect(Math.abs(Math.sin((turn - other.turn) / 2))).toBeGreaterThan(1e-6);
  });

  it("knows turns by name: north up, and each wall level", () => {
    const project = demoProject("pottery-studio");
    const north = { ...project, lot: { ...project.lot, north: 0.3 } };
    expect(northUp(north)).toBe(0.3);
    for (const { words, turn } of turnChoices(north)) {
      if (!words.startsWith("wall")) continue;
      expect(Math.abs(turn)).toBeLessThanOrEqual(Math.PI / 2 + 1e-9);
    }
    const [a = [0, 0], b = [0, 0]] = project.building?.outline ?? [];
    const turn =
      turnChoices(north).find(({ words }) => words.includes("wall A–B level"))?.turn ??
      buildingLevel(north) ??
      9;
    const level = { ...view, angle: turn };
    expect(toScreen(level, a)[1]).toBeCloseTo(toScreen(level, b)[1], 6);
    expect(buildingLevel(newProject())).toBeNull();
  });
});

describe("the grid", () => {
  it("has usual steps in the project's notation, heavier where they are round", () => {
    expect(gridStep("ft-in", 40)).toMatchObject({ text: "1′", heavyEvery: 10 });
    expect(gridStep("ft-in", 10)).toMatchObject({ text: "5′" });
    expect(gridStep("m", 40)).toMatchObject({ text: "0.5 m", heavyEvery: 10 });
    expect(gridStep("m", 10)).toMatchObject({ text: "1 m" });
    expect(gridStep("mm", 400)).toMatchObject({ text: "5 cm" });
  });

  it("is never finer than can be told apart, nor needlessly coarse", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.2, max: 1600, noNaN: true }),
        fc.constantFrom("ft-in" as const, "m" as const),
        (scale, notation) => {
          const { step } = gridStep(notation, scale);
          expect(step * scale).toBeLessThan(120);
          if (scale > 0.5) expect(step * scale).toBeGreaterThanOrEqual(9 - 1e-9);
        },
      ),
    );
  });

  it("counts its lines from the plan's origin", () => {
    expect(gridLines(0.5, -1.2, 1)).toEqual([-2, 2]);
  });
});
