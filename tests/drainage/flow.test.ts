import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { FlowGround } from "../../src/drainage/flood";
import { catchmentOf, filledWithRise, flowOver, rise, runFrom } from "../../src/drainage/flow";

/** A square grid about the origin with a surface on it. */
function ground(size: number, cell: number, height: (x: number, y: number) => number): FlowGround {
  const grid = { x0: (-size * cell) / 2, y0: (-size * cell) / 2, cell, columns: size, rows: size };
  const z = Float64Array.from({ length: size * size }, (_, k) =>
    height(grid.x0 + ((k % size) + 0.5) * cell, grid.y0 + (Math.floor(k / size) + 0.5) * cell),
  );
  return { grid, z, blocked: new Uint8Array(size * size) };
}

const at = ({ grid }: FlowGround, x: number, y: number) =>
  Math.floor((y - grid.y0) / grid.cell) * grid.columns + Math.floor((x - grid.x0) / grid.cell);

function randomFrom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}

const rough = fc
  .record({
    size: fc.integer({ min: 4, max: 24 }),
    seed: fc.array(fc.integer({ min: 0, max: 5000 }), { minLength: 576, maxLength: 576 }),
  })
  .map(({ size, seed }) => {
    const made = ground(size, 1, () => 0);
    return { ...made, z: made.z.map((_, k) => (seed[k] ?? 0) / 1000) };
  });

describe("filled hollows", () => {
  it("leave every cell a falling way to the border, and no cell below its ground", () => {
    fc.assert(
      fc.property(rough, (field) => {
        const filled = filledWithRise(field);
        const { columns, rows } = field.grid;
        for (let k = 0; k < filled.length; k++) {
          expect(filled[k]).toBeGreaterThanOrEqual(field.z[k] ?? 0);
          const [i, j] = [k % columns, Math.floor(k / columns)];
          if (i === 0 || j === 0 || i === columns - 1 || j === rows - 1) continue;
          const around = [-1, 0, 1].flatMap((dj) =>
            [-1, 0, 1].map((di) => filled[k + dj * columns + di] ?? 0),
          );
          expect(Math.min(...around)).toBeLessThan(filled[k] ?? 0);
        }
      }),
    );
  });

  it("stand at the height of the lowest way out: a basin in a rim that is 1 m lower in one place", () => {
    const basin = ground(11, 1, (x, y) => (Math.hypot(x, y) > 3 ? (x > 3 && Math.abs(y) < 0.6 ? 4 : 5) : 0));
    const filled = filledWithRise(basin);
    expect(filled[at(basin, 0, 0)]).toBeGreaterThanOrEqual(4);
    expect(filled[at(basin, 0, 0)]).toBeLessThan(4 + 12 * rise);
  });
});

describe("drained areas", () => {
  it("at the border add up to the whole grid, by either method", () => {
    fc.assert(
      fc.property(rough, fc.constantFrom("d8" as const, "d-infinity" as const), (field, method) => {
        const flow = flowOver(field, method);
        let out = 0;
        flow.first.forEach((to, k) => {
          if (to < 0) out += flow.area[k] ?? 0;
        });
        expect(out).toBeCloseTo(field.z.length, 6);
      }),
    );
  });

  it("on a plane that falls between two neighbours are shared by angle (Tarboton 1997, the definition)", () => {
    // Falls to the east twice as steeply as to the north: atan(1/2) of the 45° between east and north-east.
    const plane = ground(9, 1, (x, y) => -2 * x - y);
    const flow = flowOver(plane);
    const cell = at(plane, 0, 0);
    expect(flow.first[cell]).toBe(cell + 1);
    expect(flow.second[cell]).toBe(cell + 1 + plane.grid.columns);
    expect(flow.share[cell]).toBeCloseTo(1 - Math.atan(0.5) / (Math.PI / 4), 12);
  });

  it("on a plane down the rows are the strip above a cell: closed form", () => {
    const plane = ground(20, 0.5, (_, y) => 0.1 * y);
    const flow = flowOver(plane);
    // Rows above the cell and its own, half a metre square each.
    expect(flow.area[at(plane, 0.25, 0.25)]).toBeCloseTo(0.25 * 10, 9);
  });

  it("on a cone grow with the distance from its top: r/2 a metre of contour (closed form), within 1.5 %", () => {
    const cone = ground(161, 0.5, (x, y) => -0.2 * Math.hypot(x, y));
    const { area } = flowOver(cone);
    const ring: number[] = [];
    for (let x = -26; x <= 26; x += 0.5) {
      for (let y = -26; y <= 26; y += 0.5) {
        const r = Math.hypot(x, y);
        if (r >= 24 && r < 26) ring.push((area[at(cone, x, y)] ?? 0) / 0.5);
      }
    }
    const mean = ring.reduce((sum, a) => sum + a, 0) / ring.length;
    // Each step goes on by one cell the longer way, so over all directions a way has 4 sin(45°) / π steps a cell.
    const stepsACell = (4 * Math.sin(Math.PI / 4)) / Math.PI;
    expect(mean / (12.5 * stepsACell)).toBeGreaterThan(0.985);
    expect(mean / (12.5 * stepsACell)).toBeLessThan(1.015);
  });

  it("turn with the ground: a quarter turn of rough slopes turns the answer (hollows filled flat are ties)", () => {
    const slopes = fc.record({
      size: fc.integer({ min: 4, max: 14 }),
      towards: fc.double({ min: 0, max: 2 * Math.PI, noNaN: true }),
      seed: fc.integer({ min: 1, max: 1e6 }),
    });
    fc.assert(
      fc.property(
        slopes,
        fc.constantFrom("d8" as const, "d-infinity" as const),
        ({ size, towards, seed }, method) => {
          const random = randomFrom(seed);
          // Rougher than this some cell might have no lower one beside it.
          const rough = Array.from({ length: size * size }, random);
          const half = size / 2 - 0.5;
          const height = (x: number, y: number) =>
            -1.2 * (x * Math.cos(towards) + y * Math.sin(towards)) +
            (rough[Math.round(y + half) * size + Math.round(x + half)] ?? 0);
          const straight = ground(size, 1, height);
          const turned = ground(size, 1, (x, y) => height(y, -x));
          const [a, b] = [flowOver(straight, method), flowOver(turned, method)];
          for (let j = 0; j < size; j++) {
            for (let i = 0; i < size; i++) {
              const [here, there] = [j * size + i, i * size + (size - 1 - j)];
              expect(turned.z[there]).toBe(straight.z[here]);
              expect(b.area[there]).toBeCloseTo(a.area[here] ?? Number.NaN, 6);
            }
          }
        },
      ),
    );
  });

  it("go round what is blocked, and none comes from within", () => {
    const plane = ground(21, 1, (_, y) => 0.1 * y);
    const blocked = plane.blocked.map((_, k) => {
      const [x, y] = [(k % 21) - 10, Math.floor(k / 21) - 10];
      return Math.abs(x) <= 3 && Math.abs(y) <= 2 ? 1 : 0;
    });
    const flow = flowOver({ ...plane, blocked });
    const inside = at(plane, 0, 0);
    expect(flow.area[inside]).toBe(0);
    // Just below the block nothing comes down but a cell's own; at its sides all that was held up.
    expect(flow.area[at(plane, 0, -3)]).toBeLessThan(flow.area[at(plane, 4, -3)] ?? 0);
  });
});

describe("a run", () => {
  it("goes downhill all the way and ends at the border", () => {
    fc.assert(
      fc.property(rough, fc.integer({ min: 0, max: 1000 }), (field, pick) => {
        const flow = flowOver(field);
        const cell = pick % field.z.length;
        const { x0, y0, columns } = field.grid;
        const run = runFrom(flow, x0 + (cell % columns) + 0.5, y0 + Math.floor(cell / columns) + 0.5);
        const heights = Array.from(
          { length: run.length / 2 },
          (_, k) => flow.filled[at(field, run[2 * k] ?? 0, run[2 * k + 1] ?? 0)] ?? 0,
        );
        heights.slice(1).forEach((z, k) => {
          expect(z).toBeLessThan(heights[k] ?? 0);
        });
        const last = at(field, run.at(-2) ?? 0, run.at(-1) ?? 0);
        const [i, j] = [last % columns, Math.floor(last / columns)];
        expect(i === 0 || j === 0 || i === columns - 1 || j === field.grid.rows - 1).toBe(true);
      }),
    );
  });

  it("isn't there beyond the grid", () => {
    expect(runFrom(flowOver(ground(5, 1, (x) => x)), 99, 0)).toHaveLength(0);
  });
});

describe("a catchment", () => {
  it("of a cell is the area that drains through it", () => {
    fc.assert(
      fc.property(rough, fc.integer({ min: 0, max: 1000 }), (field, pick) => {
        const flow = flowOver(field);
        const cell = pick % field.z.length;
        const target = new Uint8Array(field.z.length);
        target[cell] = 1;
        expect(catchmentOf(flow, target).area).toBeCloseTo(flow.area[cell] ?? 0, 9);
      }),
    );
  });

  it("tells its longest way and its fall, and whether it runs on beyond the grid", () => {
    const plane = ground(21, 1, (_, y) => 0.1 * y);
    const target = new Uint8Array(21 * 21);
    target[at(plane, 0, -5)] = 1;
    const found = catchmentOf(flowOver(plane), target);
    expect(found.longest).toBeCloseTo(15, 9);
    expect(found.fall).toBeCloseTo(1.5, 5);
    expect(found.touchesEdge).toBe(true);
    const hill = ground(41, 1, (x, y) => -Math.hypot(x, y));
    const below = new Uint8Array(41 * 41);
    below[at(hill, 5, 0)] = 1;
    expect(catchmentOf(flowOver(hill), below).touchesEdge).toBe(false);
  });
});
