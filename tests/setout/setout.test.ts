import { describe, expect, it } from "vitest";
import { setout } from "../../src/setout";

const rows = [{ what: "top of wall", where: "all round", height: 101.2 }];
const mark = { name: "bolt", height: 100 };

describe("set-out", () => {
  it("gives height above the mark and the reading to look for: 102.5 − 101.2", () => {
    const [row] = setout({ mark, beam: 102.5 }, rows).rows;
    expect(row?.fromMark).toBeCloseTo(1.2, 12);
    expect(row?.reading).toBeCloseTo(1.3, 12);
  });

  it("has no reading before one on the mark is known, and nothing to count from without a mark", () => {
    expect(setout({ mark, beam: null }, rows).rows[0]).toMatchObject({ reading: null });
    expect(setout({ mark: null, beam: null }, rows)).toMatchObject({
      mark: null,
      markHeight: null,
      rows: [{ fromMark: null }],
    });
  });

  it("is negative for what lies above the beam", () => {
    expect(setout({ mark, beam: 101 }, rows).rows[0]?.reading).toBeCloseTo(-0.2, 12);
  });
});
