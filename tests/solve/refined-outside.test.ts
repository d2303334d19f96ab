/** The stated error of earth outside the walls, against a closed form. */
import { expect, it } from "vitest";
import { groundPadSchema } from "../../src/document/schema";
import { finish, gradingReach, layOut, layPad } from "../../src/grading";
import { refinedOutside } from "../../src/solve/refined-outside";
import { planeGround, planFor, rectangle } from "../grading/plans";

// A pad 20 × 10 at 100.4 on ground that rises by 0.05 to the north: all of it fill, slopes 3 : 1. A side of length L holds
// L (D₁² + D₁ D₂ + D₂²) / (6 k), k = 1/3 + the ground's rise outwards; a round corner ∫ D³ / (6 k²) dθ.
function closedForm(): number {
  const [low, high, slope, rise] = [0.65, 0.15, 1 / 3, 0.05];
  const side = (length: number, a: number, b: number, k: number) =>
    (length * (a * a + a * b + b * b)) / (6 * k);
  const corner = (depth: number, from: number) => {
    const steps = 4000;
    let sum = 0;
    for (let i = 0; i < steps; i++) {
      const k = slope + rise * Math.sin(from + ((i + 0.5) * Math.PI) / 2 / steps);
      sum += ((depth ** 3 / (6 * k * k)) * Math.PI) / 2 / steps;
    }
    return sum;
  };
  return (
    20 * 10 * 0.4 +
    side(20, low, low, slope - rise) +
    side(20, high, high, slope + rise) +
    2 * side(10, low, high, slope) +
    2 * corner(high, 0) +
    2 * corner(low, -Math.PI / 2)
  );
}

it("is refined until two grids agree within half a percent or a tenth of a cubic metre", () => {
  const pad = groundPadSchema.parse({
    id: "q1",
    outline: rectangle(20, 10),
    level: { kind: "height", height: 100.4 },
    fall: 0,
  });
  const leave = { leave: new Uint8Array(4).fill(1) };
  const plan = planFor(rectangle(6, 6, 0, 150, 0), leave, { pads: [layPad(pad, () => 100)] });
  const ground = planeGround(100, 0, 0.05);
  const range = { low: 100, high: 101 };
  const { bounds } = gradingReach(plan, ground, range);
  const at = (mostCells: number) => layOut(plan, ground, { bounds, range, mostCells });
  const topsoil = { stripDepth: 0, respread: 0 };
  const fine = finish(at(20_000), 100.4, topsoil);

  const { finished, error } = refinedOutside(fine, at(20_000), at(2_000), ground, topsoil);
  const { fill, cut } = finished.outside;
  expect(error).toBeLessThan(Math.max(0.1, 0.005 * fill));
  expect(Math.abs(fill - closedForm())).toBeLessThan(error);
  expect(Math.abs(fine.outside.fill - closedForm())).toBeGreaterThan(error);
  expect(cut).toBe(0);
});
