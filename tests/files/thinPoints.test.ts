import { describe, expect, it } from "vitest";
import type { IncomingPoints } from "../../src/files/incoming";
import { thinPoints } from "../../src/files/incoming/thinPoints";

function cloud(side: number, height: (x: number, y: number) => number): IncomingPoints {
  const count = side * side;
  const at = (i: number) => [i % side, Math.floor(i / side)] as const;
  return {
    names: Array.from({ length: count }, (_, i) => `p${i}`),
    x: Float64Array.from({ length: count }, (_, i) => at(i)[0]),
    y: Float64Array.from({ length: count }, (_, i) => at(i)[1]),
    z: Float64Array.from({ length: count }, (_, i) => height(...at(i))),
  };
}

describe("a cloud of points, thinned", () => {
  it("stays as it is while it is small", () => {
    expect(
      thinPoints(
        cloud(10, () => 3),
        100,
      ),
    ).toBeNull();
  });

  it("keeps a tenth of a slope without any loss of height, its outermost places among them", () => {
    const thin = thinPoints(
      cloud(100, (x, y) => 30 + x / 20 - y / 50),
      1000,
    );
    expect(thin?.points.x.length).toBeGreaterThan(700);
    expect(thin?.points.x.length).toBeLessThanOrEqual(1004);
    expect(thin?.greatest).toBeCloseTo(0, 9);
    expect(Math.min(...(thin?.points.x ?? []))).toBe(0);
    expect(Math.max(...(thin?.points.y ?? []))).toBe(99);
    const first = thin?.points;
    expect(first?.names[0]).toBe(`p${(first?.x[0] ?? 0) + 100 * (first?.y[0] ?? 0)}`);
  });

  it("says by how much a bump that was left out stands off", () => {
    const points = cloud(100, () => 5);
    const full = thinPoints(points, 1000);
    const chosen = new Set(full?.points.names);
    const bump = points.names.findIndex((name, i) => !chosen.has(name) && points.x[i] === 50);
    points.z[bump] = 5.75;
    const thin = thinPoints(points, 1000);
    expect(thin?.greatest).toBeCloseTo(0.75, 12);
    expect(thin?.rms).toBeGreaterThan(0);
    expect(thin?.rms).toBeLessThan(0.02);
  });

  it("of a gentle hillside at random places lies close to what was left out, along the rim as within", () => {
    let seed = 7;
    const random = () => {
      seed = (seed * 16_807) % 2_147_483_647;
      return seed / 2_147_483_647;
    };
    const x = Float64Array.from({ length: 20_000 }, () => 300 * random());
    const y = Float64Array.from({ length: 20_000 }, () => 300 * random());
    const z = x.map((east, i) => 30 + 2 * Math.sin(east / 60) + 2 * Math.cos((y[i] as number) / 50));
    const thin = thinPoints({ names: [], x, y, z }, 5000);
    // Squares of about 5 m on curves of a radius over 500 m: 5²/8/500 is under a centimetre; a few squares make a few of them.
    expect(thin?.greatest).toBeLessThan(0.12);
    expect(thin?.rms).toBeLessThan(0.02);
    expect(thin?.points.x.length).toBeLessThan(5200);
  });

  it("takes points in one line, and points without heights", () => {
    const line: IncomingPoints = {
      names: [],
      x: Float64Array.from({ length: 500 }, (_, i) => i),
      y: new Float64Array(500),
      z: new Float64Array(500).fill(Number.NaN),
    };
    const thin = thinPoints(line, 100);
    expect(thin?.points.x.length).toBeLessThanOrEqual(104);
    expect(thin?.points.x.length).toBeGreaterThan(50);
    expect(thin).toMatchObject({ greatest: 0, rms: 0 });
  });
});
