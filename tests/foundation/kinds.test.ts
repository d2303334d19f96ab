import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { foundationKinds, foundationSchema } from "../../src/document/schema";
import { stepsFor } from "../../src/foundation";
import { atFloor, flat, foot, inch, onGround, plane } from "./sites";

const millimetres = (min: number, max: number) => fc.integer({ min, max }).map((mm) => mm / 1000);
const defaults = foundationSchema.parse({});

describe("the bottom of the trench", () => {
  it("is top of wall less wall and footing for stem wall and crawl space", () => {
    for (const kind of ["stem-wall", "crawl-space"] as const) {
      const { heights } = atFloor({
        floor: 1,
        topOfWallAboveFloor: -0.1,
        foundation: { kind, wallHeight: 1, footingThickness: 0.3 },
      });
      expect(heights.lowestBottom).toBeCloseTo(1 - 0.1 - 1 - 0.3, 12);
      expect(heights.highestBottom).toBe(heights.lowestBottom);
    }
  });

  it("is the edge's depth below the top of a slab with a thickened edge", () => {
    const { heights, takeOff, stepped } = atFloor({
      floor: 1,
      foundation: { kind: "thickened-edge", edge: { depth: 0.4, width: 0.3 } },
    });
    expect(heights.lowestBottom).toBeCloseTo(0.6, 12);
    expect(heights.topOfFooting).toBeNull();
    expect(stepped).toBeNull();
    expect(takeOff.wall + takeOff.footing).toBe(0);
  });

  it("follows the ground for posts, so far below undisturbed ground each", () => {
    const result = onGround(flat(10), plane(0, -0.1), {
      floor: 0.3,
      strip: 0.15,
      foundation: { kind: "posts", posts: { ...defaults.posts, holeDepth: 1.2, spacing: 2.5 } },
    });
    expect(result.posts).toHaveLength(16);
    expect(result.takeOff.posts).toBe(16);
    for (const { at, bottom, length } of result.posts) {
      expect(bottom).toBeCloseTo(Math.min(-0.1 * at[0] - 0.15, 0.3 - 0.1524) - 1.2, 9);
      expect(length).toBeCloseTo(0.3 - bottom, 12);
    }
    const low = result.posts.find(({ at }) => at[0] > 9.99);
    expect(low?.inFill).toBeCloseTo(0.3 - 0.1524 + 1 + 0.15, 9);
    expect(result.dig).toBeNull();
    expect(result.levelFooting).toBeNull();
  });
});

describe("raising the floor by h", () => {
  it("shows h more of every wall above the ground as it is, and digs h less", () => {
    fc.assert(
      fc.property(millimetres(-500, 1500), millimetres(1, 800), millimetres(-60, 60), (floor, h, slope) => {
        const at = (height: number) =>
          onGround(flat(8), plane(0, slope, slope / 2), { floor: height, showing: null });
        const [before, after] = [at(floor), at(floor + h)];
        before.walls.forEach((wall, i) => {
          const raised = after.walls[i];
          expect((raised?.leastShowing ?? 0) - wall.leastShowing).toBeCloseTo(h, 9);
          expect((raised?.mostShowing ?? 0) - wall.mostShowing).toBeCloseTo(h, 9);
        });
        expect(before.cover.bearing.least - after.cover.bearing.least).toBeCloseTo(h, 9);
        expect((after.slabFill?.greatest ?? 0) - (before.slabFill?.greatest ?? 0)).toBeCloseTo(h, 9);
      }),
    );
  });
});

describe("footing in fill", () => {
  it("is told by stretches, with the walls they lie on", () => {
    const { cover } = onGround(flat(10), plane(0, -0.2), { floor: 0.6, strip: 0 });
    // Bottom at 0.6 − 1.2192 − 0.2032 = −0.8224: the ground is lower beyond x = 4.112.
    expect(cover.inFill.map(({ wall }) => wall)).toEqual([0, 1, 2]);
    expect(cover.inFill[0]?.from).toBeCloseTo(4.25, 9);
    expect(cover.inFill[1]).toMatchObject({ from: 0, to: 10 });
  });
});

describe("the trench", () => {
  const trench = { ...defaults.trench, workingSpace: 0, soil: "B" as const };
  /** 2 m below level ground that stays as it is. */
  const twoDeep = {
    floor: 0.5,
    strip: 0,
    showing: null,
    foundation: { wallHeight: 2.3, footingThickness: 0.2, footingWidth: 0.4, wallThickness: 0.4 },
  };
  const dig = (sides: "sloped" | "benched" | "shored") =>
    atFloor({
      ...twoDeep,
      foundation: { ...twoDeep.foundation, trench: { ...trench, sides, benchHeight: 1 } },
    }).dig;

  it("upright holds width × depth, slopes a square of the depth more, benches half a bench a side more", () => {
    const centre = 4 * (10 - 0.4);
    expect(dig("shored")?.volume).toBeCloseTo(centre * 0.8, 9);
    expect(dig("sloped")?.volume).toBeCloseTo(centre * (0.8 + 4), 9);
    expect(dig("benched")?.volume).toBeCloseTo(centre * (0.8 + 4 + 2), 9);
  });

  it("is dug from what the mass cut leaves: half a section from outside, half from under the slab's base", () => {
    const cut = atFloor({
      ...twoDeep,
      floor: -0.5,
      showing: 0.1,
      foundation: { ...twoDeep.foundation, wallHeight: 1.3, trench: { ...trench, sides: "shored" } },
    });
    const { dig: found, heights } = cut;
    // Bottom at −2; finished ground outside at −0.6, the base's underside inside.
    const depths = [1.4, heights.earthInside + 2];
    expect(found?.deepest.depth).toBeCloseTo(1.4, 9);
    expect(found?.volume).toBeCloseTo(
      ((4 * (10 - 0.4) * 0.4) / 2) * ((depths[0] ?? 0) + (depths[1] ?? 0)),
      9,
    );
  });

  it("walls round a fill take its room: 9.6 m² of wall in 0.4 m of fill on level ground", () => {
    const filled = (kind: "stem-wall" | "crawl-space") =>
      atFloor({
        floor: 0.8,
        strip: 0,
        foundation: { kind, wallThickness: 0.25, slabThickness: 0.1, insulation: 0, baseThickness: 0.3 },
      });
    expect(filled("stem-wall").heights.earthInside).toBeCloseTo(0.4, 12);
    expect(filled("stem-wall").wallsInFill).toBeCloseTo((100 - 9.5 * 9.5) * 0.4, 9);
    expect(filled("crawl-space").wallsInFill).toBe(0);
  });

  it("leaves over what concrete takes the place of, and piles the rest beside it, 2 ft back", () => {
    const found = dig("sloped");
    const cast = 4 * (10 - 0.4) * 2 * 0.4;
    expect((found?.volume ?? 0) - (found?.backfill ?? 0)).toBeCloseTo(cast, 9);
    // Compacted, what goes back takes 1 ÷ 0.9 of itself out of the heap.
    expect(found?.leftOver).toBeCloseTo((found?.volume ?? 0) - (found?.backfill ?? 0) / 0.9, 9);
    const [pile] = found?.spoil ?? [];
    // Wall and trench bottom are equally wide: the edge is the slope's 2 m out of the face.
    expect(pile?.edge).toBeCloseTo(2, 9);
    expect(pile?.from).toBeCloseTo(2 + 0.6096, 9);
    const section = 1.5 * (pile?.height ?? 0) ** 2 * 10;
    expect(section).toBeCloseTo(pile?.loose ?? 0, 9);
    const loose = (found?.spoil ?? []).reduce((sum, each) => sum + each.loose, 0);
    expect(loose).toBeCloseTo((found?.volume ?? 0) * 1.25, 9);
  });
});

describe("fill that walls hold", () => {
  it("inside: from the floor down to the ground outside", () => {
    const held = (floor: number) =>
      onGround(flat(10), plane(0, -0.1), { floor, showing: null }).unbalanced[1];
    expect(held(0.5)?.holds).toBe("inside");
    expect(held(0.5)?.inside).toBeCloseTo(1.5, 9);
    expect(held(0.5)?.passes).toBe(false);
    expect(held(0.5)?.at.place).toBe("corner B");
    expect(held(0.2)?.inside).toBeCloseTo(1.2, 9);
    expect(held(0.2)?.passes).toBe(true);
  });

  it("outside of a crawl space: down to the lower of the ground inside and the footing's top", () => {
    const held = onGround(flat(10), plane(0), {
      floor: 0.5,
      topOfWallAboveFloor: -0.25,
      showing: null,
      foundation: { kind: "crawl-space", wallHeight: 1.5 },
    }).unbalanced[0];
    expect(held?.holds).toBe("outside");
    expect(held?.outside).toBeCloseTo(0 - (0.25 - 1.5), 9);
  });
});

describe("fill under the slab", () => {
  it("goes from the stripped ground to the base course, in lifts, and tells of cut beside fill", () => {
    const { slabFill } = onGround(flat(10), plane(0, -0.08), {
      floor: 0,
      strip: 0.15,
      foundation: { slabFill: { kind: "sand-gravel", lift: 0.15, approved: null } },
    });
    const under = defaults.slabThickness + defaults.baseThickness;
    expect(slabFill?.corners.map(({ depth }) => depth)).toEqual(
      [0.15 - under, 0.95 - under, 0.95 - under, 0.15 - under].map((want) => expect.closeTo(want, 9)),
    );
    expect(slabFill?.lifts).toBe(Math.ceil((0.95 - under) / 0.15));
    expect(slabFill?.cutAndFill).toBe(true);
    expect(slabFill?.passes).toBe(false);
    expect(atFloor({ floor: 0, foundation: { slabInside: false } }).slabFill).toBeNull();
  });
});

describe("doors", () => {
  const door = {
    id: "d1",
    name: "side door",
    kind: "walk" as const,
    wall: 0,
    offset: 2,
    width: 0.9,
    sillBelowFloor: 0,
  };

  it("tell the sill over the ground outside, and the steps that a walk door needs", () => {
    const [found] = atFloor({ floor: 0.9, showing: 0.75, doors: [door] }).doors;
    expect(found?.drop).toBeCloseTo(0.75, 12);
    expect(found?.steps).toMatchObject({ risers: 4, rise: expect.closeTo(0.1875, 9) });
    expect(found?.apronFall).toBe(0.05);
  });

  it("and the drive that comes to one are told by themselves, not among the wall that shows", () => {
    const [wall] = onGround(flat(10), ([x]) => (x > 2 && x < 6 ? 1.1 : 0.5), {
      floor: 1,
      showing: null,
      sidingLap: 0.05,
      driven: ([x]) => x > 2 && x < 6,
      openings: [{ id: "d1", name: "door", kind: "door", from: 3, to: 5, sill: 1, head: null }],
    }).walls;
    expect(wall?.leastShowing).toBeCloseTo(0.5, 9);
    expect(wall?.leastShowingAt).not.toBeNull();
    expect(wall?.sidingClearance).toBeCloseTo(0.45, 9);
    expect(wall?.besideDrive?.showing).toBeCloseTo(-0.1, 9);
    expect(wall?.mostShowing).toBeCloseTo(0.5, 9);
  });

  it("aren't counted where walls show and siding must clear the ground", () => {
    const lines = (offset: number) =>
      onGround(flat(10), ([x]) => (x > 2 && x < 2.9 ? 1 : 0.5), {
        floor: 1,
        showing: null,
        openings: [
          { id: "d1", name: "door", kind: "door", from: offset, to: offset + 0.9, sill: 1, head: null },
        ],
      }).walls[0];
    expect(lines(2)?.leastShowing).toBeCloseTo(0.5, 9);
    expect(lines(6)?.leastShowing).toBeCloseTo(0, 9);
    expect(lines(2)?.sidingClearance).toBeCloseTo(0.5, 9);
    expect(lines(6)?.sidingClearance).toBeCloseTo(0, 9);
  });

  it("need no step up to one riser, and steps are alike", () => {
    fc.assert(
      fc.property(millimetres(0, 3000), (drop) => {
        const steps = stepsFor(drop);
        expect(steps === null).toBe(drop <= 7.75 * inch + 1e-9);
        if (!steps) return;
        expect(steps.rise).toBeLessThanOrEqual(7.75 * inch + 1e-9);
        expect(steps.rise * steps.risers).toBeCloseTo(drop, 9);
      }),
    );
  });
});

describe("take-off", () => {
  it("counts bars along, up and across, forms on both sides, sheet with laps", () => {
    const { takeOff } = atFloor({
      floor: 0.3,
      foundation: {
        wallThickness: 0.2,
        wallHeight: 1,
        footingWidth: 0.4,
        footingThickness: 0.25,
        steel: { footingBars: 2, wallRows: 3, uprightSpacing: 1, slabSpacing: 0.5, laps: 0 },
        drain: true,
        insulation: 0.05,
      },
    });
    const round = 4 * 9.8;
    expect(takeOff.steel.footing).toBeCloseTo(2 * round, 9);
    expect(takeOff.steel.wall).toBeCloseTo(3 * round, 9);
    expect(takeOff.steel.uprights).toEqual({ count: 40, length: expect.closeTo(40, 9) });
    expect(takeOff.steel.slab).toBeCloseTo((2 * 9.6 * 9.6) / 0.5, 9);
    expect(takeOff.forms.wall).toBeCloseTo(40 + 4 * 9.6, 9);
    expect(takeOff.forms.footing).toBeCloseTo((4 * 10.2 + 4 * 9.4) * 0.25, 9);
    expect(takeOff.vapourSheet).toBeGreaterThan(9.6 * 9.6);
    // Over a crawl space's ground it is lapped, 6 in on a 10 ft roll, and not turned up.
    const crawl = atFloor({ floor: 0, foundation: { kind: "crawl-space", wallThickness: 0.2 } }).takeOff;
    expect(crawl.vapourSheet).toBeCloseTo((9.6 * 9.6 * 3.048) / (3.048 - 0.1524), 9);
    expect(takeOff.insulation.volume).toBeCloseTo(0.05 * 9.6 * 9.6, 9);
    expect(takeOff.drain?.pipe).toBeCloseTo(4 * (10.2 + 0.3048), 9);
    expect(takeOff.drain?.stone).toBeCloseTo(((10.2 + 0.6096) ** 2 - 10.2 ** 2) * (0.25 + 0.1524), 9);
  });

  it("a thickened edge is the trapezoid under the slab, swept along the outline", () => {
    const { takeOff } = atFloor({
      floor: 0,
      foundation: { kind: "thickened-edge", slabThickness: 0.1, edge: { depth: 0.4, width: 0.3 } },
    });
    // Frustum with its top at 10 − 2 · 0.3 inside at the bottom and 10 − 2 · 0.6 at the slab, taken from a block of 0.3 m.
    const [bottom, top] = [9.4, 8.8];
    const hollow = (0.3 / 3) * (bottom ** 2 + top ** 2 + bottom * top);
    expect(takeOff.edge).toBeCloseTo(100 * 0.3 - hollow, 9);
    // Where the edge is there is no stone: its top 0.1016 m, from 0.6 m wide to 0.4984 m, all round.
    const section = ((0.6 + 0.4984) / 2) * 0.1016;
    expect(takeOff.base).toBeCloseTo(100 * 0.1016 - section * (40 - 8 * ((0.6 + 0.4984) / 4)), 9);
    expect(takeOff.slab).toBeCloseTo(10, 9);
  });

  it("is finite for every kind, and its concrete is the sum of its parts", () => {
    for (const kind of foundationKinds) {
      const { takeOff } = atFloor({ floor: 1 * foot, foundation: { kind } });
      const { footing, wall, slab, edge, pads, total } = takeOff;
      expect(total).toBeCloseTo(footing + wall + slab + edge + pads, 12);
      expect(total).toBeGreaterThan(0);
    }
  });
});
