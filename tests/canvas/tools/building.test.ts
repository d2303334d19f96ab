/** The ways to draw the building and to build on to it, ten pixels a metre. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { onSide } from "../../../src/canvas/tools/rectangle/bySide";
import { buildingEdits, type Project } from "../../../src/document";
import { signedArea } from "../../../src/geometry";
import { checkEdit } from "../../support/checkEdit";
import { type Hand, handOn, metricProject } from "../support/hand";

const outlineOf = (hand: Hand) => hand.project.building?.outline ?? [];

function choosing(kind: string, project: Project = metricProject()): Hand {
  const hand = handOn(project, "building");
  hand.choose(kind);
  return hand;
}

/** 10 by 6: A (0, 6), B (10, 6), C (10, 0), D (0, 0). */
function barn(): Project {
  const outline = buildingEdits.rectangleOutline([0, 0], 10, 6);
  return checkEdit(metricProject(), buildingEdits.drawBuilding, { outline, floor: 30 });
}

describe("a rectangle by a side and its depth", () => {
  it("is clicked out", () => {
    const hand = choosing("side");
    hand.click(-5, -5);
    hand.click(5, -5);
    hand.click(3, 1);
    expect(outlineOf(hand)).toEqual([
      [-5, 1],
      [5, 1],
      [5, -5],
      [-5, -5],
    ]);
    expect(hand.tool).toBe("select");
  });

  it("is typed at any bearing: 5 m at 53.13° goes 4 east and 3 north, 2 m deep to the right", () => {
    const hand = choosing("side");
    hand.click(0, 0);
    hand.type("5");
    hand.key("Tab");
    hand.type("53.13010235415598");
    hand.key("Enter");
    hand.move(4, -2);
    hand.type("2");
    hand.key("Enter");
    const [a, b, c, d] = outlineOf(hand);
    expect(outlineOf(hand)).toHaveLength(4);
    for (const [is, x, y] of [
      [a, 0, 0],
      [b, 4, 3],
      [c, 5.2, 1.4],
      [d, 1.2, -1.6],
    ] as const) {
      expect(is?.[0]).toBeCloseTo(x, 9);
      expect(is?.[1]).toBeCloseTo(y, 9);
    }
  });

  it("has the side's length and the depth as its sides, whichever way it lies", () => {
    const mm = (least: number) => fc.integer({ min: least, max: 20_000 }).map((n) => n / 1000);
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 359 }),
        mm(300),
        mm(300),
        fc.boolean(),
        (turn, length, deep, left) => {
          const angle = (turn * Math.PI) / 180;
          const rectangle = onSide(
            [3, 4],
            [3 + length * Math.cos(angle), 4 + length * Math.sin(angle)],
            left ? deep : -deep,
          );
          expect(-signedArea(rectangle.outline)).toBeCloseTo(length * deep, 6);
          expect(rectangle.width * rectangle.depth).toBeCloseTo(length * deep, 6);
        },
      ),
    );
  });

  it("steps back to its side on Esc", () => {
    const hand = choosing("side");
    hand.click(-5, -5);
    hand.click(5, -5);
    hand.key("Escape");
    expect(hand.state()).toBe("drawingSide");
    hand.key("Escape");
    expect(hand.state()).toBe("ready");
    expect(hand.choices()?.chosen).toBe("side");
  });
});

describe("a rectangle by its corners as places", () => {
  const walls = [
    [3, 9],
    [15, 9],
    [15, 2],
    [3, 2],
  ];

  it("takes the first from the plan's origin and the other from the first", () => {
    const hand = choosing("corners");
    hand.type("3, 2");
    hand.key("Enter");
    expect(hand.state()).toBe("drawing");
    hand.type("@12, 7");
    hand.key("Enter");
    expect(outlineOf(hand)).toEqual(walls);
  });

  it("shows the first one and where it lies, while there is no size yet, and brings it into sight", () => {
    for (const [kind, state] of [
      ["corners", "drawing"],
      ["side", "drawingSide"],
    ] as const) {
      const hand = choosing(kind);
      hand.type("3, -2");
      hand.key("Enter");
      expect(hand.state()).toBe(state);
      expect(hand.signs()).toEqual([[3, -2]]);
      expect(hand.texts()).toContain("3.000 m E, 2.000 m S");
      expect(hand.shownPlaces).toContainEqual([3, -2]);
      hand.type("12");
      if (kind === "side") continue;
      hand.key("Tab");
      hand.type("7");
      expect(hand.signs()).toEqual([]);
    }
  });

  it("takes both from the plan's origin, and sizes after a typed corner", () => {
    const both = choosing("corners");
    for (const place of ["15, 9", "3, 2"]) {
      both.type(place);
      both.key("Enter");
    }
    expect(outlineOf(both)).toEqual(walls);
    const sized = choosing("corners");
    sized.type("3, 2");
    sized.key("Enter");
    sized.type("12");
    sized.key("Tab");
    sized.type("7");
    sized.key("Enter");
    expect(outlineOf(sized)).toEqual(walls);
  });

  it("says that the first can't be counted from a place before", () => {
    const hand = choosing("corners");
    hand.type("3 right, 2 up");
    hand.key("Enter");
    expect(hand.said.at(-1)).toContain("no last place yet");
    expect(hand.state()).toBe("ready");
  });
});

describe("any outline", () => {
  it("an L by arrows and typed lengths; its area, 75 m², is shown meanwhile", () => {
    const hand = choosing("outline");
    hand.click(-6, -4);
    const walls = [
      ["ArrowRight", "12"],
      ["ArrowUp", "5"],
      ["ArrowLeft", "7"],
      ["ArrowUp", "3"],
      ["ArrowLeft", "5"],
    ] as const;
    for (const [key, length] of walls) {
      hand.key(key);
      hand.type(length);
      hand.key("Enter");
    }
    expect(hand.texts()).toContain("807 ft²");
    hand.key("Enter");
    expect(outlineOf(hand)).toEqual([
      [-6, -4],
      [6, -4],
      [6, 1],
      [-1, 1],
      [-1, 4],
      [-6, 4],
    ]);
    expect(hand.selection).toEqual([{ kind: "building" }]);
  });
});

describe("a wall pulled", () => {
  it("an L: from the wall's end, 4 m wide, 3 m out, by clicks; 12 m² are 129 ft²", () => {
    const hand = choosing("pull", barn());
    hand.click(0.2, 6.1);
    hand.click(4, 6.1);
    hand.move(2, 9);
    expect(hand.texts()).toEqual(
      expect.arrayContaining(["4.000 m", "3.000 m", "adds 129 ft², in all 775 ft²"]),
    );
    hand.click(2, 9);
    expect(outlineOf(hand)).toHaveLength(6);
    expect(Math.abs(signedArea(outlineOf(hand)))).toBeCloseTo(72, 9);
    expect(hand.labels).toEqual(["pull a piece of a wall out"]);
  });

  it("a U: all typed, pushed in", () => {
    const hand = choosing("pull", barn());
    hand.move(5, 6.1);
    hand.type("3");
    hand.key("Enter");
    hand.move(6, 6.1);
    hand.type("4");
    hand.key("Enter");
    hand.move(5, 5);
    hand.type("2.5");
    hand.key("Enter");
    expect(outlineOf(hand).slice(1, 5)).toEqual([
      [3, 6],
      [3, 3.5],
      [7, 3.5],
      [7, 6],
    ]);
    expect(hand.labels).toEqual(["push a piece of a wall in"]);
  });

  it("says what the place on the wall snapped to, before the piece begins and while it does", () => {
    const hand = choosing("pull", barn());
    hand.move(4.6, 6.1);
    expect(hand.snapWord()).toBe("the wall's middle");
    hand.move(3, 6.1);
    expect(hand.snapWord()).toBeNull();
  });

  it.each([
    ["from the corner to the piece", "0.08", "4", /leaves a wall of only 0\.080 m/],
    ["from the piece to the corner", "5", "4.8", /leaves a wall of only 0\.200 m/],
  ])("cautions of a very short wall %s, and still lets it be", (_where, from, wide, caution) => {
    const hand = choosing("pull", barn());
    hand.key("ArrowUp");
    for (const text of [from, wide]) {
      hand.type(text);
      hand.key("Enter");
    }
    expect(hand.said).toEqual([expect.stringMatching(caution)]);
    hand.move(5, 9);
    hand.click(5, 9);
    expect(outlineOf(hand)).toHaveLength(8);
  });

  it("is silent where no wall is short", () => {
    const hand = choosing("pull", barn());
    hand.click(3, 6.1);
    hand.click(7, 6.1);
    expect(hand.state()).toBe("pullingOut");
    expect(hand.said).toEqual([]);
  });

  it("says why where the walls would cross, and changes nothing", () => {
    const hand = choosing("pull", barn());
    hand.drag([
      [3, 6],
      [5, 6],
      [7, 6],
    ]);
    hand.click(5, -3);
    expect(hand.hint()).not.toMatch(/^Pull/);
    expect(hand.labels).toEqual([]);
    hand.key("Escape");
    expect(hand.state()).toBe("choosingWall");
  });
});

describe("by keys alone", () => {
  const typeLine = (hand: Hand, text: string) => {
    hand.type(text);
    hand.key("Enter");
  };

  it("an arrow key takes the wall, then a piece of it is typed and pulled out", () => {
    const hand = choosing("pull", barn());
    hand.key("ArrowUp");
    expect(hand.hint()).toContain("wall A–B");
    typeLine(hand, "3");
    typeLine(hand, "4");
    typeLine(hand, "2.5");
    expect(outlineOf(hand).slice(1, 5)).toEqual([
      [3, 6],
      [3, 8.5],
      [7, 8.5],
      [7, 6],
    ]);
  });

  it("an arrow key into the building turns the typed length inwards, to the wall's end without a width", () => {
    const hand = choosing("pull", barn());
    hand.key("ArrowUp");
    typeLine(hand, "6");
    hand.key("Enter");
    hand.key("ArrowDown");
    typeLine(hand, "2");
    expect(outlineOf(hand).slice(0, 4)).toEqual([
      [0, 6],
      [6, 6],
      [6, 4],
      [10, 4],
    ]);
    expect(hand.labels).toEqual(["push a piece of a wall in"]);
  });

  it("an add-on takes all of the wall, or a typed piece of it", () => {
    const whole = choosing("add-on", barn());
    whole.key("ArrowRight");
    whole.key("Enter");
    typeLine(whole, "3.5");
    expect(outlineOf(whole)[1]).toEqual([13.5, 6]);
    const piece = choosing("add-on", barn());
    piece.key("ArrowRight");
    for (const length of ["1", "3", "2"]) typeLine(piece, length);
    expect(outlineOf(piece).slice(2, 6)).toEqual([
      [10, 5],
      [12, 5],
      [12, 2],
      [10, 2],
    ]);
  });
});

describe("the size of an add-on or piece", () => {
  it("is typed whole: depth, Tab, width; a width counts from the corner nearer to the click", () => {
    const added = (y: number) => {
      const hand = choosing("add-on", barn());
      hand.click(10.1, y);
      hand.move(12, y);
      hand.type("2.5");
      hand.key("Tab");
      hand.type("4");
      expect(hand.texts()).toEqual(expect.arrayContaining(["4.000 m", "2.500 m"]));
      hand.key("Enter");
      return outlineOf(hand).slice(1, -1);
    };
    // Wall B–C runs down from (10, 6); the corner at which the piece begins goes out with it.
    expect(added(4.5)).toEqual([
      [12.5, 6],
      [12.5, 2],
      [10, 2],
      [10, 0],
    ]);
    expect(added(1.5)).toEqual([
      [10, 6],
      [10, 4],
      [12.5, 4],
      [12.5, 0],
    ]);
  });

  it("is typed over on its figures", () => {
    const hand = choosing("pull", barn());
    hand.click(2, 6.1);
    hand.click(4, 6.1);
    hand.move(3, 11);
    expect(hand.typeOver("width", 5).ok).toBe(true);
    expect(hand.typeOver("depth", 1.5).ok).toBe(true);
    hand.key("Enter");
    expect(outlineOf(hand).slice(1, 5)).toEqual([
      [2, 6],
      [2, 7.5],
      [7, 7.5],
      [7, 6],
    ]);
  });

  it("a width wider than what is left of the wall ends at its corner", () => {
    const hand = choosing("add-on", barn());
    hand.click(10.1, 5);
    hand.move(12, 5);
    hand.type("2");
    hand.key("Tab");
    hand.type("40");
    hand.key("Enter");
    expect(Math.abs(signedArea(outlineOf(hand)))).toBeCloseTo(60 + 12, 9);
  });

  it("right angles stay wherever the pointer goes, and are let go by Alt: the area is the same", () => {
    const pulled = (copies: boolean) => {
      const hand = choosing("pull", barn());
      hand.click(2, 6.1);
      hand.click(5, 6.1);
      hand.move(6, 9, { copies });
      hand.click(6, 9, { copies });
      return hand;
    };
    const hand = pulled(false);
    const skew = pulled(true);
    expect(outlineOf(hand).slice(2, 4)).toEqual([
      [2, 9],
      [5, 9],
    ]);
    // The piece's middle, 3.5 m along, goes to the pointer at 6.
    expect(outlineOf(skew).slice(1, 5)).toEqual([
      [2, 6],
      [4.5, 9],
      [7.5, 9],
      [5, 6],
    ]);
    expect(Math.abs(signedArea(outlineOf(skew)))).toBeCloseTo(69, 9);
  });
});

describe("an add-on", () => {
  it("a click takes all of the wall, a typed depth does the rest", () => {
    const hand = choosing("add-on", barn());
    hand.click(10.1, 2);
    hand.move(12, 2);
    hand.type("3.5");
    hand.key("Enter");
    expect(outlineOf(hand)).toEqual([
      [0, 6],
      [13.5, 6],
      [13.5, 0],
      [0, 0],
    ]);
    expect(hand.labels).toEqual(["add an add-on"]);
  });

  it("a drag takes a piece of the wall; it stands out even where the pointer lies inside", () => {
    const hand = choosing("add-on", barn());
    hand.drag([
      [10, 5],
      [10, 3],
      [10, 2],
    ]);
    hand.move(8, 3);
    hand.type("2");
    hand.key("Enter");
    expect(outlineOf(hand)).toEqual([
      [0, 6],
      [10, 6],
      [10, 5],
      [12, 5],
      [12, 2],
      [10, 2],
      [10, 0],
      [0, 0],
    ]);
  });

  it("is offered only where a building stands", () => {
    expect(handOn(metricProject(), "building").choices()?.items).toHaveLength(3);
    expect(handOn(barn(), "building").choices()?.items).toHaveLength(5);
  });

  it("draws any outline by keys alone, from a typed first corner", () => {
    const hand = handOn(metricProject(), "building");
    hand.choose("outline");
    hand.type("2, 3");
    hand.key("Enter");
    for (const [key, length] of [
      ["ArrowRight", "10"],
      ["ArrowUp", "4"],
      ["ArrowLeft", "6"],
    ] as const) {
      hand.key(key);
      hand.type(length);
      hand.key("Enter");
    }
    hand.key("Enter");
    const outline = hand.project.building?.outline.flat() ?? [];
    for (const [i, value] of [2, 3, 12, 3, 12, 7, 6, 7].entries()) expect(outline[i]).toBeCloseTo(value, 9);
  });
});
