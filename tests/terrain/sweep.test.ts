import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { triangulate } from "../../src/terrain";
import { delaunayMesh } from "../../src/terrain/delaunay";
import { settleEdges } from "../../src/terrain/mesh";
import { sweptMesh } from "../../src/terrain/sweep";
import { columns, expectSound, type Spot } from "./surfaces";

describe("points on which rounding would lose one", () => {
  it("four a millimetre apart in line, and one 40 m off: all are in the surface", () => {
    const spots: Spot[] = [
      [0, 0, 1],
      [0, 0.001, 2],
      [0, 0.002, 3],
      [0, 0.003, 4],
      [0.003, 40, 5],
    ];
    const made = triangulate(...columns(spots));
    expect(made.ok).toBe(true);
    if (made.ok) {
      expectSound(made.tin, 5);
      expect(new Set(made.tin.triangles).size).toBe(5);
    }
  });
});

describe("the swept triangles", () => {
  const place = fc.integer({ min: 0, max: 9 });
  const places = fc.uniqueArray(fc.tuple(place, place), {
    minLength: 3,
    maxLength: 40,
    selector: ([x, y]) => `${x} ${y}`,
  });

  it("put right, are the triangles of the usual way", () => {
    fc.assert(
      fc.property(places, (points) => {
        const units = Float64Array.from(points.flat());
        const mesh = sweptMesh(units);
        const usual = delaunayMesh(units);
        expect(mesh === null).toBe(usual === null);
        if (!mesh || !usual) return;
        settleEdges(
          mesh,
          Array.from(mesh.halfedges, (_, e) => e),
        );
        expect(named(mesh.triangles)).toEqual(named(usual.triangles));
      }),
    );
  });
});

/** Each triangle from its least corner on, in order. */
function named(triangles: Uint32Array): string[] {
  return Array.from({ length: triangles.length / 3 }, (_, t) => {
    const corners = Array.from(triangles.subarray(3 * t, 3 * t + 3));
    const first = corners.indexOf(Math.min(...corners));
    return [0, 1, 2].map((k) => corners[(first + k) % 3]).join(" ");
  }).sort();
}
