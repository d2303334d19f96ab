import { describe, expect, it } from "vitest";
import { joiningLine, joiningPoints } from "../../src/app/import/join";

const nothing = { x: new Float64Array(0), y: new Float64Array(0), z: new Float64Array(0) };

describe("what joins of a file", () => {
  it("takes points and the corners of triangles, each place once, and no height for NaN", () => {
    const joining = joiningPoints({
      points: {
        names: ["a", ""],
        x: Float64Array.of(0, 5),
        y: Float64Array.of(0, 5),
        z: Float64Array.of(30, Number.NaN),
      },
      faces: {
        x: Float64Array.of(0, 9, 9),
        y: Float64Array.of(0, 0, 0),
        z: Float64Array.of(31, 32, 33),
        triangles: Uint32Array.of(0, 1, 2),
      },
    });
    expect(joining).toEqual([
      { name: "a", x: 0, y: 0, z: 30 },
      { name: "", x: 5, y: 5, z: null },
      { name: "", x: 9, y: 0, z: 32 },
    ]);
    expect(
      joiningPoints({
        points: { names: [], ...nothing },
        faces: { ...nothing, triangles: new Uint32Array(0) },
      }),
    ).toEqual([]);
  });

  it("brings a closed line back to its first corner, but not one that goes round anyway", () => {
    const line = { name: "ditch", closed: true, xyz: Float64Array.of(0, 0, 1, 4, 0, Number.NaN, 4, 4, 2) };
    expect(joiningLine(line, "ridge")).toEqual({
      kind: "ridge",
      name: "ditch",
      points: [
        [0, 0, 1],
        [4, 0, null],
        [4, 4, 2],
        [0, 0, 1],
      ],
    });
    expect(joiningLine({ ...line, name: "" }, "hole")).toEqual({
      kind: "hole",
      points: [
        [0, 0, 1],
        [4, 0, null],
        [4, 4, 2],
      ],
    });
  });
});
