import { describe, expect, it } from "vitest";
import { readFromLast, readPair } from "../../src/canvas/typed/eastNorth";
import { newProject } from "../../src/document";
import { handOn, metricProject } from "./support/hand";

describe("two lengths that give a place", () => {
  it.each([
    ["12, 5", 12, 5],
    ["12,5, 8,25", 12.5, 8.25],
    ["12 W, 5 S", -12, -5],
    ["5 n; 12 w", -12, 5],
    ["3, -4", 3, -4],
    ["40 in, 1 m", 1.016, 1],
    ["2' 6\"; 1'", 0.762, 0.3048],
    ["0,0", 0, 0],
    ["0,5", 0, 5],
    ["10',0", 3.048, 0],
    ["-30', 40'", -9.144, 12.192],
    ["3,-4", 3, -4],
  ])("%s", (text, east, north) => {
    const read = readPair(text, "m");
    if (typeof read === "string") throw new Error(read);
    expect(read.east).toBeCloseTo(east, 9);
    expect(read.north).toBeCloseTo(north, 9);
  });

  it.each(["60,50", "60, 50", "60 ,50", "60;50", "60' 0\",50"])("%s is a place in feet", (text) => {
    const read = readPair(text, "ft-in");
    if (typeof read === "string") throw new Error(read);
    expect(read.east).toBeCloseTo(60 * 0.3048, 9);
    expect(read.north).toBeCloseTo(50 * 0.3048, 9);
  });

  it("a comma that may be a decimal one, or part thousands, is asked about: how to type it is said", () => {
    for (const notation of ["m", "cm", "mm"] as const)
      expect(readPair("60,50", notation)).toMatch(/60,50 can be read as one length.*space after the comma/);
    expect(readPair("1,250", "ft-in")).toMatch(/space after the comma/);
  });

  it.each([
    ["12", /how far east/],
    ["1, 2, 3", /how far east/],
    ["5 N, 3 S", /Both lengths go north/],
    ["left, 3", /left/],
  ])("%s is answered in words", (text, words) => {
    expect(readPair(text, "m")).toMatch(words);
  });
});

describe("two lengths from the place before", () => {
  it.each([
    ["@12, 5", 12, 5],
    ["@-3, 4", -3, 4],
    ["right 12, up 5", 12, 5],
    ["12 left, 5 down", -12, -5],
    ["up 8", 0, 8],
    ["@2' 6\" left", -0.762, 0],
  ])("%s", (text, right, up) => {
    const read = readFromLast(text, "m");
    if (typeof read === "string") throw new Error(read);
    expect(read.right).toBeCloseTo(right, 9);
    expect(read.up).toBeCloseTo(up, 9);
  });

  it.each([
    ["@12", /how far east/],
    ["up 3, down 2", /Both lengths go north/],
  ])("%s is answered in words", (text, words) => {
    expect(readFromLast(text, "m")).toMatch(words);
  });
});

describe("places typed while a line is drawn", () => {
  it("are counted from the plan's origin, with @ or by sides from the one before; lengths go between", () => {
    const hand = handOn(metricProject(), "lot");
    for (const text of ["2, 3", "22, 3", "@0; 10"]) {
      hand.type(text);
      hand.key("Enter");
    }
    hand.key("ArrowLeft");
    hand.type("20");
    hand.key("Enter");
    hand.key("Enter");
    expect(hand.project.lot.outline).toEqual([
      [2, 3],
      [22, 3],
      [22, 13],
      [2, 13],
    ]);
  });

  it("are brought into sight", () => {
    const hand = handOn(metricProject(), "lot");
    for (const text of ["2, 3", "400, 3"]) {
      hand.type(text);
      hand.key("Enter");
    }
    expect(hand.shownPlaces).toEqual([
      [2, 3],
      [400, 3],
    ]);
  });

  it("a refused one is typed anew, not on", () => {
    const hand = handOn(metricProject(), "lot");
    hand.type("12");
    hand.key("Enter");
    expect(hand.said).toHaveLength(1);
    hand.type("4, 5");
    hand.key("Enter");
    expect(hand.state()).toBe("next");
    expect(hand.shownPlaces).toEqual([[4, 5]]);
  });

  it("go on by a comma alone in feet and inches, which have no decimal comma", () => {
    const hand = handOn(newProject(), "lot");
    for (const text of ["0,0", "120,0", "120,100", "0,100"]) {
      hand.type(text);
      hand.key("Enter");
    }
    hand.key("Enter");
    expect(hand.said).toEqual([]);
    const feet = hand.project.lot.outline.map(([x, y]) => [Math.round(x / 0.3048), Math.round(y / 0.3048)]);
    expect(feet).toEqual([
      [0, 0],
      [120, 0],
      [120, 100],
      [0, 100],
    ]);
  });

  it("that can be a length in metres too are asked about with the way; what is typed next takes their place", () => {
    const hand = handOn(metricProject(), "lot");
    for (const text of ["0,0", "120,5"]) {
      hand.type(text);
      hand.key("Enter");
    }
    expect(hand.said.at(-1)).toMatch(/^Which way\?.* A place\? Type a space after the comma: 120, 5\.$/);
    hand.type("120, 5");
    hand.key("Enter");
    expect(hand.said).toHaveLength(1);
    expect(hand.shownPlaces.at(-1)).toEqual([120, 5]);
    // A length without a comma is asked for its way alone, and holds once the way is shown.
    hand.type("7");
    hand.key("Enter");
    expect(hand.said.at(-1)).not.toMatch(/A place/);
    hand.key("ArrowUp");
    hand.key("Enter");
    expect(hand.shownPlaces.at(-1)).toEqual([120, 12]);
  });

  it("that can be thousands of feet are asked about, with how to type the place", () => {
    const hand = handOn(newProject(), "lot");
    for (const text of ["0,0", "12,100"]) {
      hand.type(text);
      hand.key("Enter");
    }
    expect(hand.said).toEqual([
      expect.stringMatching(/12100 or 12\.100 feet.* space after the comma: 12, 100\.$/),
    ]);
  });

  it("one length alone gives no first place, and nothing is lost", () => {
    const hand = handOn(metricProject(), "lot");
    hand.type("12");
    hand.key("Enter");
    expect(hand.said[0]).toMatch(/how far east/);
    expect(hand.state()).toBe("first");
  });
});

it("a minus begins a place", () => {
  const hand = handOn(metricProject(), "lot");
  hand.click(0, 0);
  hand.type("-6, 8");
  hand.key("Enter");
  hand.click(4, 20);
  hand.key("Enter");
  expect(hand.project.lot.outline[1]).toEqual([-6, 8]);
});
