import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { displaySchema } from "../../src/document/schema";
import { depthClassAt, depthClassEdges, depthClasses } from "../../src/drawing/depth-classes";

const display = (length: string) => displaySchema.parse({ length });

describe("depth classes", () => {
  it("have round edges in the reader's unit and carry words", () => {
    const words = (length: string) => depthClasses(display(length)).map((one) => one.words);
    expect(words("ft-in")).toEqual([
      "over 18″ of cut",
      "9 to 18″ of cut",
      "4 to 9″ of cut",
      "½ to 4″ of cut",
      "no change",
      "½ to 4″ of fill",
      "4 to 9″ of fill",
      "9 to 18″ of fill",
      "over 18″ of fill",
    ]);
    expect(words("m")[8]).toBe("over 500 mm of fill");
    expect(words("mm")[3]).toBe("10 to 100 mm of cut");
    expect(words("ft")[7]).toBe("0.75 to 1.50′ of fill");
  });

  it("cover every depth without gap, cut below fill", () => {
    for (const length of ["ft-in", "ft", "m"]) {
      const classes = depthClasses(display(length));
      expect(classes[0]?.from).toBe(Number.NEGATIVE_INFINITY);
      expect(classes[8]?.to).toBe(Number.POSITIVE_INFINITY);
      for (const [i, one] of classes.slice(1).entries()) expect(one.from).toBe(classes[i]?.to);
    }
  });

  it("are looked up by edges: 9″ of fill (228.6 mm) opens a class, a hair less doesn't", () => {
    const edges = depthClassEdges(display("ft-in"));
    const name = (depth: number) => depthClasses(display("ft-in"))[depthClassAt(edges, depth)]?.id;
    expect(name(0.2286)).toBe("fill2");
    expect(name(0.2285)).toBe("fill1");
    expect(name(0)).toBe("none");
    expect(name(-0.1)).toBe("cut0");
    expect(name(-0.5)).toBe("cut3");
    expect(depthClassAt(edges, Number.NaN)).toBe(-1);
  });

  it("put each depth into the class whose range holds it", () => {
    fc.assert(
      fc.property(fc.integer({ min: -2000, max: 2000 }), (millimetres) => {
        const depth = millimetres / 1000;
        const found = depthClasses(display("m"))[depthClassAt(depthClassEdges(display("m")), depth)];
        expect(found && found.from <= depth && depth < found.to).toBe(true);
      }),
    );
  });
});
