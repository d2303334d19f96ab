import { describe, expect, it } from "vitest";
import {
  arrangeEdits,
  type Edit,
  gradingEdits,
  type Point,
  type Project,
  projectSchema,
  siteEdits,
} from "../../src/document";

const empty = projectSchema.parse({
  drysill: 1,
  building: {
    outline: [
      [0, 0],
      [10, 0],
      [10, 6],
      [0, 6],
    ],
    floor: 100,
  },
  grading: {
    drives: [
      {
        id: "v1",
        line: [
          [5, -20],
          [5, 0],
        ],
      },
    ],
  },
});

function edited(edit: Edit): Project {
  if (!edit.ok) throw new Error(edit.why);
  return edit.project;
}

const square = [
  [20, 0],
  [30, 0],
  [30, 8],
] as [number, number][];
const line = [
  [0, -8],
  [10, -8],
] as [number, number][];

describe("things that shape the ground", () => {
  it("are added with names of their own, changed and removed", () => {
    const one = edited(gradingEdits.addPad.run(empty, { outline: square, use: "turning" }));
    const two = edited(gradingEdits.addPad.run(one, { outline: square, use: "turning" }));
    expect(two.grading.pads.map(({ id, name }) => [id, name])).toEqual([
      ["q1", "turning pad"],
      ["q2", "turning pad 2"],
    ]);
    const changed = edited(gradingEdits.changePad.run(two, { id: "q2", patch: { fall: 0.03 } }));
    expect(changed.grading.pads[1]?.fall).toBe(0.03);
    expect(edited(gradingEdits.removePad.run(changed, { id: "q1" })).grading.pads).toHaveLength(1);
    const berm = edited(gradingEdits.addBerm.run(empty, { line }));
    expect(
      edited(gradingEdits.changeBerm.run(berm, { id: "e1", patch: { height: 0.6 } })).grading.berms[0]
        ?.height,
    ).toBe(0.6);
    expect(edited(gradingEdits.removeBerm.run(berm, { id: "e1" })).grading.berms).toEqual([]);
    const point = edited(gradingEdits.addGradePoint.run(empty, { at: [3, 20], height: 101 }));
    expect(
      edited(gradingEdits.changeGradePoint.run(point, { id: "z1", patch: { height: 102 } })).grading
        .points[0],
    ).toMatchObject({
      height: 102,
    });
    expect(edited(gradingEdits.removeGradePoint.run(point, { id: "z1" })).grading.points).toEqual([]);
  });

  it("a terrace is level to begin with", () => {
    expect(
      edited(gradingEdits.addPad.run(empty, { outline: square, use: "terrace" })).grading.pads[0]?.fall,
    ).toBe(0);
  });

  it("a retaining wall's lower side is the one away from the building, whichever way it is drawn", () => {
    const there = edited(gradingEdits.addRetainingWall.run(empty, { line }));
    const back = edited(gradingEdits.addRetainingWall.run(empty, { line: [...line].reverse() }));
    expect(there.grading.walls[0]?.lowSide).toBe("right");
    expect(back.grading.walls[0]?.lowSide).toBe("left");
    expect(
      edited(gradingEdits.changeRetainingWall.run(there, { id: "r1", patch: { exposed: 1 } })).grading
        .walls[0]?.exposed,
    ).toBe(1);
    expect(edited(gradingEdits.removeRetainingWall.run(there, { id: "r1" })).grading.walls).toEqual([]);
  });

  it("a wall beside a pad keeps the pad's side high, drawn either way", () => {
    // One wall 1 m south of the pad, one 1 m north of it.
    const outline: [number, number][] = [
      [30, -39],
      [40, -39],
      [40, -30],
      [30, -30],
    ];
    const below: [number, number][] = [
      [30, -40],
      [40, -40],
    ];
    const parked = edited(gradingEdits.addPad.run(empty, { outline }));
    const sideOf = (line: [number, number][]) =>
      edited(gradingEdits.addRetainingWall.run(parked, { line })).grading.walls[0]?.lowSide;
    expect(sideOf(below)).toBe("right");
    expect(sideOf([...below].reverse())).toBe("left");
    const above: [number, number][] = [
      [30, -29],
      [40, -29],
    ];
    expect(sideOf(above)).toBe("left");
  });

  it("refuse nonsense in words", () => {
    const whys = [
      gradingEdits.addPad.run(empty, { outline: square.slice(0, 2) }),
      gradingEdits.addBerm.run(empty, { line: line.slice(0, 1) }),
      gradingEdits.addRetainingWall.run(empty, { line: [] }),
      gradingEdits.addGradePoint.run(empty, { at: [Number.NaN, 0], height: 1 }),
      gradingEdits.changePad.run(empty, { id: "q9", patch: {} }),
      gradingEdits.changeGradeBreak.run(empty, { id: "v1", index: 3, patch: {} }),
      gradingEdits.addGradeBreak.run(empty, { id: "v1", at: -1, height: null }),
    ].map((edit) => (edit.ok ? "" : edit.why));
    for (const why of whys) expect(why.length).toBeGreaterThan(8);
  });
});

describe("grade breaks", () => {
  it("are put, moved and removed", () => {
    const put = edited(gradingEdits.addGradeBreak.run(empty, { id: "v1", at: 8, height: 100.5 }));
    const moved = edited(
      gradingEdits.changeGradeBreak.run(put, { id: "v1", index: 0, patch: { at: 9, curve: 3 } }),
    );
    expect(moved.grading.drives[0]?.breaks).toEqual([{ at: 9, height: 100.5, curve: 3 }]);
    expect(
      edited(gradingEdits.removeGradeBreak.run(moved, { id: "v1", index: 0 })).grading.drives[0]?.breaks,
    ).toEqual([]);
  });
});

describe("sides and order", () => {
  it("a side keeps only what differs, and goes when nothing does", () => {
    const own = edited(gradingEdits.changeApronSide.run(empty, { wall: 2, patch: { fill: 4 } }));
    expect(own.grading.apron.sides).toEqual([
      { wall: 2, showing: null, fall: null, width: null, fill: 4, cut: null },
    ]);
    expect(
      edited(gradingEdits.changeApronSide.run(own, { wall: 2, patch: { fill: null } })).grading.apron.sides,
    ).toEqual([]);
  });

  it("the order is kept as given", () => {
    expect(edited(gradingEdits.setGradingOrder.run(empty, { order: ["v1", "apron"] })).grading.order).toEqual(
      ["v1", "apron"],
    );
  });

  it("a side's figures go along when the building is mirrored", () => {
    const own = edited(gradingEdits.changeApronSide.run(empty, { wall: 1, patch: { fill: 4 } }));
    const things = [{ kind: "building" as const }];
    const mirrored = edited(arrangeEdits.mirrorThings.run(own, { things, a: [20, 0], b: [20, 1] }));
    expect(mirrored.grading.apron.sides.map(({ wall }) => wall)).toEqual([3]);
  });
});

describe("names in the history", () => {
  const label = (edit: Edit) => {
    if (!edit.ok) throw new Error(edit.why);
    return edit.label;
  };
  const corners: readonly Point[] = [
    [20, 0],
    [26, 0],
    [26, 5],
    [20, 5],
  ];

  it.each([
    ["terrace", "terrace"],
    ["parking", "parking pad"],
  ] as const)("a %s is called what it is when it is drawn, moved and removed", (use, word) => {
    const drawn = gradingEdits.addPad.run(empty, { outline: corners, use });
    expect(label(drawn)).toBe(`draw ${word}`);
    const project = drawn.ok ? drawn.project : empty;
    const things = [{ kind: "pad", id: "q1" }] as const;
    expect(label(arrangeEdits.moveThings.run(project, { things, by: [1, 0] }))).toBe(`move ${word}`);
    expect(label(gradingEdits.removePad.run(project, { id: "q1" }))).toBe(`remove ${word}`);
  });

  it("a lot corner moved or removed by its figures isn't a lot drawn anew", () => {
    const set = (project: Project, outline: readonly Point[]) =>
      siteEdits.setLotOutline.run(project, { outline });
    const first = set(empty, corners);
    expect(label(first)).toBe("draw lot");
    const project = first.ok ? first.project : empty;
    const moved = corners.map((at, i): Point => (i === 2 ? [27, 6] : at));
    expect(label(set(project, moved))).toBe("move a lot corner");
    expect(label(set(project, corners.slice(1)))).toBe("remove a lot corner");
    expect(
      label(
        set(
          project,
          corners.map(([x, y]): Point => [x + 1, y]),
        ),
      ),
    ).toBe("draw lot");
    expect(label(set(project, []))).toBe("remove lot");
  });
});
