import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Point } from "../../src/geometry";
import {
  doubtfulRings,
  doubtfulTriangles,
  groundAt,
  makeGround,
  pointSpacing,
  tinAt,
  triangulateWithLines,
} from "../../src/terrain";
import { columns, type Spot, surfaceOf } from "./surfaces";

function lattice(count: number, step: number, z: (x: number, y: number) => number = () => 0): Spot[] {
  return Array.from({ length: count * count }, (_, i): Spot => {
    const [x, y] = [(i % count) * step, Math.floor(i / count) * step];
    return [x, y, z(x, y)];
  });
}

const none = { holes: [], edges: [], longestEdge: null };
const reach = { minX: -5, minY: -5, maxX: 45, maxY: 45 };

describe("ground between the points that is a guess all the same", () => {
  it("nothing on an even lattice", () => {
    const tin = surfaceOf(lattice(5, 10));
    expect(doubtfulTriangles(tin, none)).not.toContain(1);
    expect(pointSpacing(tin)).toBe(8);
  });

  it("a hole that lines force in: its inside is a guess, what is beside it isn't", () => {
    const hole: Point[] = [
      [12, 12],
      [28, 12],
      [28, 28],
      [12, 28],
    ];
    const ring = [...hole, hole[0] as Point];
    const line = {
      name: "pond",
      x: ring.map(([x]) => x),
      y: ring.map(([, y]) => y),
      z: ring.map(() => null),
    };
    const made = triangulateWithLines(...columns(lattice(5, 10)), [line]);
    if (!made.ok) throw new Error(made.reason);
    const doubtful = doubtfulTriangles(made.tin, { ...none, holes: [hole] });
    const ground = makeGround(made.tin, reach, doubtful);
    for (let i = 0; i < 400; i++) {
      const [x, y] = [2 * (i % 20) + 1.05, 2 * Math.floor(i / 20) + 1.07];
      const inside = x > 12 && x < 28 && y > 12 && y < 28;
      expect(groundAt(ground, x, y)?.guessed).toBe(inside);
    }
    const rings = doubtfulRings(ground.tin, ground.guessed, ground.measuredTriangles);
    expect(rings).toHaveLength(1);
    expect(areaOf(rings[0] as Float64Array)).toBeCloseTo(256, 9);
  });

  it("beyond a drawn edge all is a guess", () => {
    const tin = surfaceOf(lattice(5, 10));
    const edge: Point[] = [
      [0, 0],
      [20, 0],
      [20, 40],
      [0, 40],
    ];
    const ground = makeGround(tin, reach, doubtfulTriangles(tin, { ...none, edges: [edge] }));
    expect(groundAt(ground, 11, 13)?.guessed).toBe(false);
    expect(groundAt(ground, 31, 13)?.guessed).toBe(true);
  });

  it("long triangles along a bay of the rim go, from outside inwards, and no others", () => {
    // An L of points: the bay between its arms is bridged by long triangles.
    const arms = lattice(5, 10).filter(([x, y]) => x <= 10 || y <= 10);
    const tin = surfaceOf(arms);
    const ground = makeGround(tin, reach, doubtfulTriangles(tin, { ...none, longestEdge: 15 }));
    expect(groundAt(ground, 24, 17)?.guessed).toBe(true);
    expect(groundAt(ground, 5.1, 34)?.guessed).toBe(false);
    expect(groundAt(ground, 34, 5.1)?.guessed).toBe(false);
    expect(doubtfulTriangles(tin, { ...none, longestEdge: 0 })).toEqual(doubtfulTriangles(tin, none));
  });

  it("places farther from any point than twice the spacing", () => {
    const spots = lattice(13, 5).filter(([x, y]) => Math.hypot(x - 30, y - 30) > 19);
    const tin = surfaceOf(spots);
    const ground = makeGround(tin, { minX: 0, minY: 0, maxX: 60, maxY: 60 }, doubtfulTriangles(tin, none));
    expect(groundAt(ground, 30.1, 30.2)?.guessed).toBe(true);
    expect(groundAt(ground, 3.1, 30.2)?.guessed).toBe(false);
  });

  it("rings hold exactly the marked triangles' area, whichever are marked", () => {
    const tin = surfaceOf(lattice(6, 7, (x, y) => x * y));
    const count = tin.triangles.length / 3;
    fc.assert(
      fc.property(fc.array(fc.constantFrom(0, 1), { minLength: count, maxLength: count }), (marks) => {
        const rings = doubtfulRings(tin, Uint8Array.from(marks));
        const sum = rings.reduce((total, ring) => total + areaOf(ring), 0);
        expect(sum).toBeCloseTo(24.5 * marks.filter((mark) => mark === 1).length, 8);
      }),
    );
  });
});

describe("a shot's height", () => {
  const small = fc.integer({ min: 0, max: 40 });
  const points = fc.uniqueArray(fc.tuple(small, small, small), {
    minLength: 5,
    maxLength: 40,
    selector: ([x, y]) => `${x} ${y}`,
  });

  it("changes nothing beyond its own triangles, breaklines or not", () => {
    const line = { name: "ditch", x: [3.5, 30.5], y: [4.5, 33.5], z: [1, 2] };
    fc.assert(
      fc.property(points, fc.nat(), fc.boolean(), (spots, pick, lined) => {
        const changed = pick % spots.length;
        const other = spots.map(([x, y, z], i): Spot => [x, y, i === changed ? z + 7 : z]);
        const made = triangulateWithLines(...columns(spots), lined ? [line] : []);
        const again = triangulateWithLines(...columns(other), lined ? [line] : []);
        fc.pre(made.ok && again.ok);
        expect(again.tin.triangles).toEqual(made.tin.triangles);
        for (let e = 0; e < made.tin.triangles.length; e += 3) {
          const corners = made.tin.triangles.subarray(e, e + 3);
          if (corners.includes(changed)) continue;
          const middle = (of: Float64Array) => corners.reduce((sum, i) => sum + (of[i] as number), 0) / 3;
          const [x, y] = [middle(made.tin.x), middle(made.tin.y)];
          expect(tinAt(again.tin, x, y)).toEqual(tinAt(made.tin, x, y));
        }
      }),
    );
  });
});

function areaOf(ring: Float64Array): number {
  let twice = 0;
  for (let i = 0; i < ring.length; i += 2) {
    const j = (i + 2) % ring.length;
    twice += (ring[i] as number) * (ring[j + 1] as number) - (ring[j] as number) * (ring[i + 1] as number);
  }
  return twice / 2;
}
