import { describe, expect, it } from "vitest";
import { locate, tinAt } from "../../src/terrain";
import { expectSound, type Spot, surfaceOf } from "./surfaces";

describe("a surface of many triangles", () => {
  const across = 170;
  const spots = Array.from({ length: across * across }, (_, i): Spot => {
    // Strewn in an order that has nothing to do with the place.
    const k = (i * 7919) % (across * across);
    const [x, y] = [k % across, Math.floor(k / across)];
    return [x + 0.2 * Math.sin(k), y + 0.2 * Math.cos(3 * k), 3 * x - y];
  });
  const tin = surfaceOf(spots);

  it("is sound, and its points have their heights", () => {
    expectSound(tin, spots.length);
    for (let i = 0; i < spots.length; i += 97) {
      const [x, y, z] = spots[i] as Spot;
      expect(tinAt(tin, x, y)?.z).toBeCloseTo(z, 9);
    }
  });

  it("has neighbours near each other in memory, for the most part", () => {
    const near = Array.from({ length: 1000 }, (_, i) => {
      const [x, y] = [10 + 0.14 * i, 80.3];
      return Math.abs(locate(tin, x + 0.14, y) - locate(tin, x, y));
    }).sort((a, b) => a - b);
    expect(near[500]).toBeLessThan(100);
  });
});
