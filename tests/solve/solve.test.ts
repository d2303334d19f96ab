import { describe, expect, it } from "vitest";
import { type Project, projectSchema } from "../../src/document/schema";
import { createSolver } from "../../src/solve/pipeline";
import type { Results } from "../../src/solve/results";
import { difference } from "./difference";
import { plane, shed, site } from "./sites";

const full = (project: Project, floor?: number): Results =>
  createSolver().solve(project, floor === undefined ? {} : { floor });

const garden = {
  grading: {
    drives: [
      {
        id: "d",
        name: "drive",
        line: [
          [6, -30],
          [6, 0],
        ],
        door: "door",
        landing: { length: 5, fall: 0.02 },
      },
    ],
    swales: [
      {
        id: "s",
        name: "swale",
        line: [
          [-12, 14],
          [20, 14],
          [34, -6],
        ],
      },
    ],
  },
};
const studio = {
  ...shed,
  doors: [{ id: "door", name: "big door", wall: 0, offset: 4.5, width: 3, sillBelowFloor: 0.02 }],
};
/** A studio with drive and swale on ground that falls 4 % to the south and 2 % to the east. */
const hillside = site({ surface: plane(100, -0.02, 0.04), building: studio, rest: garden });

describe("a whole project", () => {
  const results = full(hillside);

  it("knows the ground at its corners and the wall above it", () => {
    expect(results.ground?.measuredPoints).toBe(169);
    expect(results.corners.map(({ name, ground }) => [name, ground])).toEqual([
      ["A", expect.closeTo(100, 9)],
      ["B", expect.closeTo(99.76, 9)],
      ["C", expect.closeTo(100.08, 9)],
      ["D", expect.closeTo(100.32, 9)],
    ]);
    expect(results.corners[3]).toMatchObject({
      guessed: false,
      wallAboveGround: expect.closeTo(0.18, 9),
      floorAboveGround: expect.closeTo(0.18, 9),
      wallAboveFinished: expect.closeTo(0.1524, 9),
    });
  });

  it("moves exactly the prisms under the floor: a plane's mean height times the area", () => {
    // Base course at 100.5 − 0.127 − 0.1016; the ground's mean under 12 × 8 m is 100 − 0.12 + 0.16.
    const { inside } = results.earthwork ?? { inside: { cut: 0, fill: 0 } };
    expect(inside.fill - inside.cut).toBeCloseTo((100.2714 - 100.04) * 96, 8);
  });

  it("agrees with itself: totals, curve and grid", () => {
    const { inside, outside, total } = results.earthwork ?? { inside: zero, outside: zero, total: zero };
    expect(total.fill).toBeCloseTo(inside.fill + outside.fill, 9);
    expect(results.curve).toHaveLength(41);
    const after = results.curve.findIndex(({ floor }) => floor > 100.5);
    const [a, b] = [results.curve[after - 1], results.curve[after]];
    if (!a || !b) throw new Error("the present floor lies on the curve");
    const share = (100.5 - a.floor) / (b.floor - a.floor);
    expect(Math.abs(a.fill + share * (b.fill - a.fill) - total.fill) / total.fill).toBeLessThan(0.02);
    expect(outside).toMatchObject({ error: expect.any(Number) });
  });

  it("has fill rising and cut falling along the curve", () => {
    results.curve.forEach((point, i) => {
      const before = results.curve[i - 1];
      if (!before) return;
      expect(point.fill).toBeGreaterThanOrEqual(before.fill - 1e-9);
      expect(point.cut).toBeLessThanOrEqual(before.cut + 1e-9);
    });
  });

  it("gives readings from the set-up that saw the mark, and from today's reading when there is one", () => {
    const row = ({ setout }: Results) => setout.rows.find(({ what }) => what === "bottom of trench");
    expect(results.setout).toMatchObject({ mark: "bolt", markHeight: 100, beam: 200 });
    const bottom = 100.5 - 1.2192 - 0.2032;
    expect(row(results)).toMatchObject({
      height: expect.closeTo(bottom, 9),
      reading: expect.closeTo(200 - bottom, 9),
    });
    const worksheet = { markReading: { text: "1.4", m: 1.4 } };
    expect(row(full({ ...hillside, worksheet }))?.reading).toBeCloseTo(101.4 - bottom, 9);
  });

  it("sets out the finished ground side by side where sides differ, each by its walls", () => {
    const project = site({
      rest: {
        grading: { apron: { showing: 0.2, fall: 0.05, width: 3, sides: [{ wall: 1, width: 1, fall: 0.1 }] } },
      },
    });
    const rows = createSolver()
      .solve(project)
      .setout.rows.filter(({ what }) => what === "finished ground");
    expect(rows.map(({ where, height }) => [where, Math.round(height * 1e6) / 1e6])).toEqual([
      ["at the wall, A-B, C-D, D-A, clear of drives", 100.3],
      ["3.000 m out from the wall, A-B, C-D, D-A", 100.15],
      ["at the wall, B-C, clear of drives", 100.3],
      ["1.000 m out from the wall, B-C", 100.2],
    ]);
  });

  it("sets out the finished ground at the wall and where the apron ends, not where all sides are left as they are", () => {
    const ground = (project: Project) =>
      full(project)
        .setout.rows.filter(({ what }) => what === "finished ground")
        .map(({ height }) => height);
    const { apron } = hillside.grading;
    const wall = (results.topOfWall ?? Number.NaN) - apron.showing;
    const [atWall, out] = ground(hillside);
    expect(atWall).toBeCloseTo(wall, 9);
    expect(out).toBeCloseTo(wall - apron.fall * apron.width, 9);
    const leave = hillside.building?.outline.map((_, side) => side) ?? [];
    expect(ground({ ...hillside, grading: { ...hillside.grading, apron: { ...apron, leave } } })).toEqual([]);
  });

  it("sets out the sill, the swale's bed and the ends of the drive", () => {
    const rows = results.setout.rows.map(({ what, where }) => `${what}, ${where}`);
    for (const want of [
      "sill of big door, wall A-B",
      "bed of swale, S1, high end",
      "top of drive, D1, at the road",
    ])
      expect(rows).toContain(want);
    expect(rows.some((row) => /^bed of swale, S\d, outlet$/.test(row))).toBe(true);
    expect(rows.some((row) => /^top of drive, D\d, at big door, wall A-B$/.test(row))).toBe(true);
    expect(results.setout.rows.find(({ what }) => what.startsWith("sill"))?.height).toBeCloseTo(100.48, 9);
  });

  it("has one grade from the road at 98.68 up to the landing at 100.38", () => {
    const [drive] = results.drives;
    expect(drive?.stations[0]?.finished).toBeCloseTo(98.68, 9);
    expect(drive?.steepest).toBeCloseTo((100.38 - 98.68) / 25, 9);
  });

  it("draws contours, daylight and arrows, and a section that falls", () => {
    expect(results.existingContours.length).toBeGreaterThan(3);
    expect(results.finishedContours.some(({ lines }) => lines.length > 0)).toBe(true);
    expect(results.daylight.length).toBeGreaterThan(0);
    expect(results.arrows.length).toBeGreaterThan(100);
    const section = results.section;
    expect(section?.existing[1]).toBeGreaterThan(section?.existing.at(-1) ?? Infinity);
    const [enters, leaves] = section?.building ?? [0, 0];
    expect(leaves - enters).toBeCloseTo(8, 9);
  });

  it("finds the floor's limits from the ground of this plane", () => {
    const height = (id: string) => results.band.rules.find((rule) => rule.id === id)?.height ?? Number.NaN;
    // Footing: lowest wall 99.76, strip and 12 in down, footing and wall up.
    expect(height("intoUndisturbed")).toBeCloseTo(99.76 - 0.1524 - 0.3048 + 0.2032 + 1.2192, 9);
    // Highest ground within 10 ft of corner D: uphill at 2 % and 4 %, which is √20 % steep.
    expect(height("aboveUphillGround")).toBeCloseTo(100.32 + 3.048 * Math.hypot(0.02, 0.04) + 0.1524, 2);
    expect(height("steepestDrive")).toBeCloseTo(98.68 + 0.12 * 25 + 0.1 + 0.02, 9);
    expect(height("driveDown")).toBeCloseTo(98.68 - 0.12 * 25 + 0.1 + 0.02, 9);
  });

  it("says nothing is wrong that isn't", () => {
    expect(results.problems.filter(({ severity }) => severity === "error")).toEqual([]);
    expect(results.lagging).toBe(false);
  });
});

const zero = { cut: 0, fill: 0 };

describe("the solver's memory", () => {
  it("gives the same answer twice, and the same without memory", () => {
    const solver = createSolver();
    const first = solver.solve(hillside);
    expect(difference(full(hillside, 100.5001), first)).not.toBeNull();
    expect(difference(solver.solve(hillside), first)).toBeNull();
    expect(difference(createSolver({ remember: false }).solve(hillside), first)).toBeNull();
  });

  it("leaves alone what an edit doesn't touch", () => {
    const solver = createSolver();
    const first = solver.solve(hillside);
    const building = { ...(hillside.building as NonNullable<Project["building"]>), floor: 100.7 };
    const second = solver.solve({ ...hillside, building });
    expect(second.ground === first.ground).toBe(true);
    expect(second.existingContours).toBe(first.existingContours);
    expect(second.curve).toBe(first.curve);
    expect(second.surface?.existing).toBe(first.surface?.existing);
    expect(second.floor).toBe(100.7);
    expect(difference(second, full({ ...hillside, building }))).toBeNull();
  });

  it("keeps the ground while a building without shots on its corners is moved", () => {
    const solver = createSolver();
    const first = solver.solve(hillside);
    const outline = studio.outline.map(([x = 0, y = 0]): [number, number] => [x + 1, y]);
    const building = { ...(hillside.building as NonNullable<Project["building"]>), outline };
    expect(solver.solve({ ...hillside, building }).ground === first.ground).toBe(true);
  });
});

describe("a floor under the hand", () => {
  const solver = createSolver();
  const before = solver.solve(hillside);
  const drag = (floor: number) => solver.solve(hillside, { floor, detail: "drag" });

  it("follows at once with all that is read from it", () => {
    const dragged = drag(100.62);
    const settled = full(hillside, 100.62);
    for (const part of ["floor", "corners", "trench", "setout", "drives", "section", "curve"] as const)
      expect(dragged[part]).toEqual(settled[part]);
    expect(difference(dragged.surface, settled.surface)).toBeNull();
    expect(dragged.water.walls).toEqual(settled.water.walls);
    expect(dragged.earthwork?.total).toEqual(settled.earthwork?.total);
  });

  it("carries the rest over and says so", () => {
    const dragged = drag(100.62);
    expect(dragged.lagging).toBe(true);
    expect(dragged.finishedContours).toBe(before.finishedContours);
    expect(dragged.water.ponds).toBe(before.water.ponds);
    expect(drag(100.5).lagging).toBe(false);
  });

  it("doesn't change a frame's results with the next frame", () => {
    const frame = drag(100.6);
    const kept = Float64Array.from(frame.surface?.finished ?? []);
    drag(100.8);
    expect(difference(frame.surface?.finished, kept)).toBeNull();
    expect(difference(before.surface?.finished, full(hillside).surface?.finished)).toBeNull();
  });

  it("may leave the usual range", () => {
    expect(drag(108).floor).toBe(108);
    expect(full(hillside, 108).earthwork?.inside.cut).toBe(0);
  });
});

describe("a building under the hand", () => {
  it("is worked out on a coarser grid, near to the full answer", () => {
    const solver = createSolver();
    solver.solve(hillside);
    const outline = studio.outline.map(([x = 0, y = 0]): [number, number] => [x + 2, y + 1]);
    const moved = {
      ...hillside,
      building: { ...(hillside.building as NonNullable<Project["building"]>), outline },
    };
    const quick = solver.solve(moved, { detail: "drag" });
    const settled = full(moved);
    expect(quick.lagging).toBe(true);
    expect(quick.corners).toEqual(settled.corners);
    const [rough, fine] = [quick.earthwork?.total.fill ?? 0, settled.earthwork?.total.fill ?? 1];
    expect(Math.abs(rough - fine) / fine).toBeLessThan(0.005);
    expect(difference(solver.solve(moved), settled)).toBeNull();
  });
});

describe("with parts missing", () => {
  it("is empty for an empty project", () => {
    const results = full(projectSchema.parse({ drysill: 1 }));
    expect(results).toMatchObject({
      ground: null,
      floor: null,
      earthwork: null,
      section: null,
      problems: [],
    });
    expect(results.arrows).toEqual([]);
  });

  it("shows ground, contours and water before there is a building", () => {
    const hollow = site({ surface: (x, y) => 100 + 0.001 * (x * x + y * y), building: null });
    const results = full(hollow);
    expect(results.ground).not.toBeNull();
    expect(results.existingContours.length).toBeGreaterThan(0);
    expect(results.water.ponds).toHaveLength(1);
    expect(results.arrows.length).toBeGreaterThan(100);
    expect(results.earthwork).toBeNull();
  });

  it("knows floor and top of wall before there is ground", () => {
    const results = full(
      projectSchema.parse({ drysill: 1, building: { ...shed, topOfWallAboveFloor: 0.1 } }),
    );
    expect(results).toMatchObject({ floor: 100.5, topOfWall: 100.6, corners: [], surface: null });
  });
});

describe("a hollow away from the building", () => {
  it("is found too", () => {
    const bowl = (x: number, y: number) => 100 + 0.02 * x - (Math.hypot(x - 40, y + 40) < 11 ? 0.6 : 0);
    const { ponds } = full(site({ surface: bowl, spacing: 5 })).water;
    expect(ponds).toHaveLength(1);
    expect(Math.hypot((ponds[0]?.at[0] ?? 0) - 40, (ponds[0]?.at[1] ?? 0) + 40)).toBeLessThan(12);
    expect(ponds[0]?.guessed).toBe(false);
  });
});

describe("the bill of a building on level ground at 100", () => {
  const drive = {
    id: "d",
    name: "drive",
    line: [
      [6, -30],
      [6, -10],
    ],
    width: 4,
    gravel: 0.2,
    sideSlope: 3,
  };
  const leave = { leave: [0, 1, 2, 3] };
  const quantity = (id: string, drives: unknown[]) =>
    full(site({ rest: { grading: { apron: leave, drives }, materials: { stripDepth: 0.15 } } })).bill.find(
      (item) => item.id === id,
    )?.quantity;

  it("fills from the stripped ground: base at 100.2714, ground at 99.85, 12 × 8 m less its walls of 8 in", () => {
    const wall = site().building?.foundation.wallThickness ?? 0;
    expect(quantity("fill", [])).toBeCloseTo(0.4214 * (12 - 2 * wall) * (8 - 2 * wall), 8);
    expect(quantity("topsoil", [])).toBeCloseTo(0.15 * 96, 8);
  });

  it("digs out for a drive's stone what the strip hasn't taken: 0.05 m under 20 × 4 m", () => {
    expect(quantity("cut", [])).toBe(0);
    expect(quantity("cut", [drive])).toBeCloseTo(0.05 * 80, 1);
    expect(quantity("gravel-d", [drive])).toBeCloseTo(0.2 * 80, 9);
  });
});

describe("the section", () => {
  it.each([
    ["to the east", -0.05, 12, [1, 0]],
    ["to the west", 0.05, 12, [-1, 0]],
  ])(
    "runs down the long way of the building where the ground falls %s",
    (_way, gx, length, [dx = 0, dy = 0]) => {
      const { section } = full(site({ surface: plane(100, gx, 0.01) }));
      const [enters, leaves] = section?.building ?? [0, 0];
      expect(leaves - enters).toBeCloseTo(length, 9);
      expect(Math.sign((section?.end[0] ?? 0) - (section?.start[0] ?? 0))).toBe(dx);
      expect((section?.end[1] ?? 9) - (section?.start[1] ?? 0)).toBeCloseTo(dy, 9);
    },
  );
});

describe("the high ground beside a building", () => {
  it("is found on a ridge between the shots: 100 + 0.05 × (8 + 3.048)", () => {
    const ridge = (x: number, y: number) => 100 - 0.1 * Math.abs(x - 6) + 0.05 * y;
    const { band } = full(site({ surface: ridge, spacing: 6 }));
    const rule = band.rules.find(({ id }) => id === "aboveUphillGround");
    expect(rule?.height).toBeCloseTo(100 + 0.05 * 11.048 + 0.1524, 9);
    expect(rule?.place).toBe("3.048 m from wall C-D, 6.000 m from C");
  });
});

describe("a narrow swale on a wide lot", () => {
  it("holds no water on its way, however coarse the grid", () => {
    const swale = {
      id: "s",
      name: "swale",
      line: [
        [-50, 41],
        [55, 13],
      ],
      bottomWidth: 0,
      sideSlope: 2,
      depth: 0.4,
    };
    const lot = {
      outline: [
        [-250, -250],
        [250, -250],
        [250, 250],
        [-250, 250],
      ],
    };
    const { water } = full(
      site({ surface: plane(100, -0.02, 0.002), rest: { lot, grading: { swales: [swale] } } }),
    );
    expect(water.swales[0]?.drains).toBe(true);
    expect(water.ponds).toEqual([]);
  });
});
