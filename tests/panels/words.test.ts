import { describe, expect, it } from "vitest";
import { rectangleOutline } from "../../src/document/commands/building";
import { counted, listed, wallName, wallSide } from "../../src/panels/words";
import { compass } from "../../src/units";

describe("directions", () => {
  it.each([
    [0, 1, 0, "north"],
    [1, 0, 0, "east"],
    [0, -1, 0, "south"],
    [-1, 1, 0, "north-west"],
    [1, 1, Math.PI / 4, "north"],
    [0, 1, Math.PI / 2, "west"],
  ])("(%d, %d) with north turned by %d: %s", (dx, dy, north, word) => {
    expect(compass([dx, dy], north)).toBe(word);
  });

  it("names the side that a wall closes, whichever way round the corners run", () => {
    const outline = rectangleOutline([0, 0], 10, 6);
    expect([0, 1, 2, 3].map((wall) => wallSide(outline, wall, 0))).toEqual([
      "north",
      "east",
      "south",
      "west",
    ]);
    const reversed = [...outline].reverse();
    expect([0, 1, 2, 3].map((wall) => wallSide(reversed, wall, 0))).toEqual([
      "south",
      "east",
      "north",
      "west",
    ]);
    expect(wallName(4, 3)).toBe("D–A");
  });
});

describe("counts and lists", () => {
  it("take the right form", () => {
    expect(counted(1396471, "load")).toBe("1\u202f396\u202f471 loads");
    expect([counted(1, "load"), counted(0, "load"), counted(12, "load")]).toEqual([
      "1 load",
      "0 loads",
      "12 loads",
    ]);
    expect([listed([]), listed(["A"]), listed(["A", "B"]), listed(["A", "B", "C"])]).toEqual([
      "",
      "A",
      "A and B",
      "A, B and C",
    ]);
  });
});
