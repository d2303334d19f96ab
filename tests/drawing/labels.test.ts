import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Box, boxesOverlap, createLabels } from "../../src/drawing/labels";

const mm = (from: number, to: number) => fc.integer({ min: from * 10, max: to * 10 }).map((n) => n / 10);
const box: fc.Arbitrary<Box> = fc.record({
  x: mm(-60, 60),
  y: mm(-60, 60),
  width: mm(1, 40),
  height: mm(1, 8),
  angle: fc.integer({ min: -180, max: 180 }).map((degrees) => (degrees * Math.PI) / 180),
});

/** Is the place inside the box? The plain definition, as a witness. */
function holds(one: Box, x: number, y: number): boolean {
  const [dx, dy] = [x - one.x, y - one.y];
  const along = dx * Math.cos(one.angle) + dy * Math.sin(one.angle);
  const across = -dx * Math.sin(one.angle) + dy * Math.cos(one.angle);
  return Math.abs(along) <= one.width / 2 && Math.abs(across) <= one.height / 2;
}

function samples(one: Box): [number, number][] {
  const places: [number, number][] = [];
  for (let u = -10; u <= 10; u++) {
    for (let v = -10; v <= 10; v++) {
      const [along, across] = [(u / 20) * one.width * 0.999, (v / 20) * one.height * 0.999];
      const [c, s] = [Math.cos(one.angle), Math.sin(one.angle)];
      places.push([one.x + along * c - across * s, one.y + along * s + across * c]);
    }
  }
  return places;
}

describe("turned boxes", () => {
  it("overlap when upright ones do: 4 wide at 0 and 3.9 apart yes, 4.1 apart no", () => {
    const at = (x: number): Box => ({ x, y: 0, width: 4, height: 2, angle: 0 });
    expect(boxesOverlap(at(0), at(3.9))).toBe(true);
    expect(boxesOverlap(at(0), at(4.1))).toBe(false);
  });

  it("at 45° miss a corner that their upright bounds would hit", () => {
    const slanted: Box = { x: 0, y: 0, width: 20, height: 1, angle: Math.PI / 4 };
    expect(boxesOverlap(slanted, { x: 6, y: -6, width: 2, height: 2, angle: 0 })).toBe(false);
    expect(boxesOverlap(slanted, { x: 6, y: 6, width: 2, height: 2, angle: 0 })).toBe(true);
  });

  it("are found to overlap whenever a place lies in both", () => {
    fc.assert(
      fc.property(box, box, (a, b) => {
        const shared = samples(a).some(([x, y]) => holds(b, x, y));
        if (shared) expect(boxesOverlap(a, b)).toBe(true);
        expect(boxesOverlap(a, b)).toBe(boxesOverlap(b, a));
      }),
    );
  });
});

describe("the register of taken paper", () => {
  it("answers as a search through all boxes would, also after a group was forgotten", () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(box, fc.boolean()), { maxLength: 30 }), box, (list, asked) => {
        const labels = createLabels();
        for (const [one, shots] of list) labels.take(shots ? "shots" : "lot", one);
        expect(labels.fits(asked)).toBe(!list.some(([one]) => boxesOverlap(asked, one)));
        labels.forget("shots");
        expect(labels.fits(asked)).toBe(!list.some(([one, shots]) => !shots && boxesOverlap(asked, one)));
      }),
    );
  });

  it("keeps texts off lines unless only texts are asked about", () => {
    const labels = createLabels();
    labels.takeLine("walls", [0, 0, 100, 100], 0.5);
    const across: Box = { x: 50, y: 50, width: 10, height: 3, angle: 0 };
    expect(labels.fits(across)).toBe(false);
    expect(labels.fits(across, "lines")).toBe(true);
    labels.takeLine("lot", [0, 0, 100, 100], 0.5, true);
    expect(labels.fits(across, "lines")).toBe(false);
    expect(labels.fits(across, "firm-lines")).toBe(true);
    expect(labels.fits({ ...across, x: 60, y: 40 })).toBe(true);
  });
});
