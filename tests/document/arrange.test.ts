/** Things moved, turned, mirrored, lined up, copied and taken away together. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  allThings,
  arrangeEdits,
  buildingEdits,
  drawingEdits,
  type Edit,
  isLocked,
  newProject,
  type Point,
  type Project,
  siteEdits,
  surveyEdits,
  type Thing,
  thingKey,
  thingName,
  thingShape,
  windowEdits,
} from "../../src/document";
import { checkEdit, refusal } from "../support/checkEdit";

/** One of each kind. The building is 12 by 8 with A top-left, so its corners run clockwise. */
function site(): Project {
  const outline: Point[] = [
    [0, 8],
    [12, 8],
    [12, 0],
    [0, 0],
  ];
  const steps: ((project: Project) => Edit)[] = [
    (now) => buildingEdits.drawBuilding.run(now, { outline, floor: 0.3 }),
    (now) => buildingEdits.addDoor.run(now, { wall: 2, offset: 2, width: 3 }),
    (now) => windowEdits.addWindow.run(now, { wall: 0, offset: 1, width: 1.5 }),
    (now) =>
      siteEdits.addDrive.run(now, {
        line: [
          [8.5, -30],
          [8.5, 0],
        ],
        door: "d1",
      }),
    (now) =>
      siteEdits.addSwale.run(now, {
        line: [
          [-5, 14],
          [6, 13],
          [20, 10],
        ],
      }),
    (now) =>
      siteEdits.setLotOutline.run(now, {
        outline: [
          [-30, -40],
          [40, -40],
          [42, 35],
          [-30, 30],
        ],
      }),
    (now) => siteEdits.addFeature.run(now, { kind: "tree", points: [[20, 20]] }),
    (now) => surveyEdits.addMark.run(now, { name: "bolt", height: "100 m", at: [-12, 3] }),
    (now) => surveyEdits.addShot.run(now, { name: "oak", place: { kind: "at", x: 16, y: 5 } }),
    (now) => surveyEdits.addShot.run(now, { name: "B", place: { kind: "corner", corner: 1 } }),
    (now) => drawingEdits.addNote.run(now, { at: [3, 20], text: "spring", pointsTo: [5, 18] }),
    (now) =>
      drawingEdits.addDimension.run(now, {
        from: { kind: "corner", corner: 0 },
        to: { kind: "corner", corner: 1 },
        offset: 1.5,
      }),
    (now) =>
      drawingEdits.addDimension.run(now, {
        from: { kind: "at", x: 0, y: -5 },
        to: { kind: "at", x: 9, y: -6 },
        offset: 2,
      }),
    (now) =>
      drawingEdits.addSection.run(now, {
        line: [
          [-10, 4],
          [25, 5],
        ],
      }),
    (now) => siteEdits.changeApron.run(now, { patch: { leave: [1] } }),
    (now) =>
      drawingEdits.addUnderlay.run(now, {
        underlay: {
          name: "plat",
          media: "image/png",
          data: "aGVsbG8=",
          width: 400,
          height: 300,
          at: [2, 2],
          scale: 0.1,
          turn: 0.2,
          strength: 0.5,
        },
      }),
  ];
  return steps.reduce((now, step) => {
    const edit = step(now);
    if (!edit.ok) throw new Error(edit.why);
    return edit.project;
  }, newProject());
}

const plan = site();
const everything = allThings(plan);
const without = (...kinds: Thing["kind"][]) => everything.filter(({ kind }) => !kinds.includes(kind));
const places = (project: Project) =>
  allThings(project).map((thing) => [thingKey(thing), thingShape(project, thing)?.points ?? []] as const);

function expectSamePlaces(a: Project, b: Project): void {
  const [one, two] = [places(a), places(b)];
  expect(two.map(([key]) => key)).toEqual(one.map(([key]) => key));
  for (const [i, [key, points]] of one.entries()) {
    for (const [j, [x, y]] of points.entries()) {
      const at = two[i]?.[1][j] as Point;
      expect(Math.hypot(at[0] - x, at[1] - y), key).toBeLessThan(1e-6);
    }
  }
}

const millimetres = (least: number, most: number) =>
  fc.integer({ min: least * 1000, max: most * 1000 }).map((mm) => mm / 1000);
const place = fc.tuple(millimetres(-50, 50), millimetres(-50, 50));
const angle = fc.integer({ min: -3141, max: 3141 }).map((milliradians) => milliradians / 1000);
const chosen = (list: readonly Thing[]) => fc.subarray([...list], { minLength: 1 });

describe("moving", () => {
  it("obeys the laws of edits for everything at once, and keeps every tie", () => {
    const moved = checkEdit(plan, arrangeEdits.moveThings, { things: everything, by: [3, -2] });
    expect(moved.building?.outline[0]).toEqual([3, 6]);
    expect(moved.grading.drives[0]).toMatchObject({ door: "d1" });
    expect(moved.survey.shots[1]?.place).toEqual({ kind: "corner", corner: 1 });
    expect(moved.drawing.dimensions[0]).toEqual(plan.drawing.dimensions[0]);
    expect(moved.drawing.underlays[0]).toMatchObject({ at: [5, 0], turn: 0.2 });
  });

  it("there and back again leads home", () => {
    fc.assert(
      fc.property(chosen(without("door", "window", "building", "drive")), place, (things, by) => {
        const there = arrangeEdits.moveThings.run(plan, { things, by });
        if (!there.ok) throw new Error(there.why);
        const back = arrangeEdits.moveThings.run(there.project, { things, by: [-by[0], -by[1]] });
        if (!back.ok) throw new Error(back.why);
        expectSamePlaces(plan, back.project);
      }),
    );
  });

  it("leaves ground where it was read when the building goes, and takes the drive's end along", () => {
    const moved = checkEdit(plan, arrangeEdits.moveThings, { things: [{ kind: "building" }], by: [1, 0] });
    expect(moved.survey.shots[1]?.place).toEqual({ kind: "at", x: 12, y: 8 });
    expect(moved.grading.drives[0]?.line).toEqual([
      [8.5, -30],
      [9.5, 0],
    ]);
  });

  it("unties a drive that leaves its door", () => {
    const moved = checkEdit(plan, arrangeEdits.moveThings, {
      things: [{ kind: "drive", id: "v1" }],
      by: [1, 0],
    });
    expect(moved.grading.drives[0]).toMatchObject({ door: null });
  });

  it("slides a door along its wall, no farther than its end", () => {
    const door: Thing = { kind: "door", id: "d1" };
    // Wall C–D runs west.
    const slid = checkEdit(plan, arrangeEdits.moveThings, { things: [door], by: [-4, 9] });
    expect(slid.building?.doors[0]?.offset).toBeCloseTo(6, 12);
    const stopped = checkEdit(plan, arrangeEdits.moveThings, { things: [door], by: [-40, 0] });
    expect(stopped.building?.doors[0]?.offset).toBeCloseTo(9, 12);
  });

  it("takes a dimension that two corners hold nearer or farther off", () => {
    const things: Thing[] = [{ kind: "dimension", id: "i1" }];
    const moved = checkEdit(plan, arrangeEdits.moveThings, { things, by: [5, 0.5] });
    expect(moved.drawing.dimensions[0]?.offset).toBeCloseTo(2, 12);
  });
});

describe("turning", () => {
  it("there and back again leads home", () => {
    fc.assert(
      fc.property(chosen(without("door", "window", "drive")), place, angle, (things, about, turn) => {
        const there = arrangeEdits.turnThings.run(plan, { things, about, angle: turn });
        if (!there.ok) throw new Error(there.why);
        const back = arrangeEdits.turnThings.run(there.project, { things, about, angle: -turn });
        if (!back.ok) throw new Error(back.why);
        if (things.some(({ kind }) => kind === "building")) {
          // What leans on the building is checked apart: shots stay, the drive's end follows.
          expect(back.project.building?.outline[2]?.[0]).toBeCloseTo(12, 6);
        } else expectSamePlaces(plan, back.project);
      }),
    );
  });

  it("turns a picture and refuses a door by itself", () => {
    const turned = checkEdit(plan, arrangeEdits.turnThings, {
      things: [{ kind: "underlay", id: "u1" }],
      about: [0, 0],
      angle: Math.PI / 2,
    });
    expect(turned.drawing.underlays[0]?.at[0]).toBeCloseTo(-2, 12);
    expect(turned.drawing.underlays[0]?.turn).toBeCloseTo(0.2 + Math.PI / 2, 12);
    expect(
      refusal(plan, arrangeEdits.turnThings, {
        things: [{ kind: "door", id: "d1" }],
        about: [0, 0],
        angle: 1,
      }),
    ).toBe("A door stays in its wall. Take the building with it, or leave it out.");
  });
});

describe("mirroring", () => {
  const upright = { a: [6, 0] as Point, b: [6, 1] as Point };

  it("keeps the sense of the corners, and takes doors, windows, left walls and dimensions along", () => {
    const things: Thing[] = [{ kind: "building" }];
    const mirrored = checkEdit(plan, arrangeEdits.mirrorThings, { things, a: [20, 0], b: [20, 1] });
    // A is the top left again, and wall A–B the long one.
    expect(mirrored.building?.outline).toEqual([
      [28, 8],
      [40, 8],
      [40, 0],
      [28, 0],
    ]);
    // The door stood from x = 7 to 10 on the south wall: now it stands from 30 to 33 there.
    expect(
      thingShape(mirrored, { kind: "door", id: "d1" })
        ?.points.map(([x]) => x)
        .sort(),
    ).toEqual([30, 33]);
    expect(
      thingShape(mirrored, { kind: "window", id: "o1" })
        ?.points.map(([x]) => x)
        .sort(),
    ).toEqual([37.5, 39]);
    // The east wall was left as it is: mirrored it is the west wall, D–A.
    expect(mirrored.grading.apron.leave).toEqual([3]);
    expect(mirrored.drawing.dimensions[0]).toMatchObject({
      from: { kind: "corner", corner: 1 },
      to: { kind: "corner", corner: 0 },
      offset: -1.5,
    });
    expect(mirrored.survey.shots[1]?.place).toEqual({ kind: "at", x: 12, y: 8 });
    expect(mirrored.grading.drives[0]?.line.at(-1)).toEqual([31.5, 0]);
  });

  it("takes setbacks and taped sides to the lines and corners they become, and refuses a lot from a deed", () => {
    const length = { text: "10 m", m: 10 };
    const measured: Project = {
      ...plan,
      lot: { ...plan.lot, setbacks: [{ line: 1, distance: length, name: "side" }] },
      staking: { tapes: [{ id: "t1", from: 0, to: 1, length, held: "level" }] },
    };
    const things: Thing[] = [{ kind: "building" }, { kind: "lot" }];
    const mirrored = checkEdit(measured, arrangeEdits.mirrorThings, { things, ...upright });
    expect(mirrored.lot.setbacks[0]?.line).toBe(3);
    // Line 1 was the east one: mirrored about x = 6 it lies in the west.
    expect(mirrored.lot.outline[3]?.[0]).toBeLessThan(-25);
    expect(mirrored.lot.outline[0]?.[0]).toBeLessThan(-25);
    expect(mirrored.staking.tapes[0]).toMatchObject({ from: 1, to: 0 });
    const deeded: Project = {
      ...plan,
      lot: { ...plan.lot, deed: { courses: [], start: [0, 0], turn: 0, adjust: false } },
    };
    expect(refusal(deeded, arrangeEdits.mirrorThings, { things, ...upright })).toMatch(/follows its deed/);
    const turned = checkEdit(deeded, arrangeEdits.turnThings, { things, about: [0, 0], angle: 0.5 });
    expect(turned.lot.deed?.turn).toBeCloseTo(-0.5, 12);
  });

  it("keeps a shot's tie where the shot goes along", () => {
    const things: Thing[] = [{ kind: "building" }, { kind: "shot", id: "s2" }];
    const mirrored = checkEdit(plan, arrangeEdits.mirrorThings, { things, ...upright });
    expect(mirrored.survey.shots[1]?.place).toEqual({ kind: "corner", corner: 0 });
  });

  it("twice leads home", () => {
    fc.assert(
      fc.property(chosen(without("door", "window", "underlay", "drive")), place, place, (things, a, b) => {
        fc.pre(Math.hypot(b[0] - a[0], b[1] - a[1]) > 0.5);
        const once = arrangeEdits.mirrorThings.run(plan, { things, a, b });
        if (!once.ok) throw new Error(once.why);
        const twice = arrangeEdits.mirrorThings.run(once.project, { things, a, b });
        if (!twice.ok) throw new Error(twice.why);
        if (!things.some(({ kind }) => kind === "building")) expectSamePlaces(plan, twice.project);
        const [now, was] = [twice.project.building, plan.building];
        expect(now?.doors[0]).toMatchObject({ wall: 2, width: 3 });
        expect(now?.doors[0]?.offset).toBeCloseTo(2, 6);
        for (const [i, [x, y]] of (was?.outline ?? []).entries()) {
          expect(now?.outline[i]?.[0]).toBeCloseTo(x, 6);
          expect(now?.outline[i]?.[1]).toBeCloseTo(y, 6);
        }
        expect(twice.project.drawing.dimensions[0]).toEqual(plan.drawing.dimensions[0]);
        expect(twice.project.grading.apron.leave).toEqual([1]);
      }),
    );
  });

  it("refuses a picture and a line without length", () => {
    const picture: Thing[] = [{ kind: "underlay", id: "u1" }];
    expect(refusal(plan, arrangeEdits.mirrorThings, { things: picture, ...upright })).toMatch(
      /read backwards/,
    );
    const swale: Thing[] = [{ kind: "swale", id: "w1" }];
    expect(refusal(plan, arrangeEdits.mirrorThings, { things: swale, a: [1, 1], b: [1, 1] })).toMatch(
      /two places/,
    );
  });
});

describe("copies", () => {
  const copyable = without("building", "lot", "shot", "mark", "door", "window");

  it("differ only in id and place", () => {
    fc.assert(
      fc.property(chosen(copyable), place, (things, by) => {
        const edit = arrangeEdits.duplicateThings.run(plan, { things, by });
        if (!edit.ok) throw new Error(edit.why);
        const made = arrangeEdits.copiedThings(plan, edit.project);
        expect(made).toHaveLength(things.length);
        for (const [i, copy] of made.entries()) {
          const first = thingShape(plan, things[i] as Thing);
          expect(copy.kind).toBe(things[i]?.kind);
          expect(thingName(edit.project, copy)).toBe(thingName(plan, things[i] as Thing));
          for (const [j, [x, y]] of (thingShape(edit.project, copy)?.points ?? []).entries()) {
            expect(x - (first?.points[j]?.[0] ?? 0)).toBeCloseTo(by[0], 6);
            expect(y - (first?.points[j]?.[1] ?? 0)).toBeCloseTo(by[1], 6);
          }
        }
        const gone = arrangeEdits.removeThings.run(edit.project, { things: made });
        expect(gone.ok && gone.project).toEqual(plan);
      }),
    );
  });

  it("of a door take the next free piece of its wall, and say when there is none", () => {
    const door: Thing[] = [{ kind: "door", id: "d1" }];
    const two = checkEdit(plan, arrangeEdits.duplicateThings, { things: door, by: [0, 0] });
    expect(two.building?.doors[1]).toEqual({ ...plan.building?.doors[0], id: "d2", offset: 5.3 });
    const three = checkEdit(two, arrangeEdits.duplicateThings, { things: door, by: [0, 0] });
    expect(three.building?.doors[2]?.offset).toBeCloseTo(8.6, 9);
    expect(refusal(three, arrangeEdits.duplicateThings, { things: door, by: [0, 0] })).toMatch(
      /no free piece of wall/,
    );
  });

  it("are refused of what there is one of, and of what was measured", () => {
    for (const thing of [
      { kind: "building" },
      { kind: "lot" },
      { kind: "shot", id: "s1" },
      { kind: "mark", id: "m1" },
    ] as Thing[])
      expect(refusal(plan, arrangeEdits.duplicateThings, { things: [thing], by: [1, 1] })).toMatch(
        /can't be copied/,
      );
  });

  it("go from one plan to another as they were when they were copied", () => {
    const things: Thing[] = [
      { kind: "swale", id: "w1" },
      { kind: "dimension", id: "i1" },
    ];
    const other = checkEdit(newProject(), arrangeEdits.pasteThings, { from: plan, things, by: [1, 1] });
    expect(other.grading.swales[0]).toEqual({
      ...plan.grading.swales[0],
      line: [
        [-4, 15],
        [7, 14],
        [21, 11],
      ],
    });
    expect(other.drawing.dimensions[0]).toMatchObject({ from: { kind: "at", x: 1, y: 9 }, offset: 1.5 });
  });
});

describe("lining up", () => {
  const trees = () => {
    let now = newProject();
    for (const at of [
      [0, 0],
      [4, 3],
      [10, 9],
    ] as Point[])
      now = checkEdit(now, siteEdits.addFeature, { kind: "tree", points: [at] });
    return now;
  };
  const things: Thing[] = ["f1", "f2", "f3"].map((id) => ({ kind: "feature", id }));
  const alignedTo = (to: Parameters<typeof arrangeEdits.alignThings.run>[1]["to"], turn = 0) =>
    checkEdit(trees(), arrangeEdits.alignThings, { things, to, turn }).lot.features.map(
      ({ points }) => points[0],
    );

  it.each([
    [
      "left",
      [
        [0, 0],
        [0, 3],
        [0, 9],
      ],
    ],
    [
      "right",
      [
        [10, 0],
        [10, 3],
        [10, 9],
      ],
    ],
    [
      "top",
      [
        [0, 9],
        [4, 9],
        [10, 9],
      ],
    ],
    [
      "bottom",
      [
        [0, 0],
        [4, 0],
        [10, 0],
      ],
    ],
    [
      "middle",
      [
        [5, 0],
        [5, 3],
        [5, 9],
      ],
    ],
    [
      "centre",
      [
        [0, 4.5],
        [4, 4.5],
        [10, 4.5],
      ],
    ],
    [
      "across",
      [
        [0, 0],
        [5, 3],
        [10, 9],
      ],
    ],
    [
      "upwards",
      [
        [0, 0],
        [4, 4.5],
        [10, 9],
      ],
    ],
  ] as const)("%s", (to, expected) => expect(alignedTo(to)).toEqual(expected));

  it("goes by what is seen where the plan is turned", () => {
    // Turned a quarter counter-clockwise, north points left on the screen.
    for (const at of alignedTo("left", Math.PI / 2)) expect(at?.[1]).toBeCloseTo(9, 9);
  });

  it("needs two things", () => {
    expect(refusal(trees(), arrangeEdits.alignThings, { things: things.slice(1, 2), to: "left" })).toMatch(
      /at least 2/,
    );
  });
});

describe("locked things", () => {
  it("stay as they are, doors with their building, and say so", () => {
    const locked = checkEdit(plan, drawingEdits.lockThings, {
      things: [{ kind: "swale", id: "w1" }, { kind: "building" }],
      locked: true,
    });
    const swale: Thing[] = [
      { kind: "shot", id: "s1" },
      { kind: "swale", id: "w1" },
    ];
    const why = "Swale is locked. Unlock it first.";
    expect(refusal(locked, arrangeEdits.moveThings, { things: swale, by: [1, 0] })).toBe(why);
    expect(refusal(locked, arrangeEdits.turnThings, { things: swale, about: [0, 0], angle: 1 })).toBe(why);
    expect(refusal(locked, arrangeEdits.mirrorThings, { things: swale, a: [0, 0], b: [1, 0] })).toBe(why);
    expect(refusal(locked, arrangeEdits.removeThings, { things: swale })).toBe(why);
    expect(isLocked(locked, { kind: "door", id: "d1" })).toBe(true);
    expect(isLocked(plan, { kind: "door", id: "d1" })).toBe(false);
  });
});

describe("taking away", () => {
  it("takes everything as one step", () => {
    const bare = checkEdit(plan, arrangeEdits.removeThings, { things: everything });
    expect(allThings(bare)).toEqual([]);
  });
});

describe("what is moved leaves the rest alone", () => {
  it("as the same objects, so that nothing is reckoned anew from them", () => {
    const before = site();
    const after = checkEdit(before, arrangeEdits.moveThings, { things: [{ kind: "building" }], by: [1, 2] });
    expect(after.building).not.toBe(before.building);
    expect(after.lot).toBe(before.lot);
    expect(after.drawing.notes).toBe(before.drawing.notes);
    expect(after.grading.swales).toBe(before.grading.swales);
    const lot = checkEdit(before, arrangeEdits.moveThings, { things: [{ kind: "lot" }], by: [1, 2] });
    expect(lot.lot).not.toBe(before.lot);
    expect(lot.survey).toBe(before.survey);
    expect(lot.grading).toBe(before.grading);
    expect(lot.drawing).toBe(before.drawing);
  });
});
