/** Slopes, filled hollows, directions of water and drained areas against published examples, other programs and closed forms. */
import { describe, expect, it } from "vitest";
import { type FlowGround, flood } from "../../src/drainage/flood";
import { type FlowMethod, flowOver } from "../../src/drainage/flow";
import { gradientAt } from "../../src/drainage/slope";
import filled from "./data/filled.json";

const degree = Math.PI / 180;

/** Rows from the north, as tables print them; cells of one metre unless told. */
function printed(rows: readonly (readonly number[])[], cell = 1): FlowGround {
  const columns = rows[0]?.length ?? 0;
  const z = Float64Array.from([...rows].reverse().flat());
  return { grid: { x0: 0, y0: 0, cell, columns, rows: rows.length }, z, blocked: new Uint8Array(z.length) };
}

/** The same with a wall round it: no water comes from or goes beyond. */
function walled(rows: readonly (readonly number[])[]): FlowGround {
  const edge = Array.from({ length: (rows[0]?.length ?? 0) + 2 }, () => 0);
  const ground = printed([edge, ...rows.map((row) => [0, ...row, 0]), edge]);
  const { columns } = ground.grid;
  const blocked = ground.blocked.map((_, k) => {
    const [i, j] = [k % columns, Math.floor(k / columns)];
    return i === 0 || j === 0 || i === columns - 1 || j === ground.grid.rows - 1 ? 1 : 0;
  });
  return { ...ground, blocked };
}

function surface(size: number, cell: number, height: (x: number, y: number) => number): FlowGround {
  const grid = { x0: (-size * cell) / 2, y0: (-size * cell) / 2, cell, columns: size, rows: size };
  const z = Float64Array.from({ length: size * size }, (_, k) =>
    height(grid.x0 + ((k % size) + 0.5) * cell, grid.y0 + (Math.floor(k / size) + 0.5) * cell),
  );
  return { grid, z, blocked: new Uint8Array(z.length) };
}

describe("slope on nine cells", () => {
  it("by Horn's weights: an example of general GIS documentation (75.26°), its own page not opened", () => {
    const { grid, z } = printed(
      [
        [50, 45, 50],
        [30, 30, 30],
        [8, 10, 10],
      ],
      5,
    );
    const [east, north] = gradientAt(grid, z, [1, 1]);
    expect(east).toBeCloseTo(0.05, 9);
    expect(north).toBeCloseTo(3.8, 9);
    expect(Math.atan(Math.hypot(east, north)) / degree).toBeCloseTo(75.25762, 4);
  });

  it("is exact on a plane, at its border and beside what is left out too (closed form)", () => {
    const { grid, z, blocked } = surface(5, 2, (x, y) => 100 - 0.03 * x - 0.04 * y);
    const left = blocked.map((_, k) => (k === 12 ? 1 : 0));
    for (let k = 0; k < z.length; k++) {
      if (left[k]) continue;
      const [east, north] = gradientAt(grid, z, [k % 5, Math.floor(k / 5)], 1, left);
      expect(east).toBeCloseTo(-0.03, 12);
      expect(north).toBeCloseTo(-0.04, 12);
    }
  });
});

describe("filled hollows", () => {
  it.each(filled.fields)(
    "equal scikit-image's reconstruction by erosion, cell for cell: $name",
    ({ columns, rows, heights, filled: theirs }) => {
      expect([...flood(Float64Array.from(heights), columns, rows).level]).toEqual(theirs);
      expect(theirs.filter((level, i) => level > (heights[i] ?? 0)).length).toBeGreaterThan(100);
    },
  );

  it("are the lowest, over all ways to the edge, of the highest cell on the way: R. Barnes et al. 2014, the definition", () => {
    const { grid, z } = printed([
      [9, 9, 9, 9, 9, 9],
      [9, 5, 4, 6, 7, 9],
      [9, 3, 1, 8, 5, 9],
      [9, 6, 4, 7, 4, 9],
      [9, 9, 9, 9, 6.5, 9],
      [9, 9, 9, 9, 6, 9],
    ]);
    const { level } = flood(z, grid.columns, grid.rows);
    const expected = printed([
      [9, 9, 9, 9, 9, 9],
      [9, 6.5, 6.5, 6.5, 7, 9],
      [9, 6.5, 6.5, 8, 6.5, 9],
      [9, 6.5, 6.5, 7, 6.5, 9],
      [9, 9, 9, 9, 6.5, 9],
      [9, 9, 9, 9, 6, 9],
    ]);
    expect([...level]).toEqual([...expected.z]);
    expect(level.reduce((sum, at, i) => sum + at - (z[i] ?? 0), 0)).toBeCloseTo(20.5, 12);
  });
});

describe("one way a cell (D8)", () => {
  it("is that of the classic grid of six by six, and so are its counts (after S. Jenson and J. Domingue 1988)", () => {
    const ground = walled([
      [78, 72, 69, 71, 58, 49],
      [74, 67, 56, 49, 46, 50],
      [69, 53, 44, 37, 38, 48],
      [64, 58, 55, 22, 31, 24],
      [68, 61, 47, 21, 16, 19],
      [74, 53, 34, 12, 11, 12],
    ]);
    const codes = [
      [2, 2, 2, 4, 4, 8],
      [2, 2, 2, 4, 4, 8],
      [1, 1, 2, 4, 8, 4],
      [128, 128, 1, 2, 4, 8],
      [2, 2, 1, 4, 4, 4],
      [1, 1, 1, 1, 0, 16],
    ];
    const counts = [
      [0, 0, 0, 0, 0, 0],
      [0, 1, 1, 2, 2, 0],
      [0, 3, 7, 5, 4, 0],
      [0, 0, 0, 20, 0, 1],
      [0, 0, 0, 1, 24, 0],
      [0, 2, 4, 7, 35, 1],
    ];
    const { first, area } = flowOver(ground, "d8");
    const { columns } = ground.grid;
    const step = new Map([
      [1, 1],
      [2, 1 - columns],
      [4, -columns],
      [8, -1 - columns],
      [16, -1],
      [32, columns - 1],
      [64, columns],
      [128, columns + 1],
    ]);
    codes.forEach((row, j) => {
      row.forEach((code, i) => {
        const cell = (6 - j) * columns + i + 1;
        expect(first[cell]).toBe(code === 0 ? -1 : cell + (step.get(code) ?? Number.NaN));
        expect(area[cell]).toBe((counts[j]?.[i] ?? Number.NaN) + 1);
      });
    });
  });
});

describe("ways by facets (D-infinity): D. Tarboton, Water Resources Research 33(2), 1997", () => {
  it("one facet: heights 100, 99.4 and 99.1 a cell apart give 26.565° and shares of 0.4097 and 0.5903", () => {
    const ground = walled([
      [200, 200, 99.1],
      [200, 100, 99.4],
      [200, 200, 200],
    ]);
    const { columns } = ground.grid;
    const middle = 2 * columns + 2;
    const { first, second, share } = flowOver(ground);
    expect(first[middle]).toBe(middle + 1);
    expect(second[middle]).toBe(middle + 1 + columns);
    expect((1 - (share[middle] ?? 0)) * 45).toBeCloseTo(26.565, 3);
    expect(share[middle]).toBeCloseTo(0.4097, 4);
  });

  it("a facet that falls past its own edge gives all to the slanted cell, one that falls the other way to the straight one", () => {
    const past = walled([
      [200, 200, 97],
      [200, 100, 99],
      [200, 200, 200],
    ]);
    const { columns } = past.grid;
    const middle = 2 * columns + 2;
    expect(flowOver(past).first[middle]).toBe(middle + 1 + columns);
    expect(flowOver(past).second[middle]).toBe(-1);
    const away = walled([
      [200, 200, 99.9],
      [200, 100, 99],
      [200, 200, 200],
    ]);
    expect(flowOver(away).first[middle]).toBe(middle + 1);
    expect(flowOver(away).second[middle]).toBe(-1);
  });

  it.each([0, 20, 45, 70, 135, 200, 333])("is exact on a plane that falls towards %d°", (angle) => {
    const [dx, dy] = [Math.cos(angle * degree), Math.sin(angle * degree)];
    const plane = surface(7, 1, (x, y) => -0.1 * (x * dx + y * dy));
    const { first, second, share } = flowOver(plane);
    const middle = 3 * 7 + 3;
    const towards = (to: number) => Math.atan2(Math.floor(to / 7) - 3, (to % 7) - 3);
    const straight = towards(first[middle] ?? 0);
    const beside = (second[middle] ?? -1) < 0 ? straight : towards(second[middle] ?? 0);
    const turn = Math.atan2(Math.sin(beside - straight), Math.cos(beside - straight));
    const found = straight + (1 - (share[middle] ?? 0)) * turn;
    expect(Math.cos(found - angle * degree)).toBeCloseTo(1, 9);
  });
});

describe("drained areas in closed form", () => {
  it("a plane: the length of the slope above, a metre of width, by either method", () => {
    for (const method of ["d-infinity", "d8"] as const satisfies readonly FlowMethod[]) {
      const plane = surface(62, 1, (_, y) => 0.1 * y);
      // Thirty rows above and the cell itself.
      expect(flowOver(plane, method).area[31 * 62 + 31]).toBeCloseTo(31, 9);
    }
  });

  it("a funnel: (R² − r²) / 2r a metre of its ring (test surfaces of Tarboton 1997, from memory), within 3 % round the ring", () => {
    const [size, cell, outer] = [201, 0.5, 48];
    const funnel = surface(size, cell, (x, y) => 0.2 * Math.hypot(x, y));
    const { grid } = funnel;
    const centre = (k: number): [number, number] => [
      grid.x0 + ((k % size) + 0.5) * cell,
      grid.y0 + (Math.floor(k / size) + 0.5) * cell,
    ];
    // A disc of radius R; beyond it nothing drains, so that its middle keeps all that comes.
    const blocked = funnel.blocked.map((_, k) => (Math.hypot(...centre(k)) > outer ? 1 : 0));
    const flow = flowOver({ ...funnel, blocked });
    const through = (r: number) => {
      let sum = 0;
      for (let k = 0; k < blocked.length; k++) {
        if (blocked[k] || Math.hypot(...centre(k)) <= r) continue;
        const area = flow.area[k] ?? 0;
        const parts = [
          [flow.first[k] ?? -1, flow.share[k] ?? 0],
          [flow.second[k] ?? -1, 1 - (flow.share[k] ?? 0)],
        ] as const;
        for (const [to, part] of parts) if (to >= 0 && Math.hypot(...centre(to)) <= r) sum += part * area;
      }
      return sum / (2 * Math.PI * r);
    };
    for (const r of [5, 10, 20, 30]) {
      const closed = (outer ** 2 - r ** 2) / (2 * r);
      expect(Math.abs(through(r) / closed - 1)).toBeLessThan(0.03);
    }
  });
});
