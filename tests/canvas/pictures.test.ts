/** A picture under the plan by hand: picked, moved, turned, pulled; laid by points and by distances. */
import { describe, expect, it } from "vitest";
import { thingAt } from "../../src/canvas/select/hit";
import { drawingEdits, newProject, type Point, type Project, type Underlay } from "../../src/document";
import { pictureToPlan } from "../../src/underlay";
import { handOn } from "./support/hand";

/** 40 × 20 m about the origin: 400 × 200 px at 0.1 m. */
function withPicture(change: Partial<Underlay> = {}): Project {
  const edit = drawingEdits.addUnderlay.run(newProject("plan"), {
    underlay: {
      name: "plat",
      media: "image/png",
      data: "AAAA",
      width: 400,
      height: 200,
      at: [0, 0],
      scale: 0.1,
      turn: 0,
      strength: 0.5,
      ...change,
    },
  });
  if (!edit.ok) throw new Error(edit.why);
  return edit.project;
}

const thing = { kind: "underlay", id: "u1" } as const;
const picture = (project: Project): Underlay => {
  const [only] = project.drawing.underlays;
  if (!only) throw new Error("no picture");
  return only;
};
const locked = (project: Project): Project => {
  const edit = drawingEdits.lockThings.run(project, { things: [thing], locked: true });
  if (!edit.ok) throw new Error(edit.why);
  return edit.project;
};

function near(a: Point, b: Point, by = 1e-6): void {
  expect(Math.hypot(a[0] - b[0], a[1] - b[1])).toBeLessThan(by);
}

describe("taking hold of it", () => {
  it("anywhere on it, under everything else", () => {
    const project = withPicture();
    expect(thingAt(project, [19, 9], 0.5)).toEqual(thing);
    expect(thingAt(project, [21, 9], 0.5)).toBeNull();
    const lot: Project = {
      ...project,
      lot: {
        ...project.lot,
        outline: [
          [-5, -5],
          [5, -5],
          [5, 5],
        ],
      },
    };
    expect(thingAt(lot, [0, -5], 0.5)).toEqual({ kind: "lot" });
  });

  it("not while it is locked, hidden or faded to nothing", () => {
    expect(thingAt(locked(withPicture()), [0, 0], 0.5)).toBeNull();
    expect(thingAt(withPicture({ strength: 0 }), [0, 0], 0.5)).toBeNull();
    const hidden = drawingEdits.hideThings.run(withPicture(), { things: [thing], hidden: true });
    expect(hidden.ok && thingAt(hidden.project, [0, 0], 0.5)).toBeNull();
  });

  it("a drag moves it once it is selected, as one step with a name", () => {
    const hand = handOn(withPicture());
    hand.click(3, 3);
    expect(hand.selection).toEqual([thing]);
    hand.drag([
      [3, 3],
      [6, 4],
      [8, 5],
    ]);
    near(picture(hand.project).at, [5, 2]);
    expect(hand.labels).toEqual(["move picture"]);
  });

  it("its corner pulls it larger, the far corner stays", () => {
    const hand = handOn(withPicture());
    hand.click(3, 3);
    // Top right from (20, 10) out to (40, 20): half as large again.
    hand.drag(
      [
        [20, 10],
        [30, 15],
        [40, 20],
      ],
      { free: true },
    );
    expect(picture(hand.project).scale).toBeCloseTo(0.15, 9);
    near(pictureToPlan(picture(hand.project), [0, 200]), [-20, -10]);
    expect(hand.labels).toEqual(["scale picture"]);
  });

  it("its width can be typed while it is pulled", () => {
    const hand = handOn(withPicture());
    hand.click(3, 3);
    hand.move(20, 10);
    hand.press(20, 10);
    hand.move(22, 11);
    hand.type("80 m");
    hand.key("Enter");
    expect(picture(hand.project).scale).toBeCloseTo(0.2, 9);
  });

  it("its turn handle turns it about its middle by a typed angle, clockwise", () => {
    const hand = handOn(withPicture());
    hand.click(3, 3);
    // The handle stands 30 px above the top side.
    hand.move(0, 13);
    hand.press(0, 13);
    hand.move(2, 13);
    hand.type("30");
    hand.key("Enter");
    expect(picture(hand.project).turn).toBeCloseTo(-Math.PI / 6, 9);
    near(picture(hand.project).at, [0, 0]);
    expect(hand.labels).toEqual(["turn picture"]);
  });

  it("a locked one has no handles to pull, even while it is selected", () => {
    const hand = handOn(locked(withPicture()));
    hand.selection = [thing];
    hand.drag([
      [20, 10],
      [30, 15],
    ]);
    hand.drag([
      [3, 3],
      [8, 5],
    ]);
    expect(hand.labels).toEqual([]);
  });

  it("Delete takes it away", () => {
    const hand = handOn(withPicture());
    hand.click(3, 3);
    hand.key("Delete");
    expect(hand.project.drawing.underlays).toEqual([]);
  });
});

describe("two known points", () => {
  const free = { free: true };

  it("four clicks lay it so that both places lie where they belong, as one step", () => {
    const hand = handOn(withPicture(), "picture-points");
    hand.click(-10, 0, free); // picture place (100, 100)
    hand.click(30, 5, free);
    expect(hand.hint()).toContain("3 of 4");
    // The picture has gone along by 40 m and 5 m: its place (300, 100) lies at (50, 5) now.
    hand.click(50, 5, free);
    hand.move(30, 30, free);
    hand.click(30, 35, free);
    const laid = picture(hand.project);
    near(pictureToPlan(laid, [100, 100]), [30, 5]);
    near(pictureToPlan(laid, [300, 100]), [30, 35]);
    expect(laid.scale).toBeCloseTo(30 / 200, 9);
    expect(hand.labels).toEqual(["place picture by two points"]);
    expect(hand.tool).toBe("select");
    expect(hand.selection).toEqual([thing]);
  });

  it("the second place may be typed from the first: how far, and which way", () => {
    const hand = handOn(withPicture(), "picture-points");
    hand.click(-10, 0, free);
    hand.click(-10, 0, free);
    hand.click(10, 0, free);
    hand.type("50 m");
    hand.key("Tab");
    hand.type("90");
    hand.key("Enter");
    near(pictureToPlan(picture(hand.project), [300, 100]), [40, 0]);
  });

  it("both places may be typed from the plan's origin, as places are everywhere", () => {
    const hand = handOn(withPicture(), "picture-points");
    hand.click(-10, 0, free);
    hand.type("30 m, 5 m");
    hand.key("Enter");
    expect(hand.hint()).toContain("3 of 4");
    hand.click(50, 5, free);
    hand.type("30 m, 35 m");
    hand.key("Enter");
    const laid = picture(hand.project);
    near(pictureToPlan(laid, [100, 100]), [30, 5]);
    near(pictureToPlan(laid, [300, 100]), [30, 35]);
    expect(hand.said).toEqual([]);
  });

  it("Esc steps back and leaves the picture as it lay", () => {
    const hand = handOn(withPicture(), "picture-points");
    hand.click(-10, 0, free);
    hand.click(30, 5, free);
    hand.click(50, 5, free);
    hand.key("Escape");
    hand.key("Escape");
    expect(hand.shown).toBeNull();
    expect(hand.hint()).toContain("1 of 4");
    expect(hand.labels).toEqual([]);
  });

  it("a click beside the picture is answered in words", () => {
    const hand = handOn(withPicture(), "picture-points");
    hand.click(100, 0, free);
    expect(hand.said).toEqual(["That is beside the picture. Click a place that the picture shows."]);
    expect(hand.hint()).toContain("1 of 4");
  });

  it("two clicks on one place make no scale, and say so", () => {
    const hand = handOn(withPicture(), "picture-points");
    hand.click(-10, 0, free);
    hand.click(-10, 0, free);
    hand.click(10, 0, free);
    hand.click(-10, 0, free);
    expect(hand.said).toEqual(["The two places are the same. Click a second one, far from the first."]);
    expect(hand.labels).toEqual([]);
  });
});

describe("a known distance", () => {
  it("two clicks and the typed length set the scale; the first end stays", () => {
    const hand = handOn(withPicture(), "picture-distance");
    hand.click(-10, 0);
    hand.click(10, 0);
    expect(hand.question?.m).toBeCloseTo(20, 9);
    hand.question?.answer(30);
    expect(picture(hand.project).scale).toBeCloseTo(0.15, 9);
    near(pictureToPlan(picture(hand.project), [100, 100]), [-10, 0]);
    expect(hand.labels).toEqual(["scale picture by a known distance"]);
  });

  it("a second one that disagrees is told, and the scale lies between them", () => {
    const hand = handOn(withPicture(), "picture-distance");
    hand.click(-10, 0);
    hand.click(10, 0);
    hand.question?.answer(20);
    expect(hand.said).toEqual([]);
    hand.click(0, 5);
    hand.click(0, -5);
    hand.question?.answer(10.5);
    // 200 px for 20 m, 100 px for 10.5 m: (20·200 + 10.5·100) / (200² + 100²) = 0.101.
    expect(picture(hand.project).scale).toBeCloseTo(0.101, 9);
    expect(hand.said[0]).toContain("The two distances don't agree: one is 4.0 % off");
    expect(hand.labels).toEqual(["scale picture by a known distance", "scale picture by known distances"]);
  });

  it("nothing is refused in words", () => {
    const hand = handOn(withPicture(), "picture-distance");
    hand.click(-10, 0);
    hand.click(10, 0);
    const edit = hand.question?.answer(0);
    expect(edit).toEqual({ ok: false, why: "The distance must be more than nothing, like 40' or 12.35 m." });
  });
});

describe("the project with a large picture", () => {
  it("200 steps of history share its one string", () => {
    const data = Buffer.alloc(12_000_000, 7).toString("base64");
    let project = withPicture({ data });
    const steps: Project[] = [];
    for (let i = 0; i < 200; i++) {
      const edit = drawingEdits.changeUnderlay.run(project, { id: "u1", patch: { strength: i / 200 } });
      if (!edit.ok) throw new Error(edit.why);
      project = edit.project;
      steps.push(project);
    }
    // Were it copied, this would be three gigabytes of text.
    const before = process.memoryUsage().heapUsed;
    expect(before).toBeLessThan(1_000_000_000);
    expect(steps.at(-1)?.drawing.underlays[0]?.data.length).toBe(data.length);
  });
});
