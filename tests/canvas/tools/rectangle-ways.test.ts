/** Areas are drawn like the building: from corner to corner first, by a side and its depth, or corner by corner. */
import { describe, expect, it } from "vitest";
import { liveDimensions } from "../../../src/canvas/select/liveDimensions";
import { gradingEdits, type Point, shapeEdits, siteEdits } from "../../../src/document";
import { checkEdit } from "../../support/checkEdit";
import { type Hand, handOn, metricProject } from "../support/hand";

function earth(kind: string, way: string): Hand {
  const hand = handOn(metricProject(), "earth");
  hand.choose(kind);
  hand.choose(way);
  return hand;
}

const outline = (hand: Hand) => hand.project.grading.pads[0]?.outline;

const sixByFour: Point[] = [
  [2, 7],
  [8, 7],
  [8, 3],
  [2, 3],
];

describe("a pad", () => {
  it("is a rectangle by two opposite corners, and is selected then", () => {
    const hand = earth("parking", "corners");
    hand.click(2, 3);
    expect(hand.hint()).toMatch(/opposite corner/);
    hand.click(8, 7);
    expect(outline(hand)).toEqual(sixByFour);
    expect(hand.project.grading.pads[0]?.use).toBe("parking");
    expect(hand.labels).toEqual(["draw parking pad"]);
    expect([hand.tool, hand.selection.map(({ kind }) => kind)]).toEqual(["select", ["pad"]]);
  });

  it("goes by a drag, and by sizes typed after the first corner", () => {
    const dragged = earth("turning", "corners");
    dragged.drag([
      [2, 3],
      [8, 7],
    ]);
    expect(outline(dragged)).toEqual(sixByFour);
    const typed = earth("terrace", "corners");
    typed.click(2, 3);
    typed.move(20, 20);
    typed.type("6");
    typed.key("Tab");
    typed.type("4");
    typed.key("Enter");
    expect(outline(typed)).toEqual(sixByFour);
  });

  it("of a typed size goes where the next click is; a size without depth is asked for", () => {
    const hand = earth("parking", "corners");
    hand.move(2, 3);
    hand.type("6");
    hand.key("Enter");
    hand.type("4");
    expect(hand.hint()).toBe("Click to put it here, or press Enter");
    hand.click(2, 3);
    expect(outline(hand)).toEqual(sixByFour);
    const short = earth("parking", "corners");
    short.click(2, 3);
    short.key("Enter");
    expect(short.said.at(-1)).toBe(
      "Still missing: the parking pad's width and depth. Type it, or click the opposite corner.",
    );
    short.key("Escape");
    expect([short.state(), short.tool, short.project.grading.pads]).toEqual(["ready", "earth", []]);
  });

  it("takes its corners as typed places", () => {
    const hand = earth("parking", "corners");
    hand.type("2, 3");
    hand.key("Enter");
    hand.type("8, 7");
    hand.key("Enter");
    expect(outline(hand)).toEqual(sixByFour);
  });

  it("lies at any angle by a side and its depth", () => {
    const hand = earth("parking", "side");
    hand.click(0, 0, { free: true });
    hand.click(4, 3, { free: true });
    hand.move(1, 7);
    hand.type("5");
    hand.key("Enter");
    const sides = (outline(hand) ?? []).map(([x, y], i, all) => {
      const [u, v] = all[(i + 1) % all.length] as Point;
      return Math.hypot(u - x, v - y);
    });
    expect(sides).toHaveLength(4);
    for (const side of sides) expect(side).toBeCloseTo(5, 9);
  });

  it("of any outline is drawn corner by corner; the way is kept for the next", () => {
    const hand = earth("parking", "outline");
    for (const [x, y] of [
      [0, 0],
      [6, 0],
      [6, 4],
    ] as const)
      hand.click(x, y);
    hand.key("Enter");
    expect(outline(hand)).toHaveLength(3);
    hand.use("earth");
    expect(hand.choices()?.ways?.chosen).toBe("outline");
    hand.choose("berm");
    expect(hand.choices()?.ways).toBeUndefined();
  });
});

describe("an area of a feature", () => {
  it("is a rectangle by two corners with what is kept clear; water's edge is any outline", () => {
    const hand = handOn(metricProject(), "feature");
    hand.choose("septic");
    hand.type("3");
    hand.click(2, 3);
    hand.click(8, 7);
    expect(hand.project.lot.features[0]).toMatchObject({ kind: "septic", points: sixByFour, keepClear: 3 });
    expect(hand.tool).toBe("feature");
    hand.choose("water");
    expect(hand.choices()?.ways?.chosen).toBe("outline");
    hand.choose("tree");
    expect(hand.choices()?.ways).toBeUndefined();
  });
});

describe("a typed length of a piece", () => {
  const pad = checkEdit(metricProject(), gradingEdits.addPad, { outline: sixByFour, use: "parking" });
  const longer: Point[] = [
    [2, 7],
    [10, 7],
    [10, 3],
    [2, 3],
  ];

  it("keeps the right angles of a pad, on the plan and in the inspector", () => {
    const thing = { kind: "pad", id: pad.grading.pads[0]?.id ?? "" } as const;
    const edit = liveDimensions(pad, [thing])[0]?.change(pad, 8);
    expect(edit?.ok && edit.project.grading.pads[0]?.outline).toEqual(longer);
    const typed = checkEdit(pad, shapeEdits.setSide, { thing, side: 0, length: 8 });
    expect(typed.grading.pads[0]?.outline).toEqual(longer);
    // The last side ends at the first corner.
    const last = checkEdit(pad, shapeEdits.setSide, { thing, side: 3, length: 5 });
    expect(last.grading.pads[0]?.outline.map(([, y]) => y)).toEqual([8, 8, 3, 3]);
  });

  it("moves the one corner of an area that isn't right-angled, and of a lot", () => {
    const outline = sixByFour.map(([x, y], i): Point => (i === 2 ? [x + 1, y] : [x, y]));
    const crooked = checkEdit(metricProject(), gradingEdits.addPad, { outline, use: "parking" });
    const thing = { kind: "pad", id: crooked.grading.pads[0]?.id ?? "" } as const;
    const typed = checkEdit(crooked, shapeEdits.setSide, { thing, side: 0, length: 8 });
    expect(typed.grading.pads[0]?.outline[2]).toEqual([9, 3]);
    const lot = checkEdit(metricProject(), siteEdits.setLotOutline, { outline: sixByFour });
    const line = checkEdit(lot, shapeEdits.setSide, { thing: { kind: "lot" }, side: 0, length: 8 });
    expect(line.lot.outline[2]).toEqual([8, 3]);
  });
});
