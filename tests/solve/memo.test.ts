import { describe, expect, it } from "vitest";
import { forgetful, remember, steady } from "../../src/solve/memo";

describe("remember", () => {
  it("works again only when an argument is another object or number", () => {
    let runs = 0;
    const stage = remember((part: object, by: number) => ({ part, by, run: ++runs }));
    const one = {};
    expect(stage(one, 2)).toBe(stage(one, 2));
    expect(stage.knows(one, 2)).toBe(true);
    expect(stage.knows(one, 3)).toBe(false);
    stage({}, 2);
    expect(runs).toBe(2);
    stage(one, 2);
    expect(runs).toBe(3);
  });

  it("takes NaN for itself and a thrown error for no answer", () => {
    let runs = 0;
    const stage = remember((by: number) => {
      runs++;
      if (by > 1) throw new Error("no");
      return by;
    });
    stage(Number.NaN);
    stage(Number.NaN);
    expect(runs).toBe(1);
    expect(() => stage(2)).toThrow("no");
    expect(stage.knows(2)).toBe(false);
  });
});

describe("forgetful", () => {
  it("always works anew", () => {
    let runs = 0;
    const stage = forgetful(() => ++runs);
    stage();
    expect(stage()).toBe(2);
    expect(stage.knows()).toBe(false);
  });
});

describe("steady", () => {
  it("hands back the old object while the new one says the same", () => {
    const keep = steady<{ readonly n: number }>((a, b) => a.n === b.n);
    const first = keep({ n: 1 });
    const again = { n: 1 };
    expect(keep(again)).toBe(first);
    expect(keep(again)).toBe(first);
    expect(keep({ n: 2 })).toEqual({ n: 2 });
    expect(keep(again)).toBe(again);
  });
});
