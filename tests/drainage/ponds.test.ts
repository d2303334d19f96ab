import { describe, expect, it } from "vitest";
import { findPonds, type WaterGround } from "../../src/drainage";

function groundOf(height: (x: number, y: number) => number, cell = 0.2, size = 24): WaterGround {
  const columns = Math.round(size / cell);
  const grid = { x0: -size / 2, y0: -size / 2, cell, columns, rows: columns };
  const z = new Float64Array(columns * columns);
  for (let j = 0, i = 0; j < columns; j++)
    for (let k = 0; k < columns; k++, i++)
      z[i] = height(grid.x0 + (k + 0.5) * cell, grid.y0 + (j + 0.5) * cell);
  return { grid, z, guessed: new Uint8Array(z.length), blocked: new Uint8Array(z.length) };
}

/** A bowl 5 m across and 0.5 m deep in level ground that falls away 8 m from its middle. */
const bowl = (x: number, y: number) => {
  const r = Math.hypot(x, y);
  return r < 5 ? 10 - 0.5 * (1 - (r / 5) ** 2) : 10 - Math.max(0, r - 8) * 0.1;
};

describe("ponds", () => {
  it("fill a paraboloid bowl to its rim: depth h, area πr², volume ½πr²h", () => {
    const [pond, ...others] = findPonds(groundOf(bowl));
    expect(others).toEqual([]);
    expect(pond?.depth).toBeCloseTo(0.5, 2);
    expect(pond?.waterLevel).toBeCloseTo(10, 9);
    expect(pond?.volume).toBeCloseTo((Math.PI * 25 * 0.5) / 2, 0);
    expect((pond?.area ?? 0) / (Math.PI * 25)).toBeCloseTo(1, 1);
    expect(Math.hypot(...(pond?.at ?? [9, 9]))).toBeLessThan(0.3);
  });

  it("are drawn where the water's edge is", () => {
    const tilted = (x: number, y: number) => Math.max(bowl(x, y), -1) + (Math.hypot(x, y) < 5 ? 0 : 0.2);
    const [pond] = findPonds(
      groundOf((x, y) => (x > 4 && Math.abs(y) < 1 ? 9.75 - (x - 4) * 0.01 : tilted(x, y))),
    );
    // The channel takes the rim off down to the bowl's ground 3.9 m from its middle: 10 − 0.5 (1 − 0.61).
    expect(pond?.waterLevel).toBeCloseTo(9.804, 3);
    const ring = pond?.rings[0] as Float64Array;
    const radii = Array.from(
      { length: ring.length / 2 },
      (_, i) => [ring[2 * i] ?? 0, ring[2 * i + 1] ?? 0] as const,
    )
      .filter(([x]) => x < 2)
      .map(([x, y]) => Math.hypot(x, y));
    const want = 5 * Math.sqrt(1 - (10 - (pond?.waterLevel ?? 0)) / 0.5);
    for (const radius of radii) expect(Math.abs(radius - want)).toBeLessThan(0.02);
  });

  it.each([
    ["shallower than 25 mm", (x: number, y: number) => 10 - (Math.hypot(x, y) < 3 ? 0.02 : 0)],
    ["smaller than half a square metre", (x: number, y: number) => 10 - (Math.hypot(x, y) < 0.35 ? 0.2 : 0)],
    ["on a plane", (x: number, y: number) => 10 + 0.02 * x + 0.01 * y],
  ])("leave out what is %s", (_why, height) => {
    expect(findPonds(groundOf(height))).toEqual([]);
  });

  it("stand against a wall that dams the slope, and not inside it", () => {
    const ground = groundOf((x, y) => 10 + 0.05 * x + 0.02 * Math.abs(y));
    const { columns } = ground.grid;
    // A U of walls open uphill: water from the hill stands in it.
    ground.z.forEach((_, i) => {
      const x = ground.grid.x0 + ((i % columns) + 0.5) * 0.2;
      const y = ground.grid.y0 + (Math.floor(i / columns) + 0.5) * 0.2;
      const back = Math.abs(x) < 0.5 && Math.abs(y) < 5;
      const arm = x > 0 && x < 5 && Math.abs(Math.abs(y) - 5) < 0.5;
      if (back || arm) ground.blocked[i] = 1;
    });
    const [pond] = findPonds(ground);
    expect(pond?.at[0]).toBeGreaterThan(0.4);
    expect(pond?.at[0]).toBeLessThan(1);
    // It rises to the ground at the ends of the arms: 5 % over the 4.5 m in front of the back wall.
    expect(pond?.depth).toBeGreaterThan(0.2);
  });

  it("say whether their water rests on guessed ground", () => {
    const ground = groundOf(bowl);
    expect(findPonds(ground)[0]?.guessed).toBe(false);
    ground.guessed.fill(1, ground.z.length / 2);
    expect(findPonds(ground)[0]?.guessed).toBe(true);
  });
});
