import { describe, expect, it } from "vitest";
import { boundsOf, outermost, type Point } from "../../src/geometry";

/** A repeatable heap of places. */
function places(count: number, seed: number) {
  let state = seed;
  const random = () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
  return Array.from({ length: count }, () => ({ x: 40 * random() - 7, y: 25 * random() + 3 }));
}

function boxAt(list: readonly { x: number; y: number }[], angle: number) {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  return boundsOf(list.map(({ x, y }): Point => [x * c - y * s, x * s + y * c]));
}

describe("places that a turned box may rest on", () => {
  it("give the same box as all of them at any turn, and are few", () => {
    const all = places(4000, 11);
    const few = outermost(all);
    expect(few.length).toBeLessThan(400);
    for (let turn = 0; turn < 6.3; turn += 0.17) expect(boxAt(few, turn)).toEqual(boxAt(all, turn));
  });

  it("are all of them on a line, at one place, and of two", () => {
    const line = [0, 1, 2, 3].map((i) => ({ x: i, y: 2 * i }));
    expect(outermost(line)).toEqual(line);
    expect(outermost([line[1], line[1], line[1]] as typeof line)).toHaveLength(3);
    expect(outermost(line.slice(0, 2))).toEqual(line.slice(0, 2));
    expect(outermost([])).toEqual([]);
  });
});
