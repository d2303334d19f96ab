/** Grounds drawn at random, for round trips: coordinates on whole millimetres, names with every kind of letter. */
import fc from "fast-check";
import type { Outgoing } from "../../../src/files/outgoing";
import { triangulate } from "../../../src/terrain";

const mm = (least: number, most: number) =>
  fc.integer({ min: least, max: most }).map((whole) => whole / 1000);
export const names = fc.constantFrom(
  "NE stake",
  "12",
  "Böschung; oben",
  'the "old" wall',
  "x,y",
  "½ & <way>",
  "坡顶",
  "",
);
const corner = fc.tuple(mm(-200_000, 200_000), mm(-200_000, 200_000), mm(-5000, 120_000));

export const grounds: fc.Arbitrary<Outgoing> = fc
  .record({
    corners: fc.uniqueArray(corner, { minLength: 3, maxLength: 30, selector: ([x, y]) => `${x} ${y}` }),
    names: fc.array(names, { minLength: 30, maxLength: 30 }),
    lines: fc.array(
      fc.record({
        name: fc.constantFrom("ditch", "top of bank", "Böschung"),
        kind: fc.constantFrom("ditch", "bank-top"),
        points: fc.uniqueArray(corner, { minLength: 2, maxLength: 6, selector: ([x, y]) => `${x} ${y}` }),
      }),
      { maxLength: 3 },
    ),
    closed: fc.boolean(),
    marks: fc.uniqueArray(corner, { maxLength: 2, selector: ([x, y]) => `${x} ${y}` }),
    height: mm(0, 100_000),
  })
  .map(({ corners, names: called, lines, closed, height, marks }) => {
    const of = (k: 0 | 1 | 2) => Float64Array.from(corners, (at) => at[k]);
    const made = triangulate(of(0), of(1), of(2));
    return {
      name: 'A "lot" & <more>',
      points: corners.map(([x, y, z], i) => ({ name: called[i] ?? "", x, y, z })),
      marks: marks.map(([x, y, z], i) => ({ name: `nail ${i}`, x, y, z })),
      lines: lines.map((line) => ({ ...line, closed: closed && line.points.length > 2 })),
      contours: [
        { height, major: true, lines: [Float64Array.of(0, 0, 5.125, 1, 7, 3)] },
        { height: height + 0.5, major: false, lines: [Float64Array.of(0, 0, 4, 0, 4, 4, 0, 0)] },
      ],
      surface: made.ok ? { x: of(0), y: of(1), z: of(2), triangles: made.tin.triangles } : null,
    };
  });

/** Corners of triangles as text, in an order of their own, so that numbering doesn't matter. */
export function trianglesOf(
  part: { x: Float64Array; y: Float64Array; z: Float64Array; triangles: Uint32Array } | null,
): string[] {
  if (!part) return [];
  const all: string[] = [];
  for (let t = 0; t < part.triangles.length; t += 3) {
    const corners = [0, 1, 2].map((k) => {
      const i = part.triangles[t + k] as number;
      return `${(part.x[i] as number) + 0} ${(part.y[i] as number) + 0} ${(part.z[i] as number) + 0}`;
    });
    all.push(corners.sort().join(" | "));
  }
  return all.sort();
}
