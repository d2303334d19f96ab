/**
 * How fast water is followed on a grid of a million cells: run by `flow.mjs`, which bundles it. Prints the rows as JSON. Argument: a file
 * into which the heights are written, for the program that hollows are compared with.
 */
import { writeFileSync } from "node:fs";
import { downhillArrows, findPonds } from "../../src/drainage";
import { flood } from "../../src/drainage/flood";
import { flowOver } from "../../src/drainage/flow";

const side = 1000;
const cell = 0.5;
const times = 9;

/** Cells across the grid on which a plan's water is followed. */
const planSide = 283;

/** Hills, a fall to one side, and roughness with many small hollows. */
function heights(side: number): Float64Array {
  let state = 12345;
  const random = () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 4294967296;
  };
  return Float64Array.from({ length: side * side }, (_, k) => {
    const [x, y] = [(k % side) * cell, Math.floor(k / side) * cell];
    return 5 * Math.sin(x / 40) + 4 * Math.cos(y / 30) + 0.02 * x + 0.02 * random();
  });
}

function medianOf(work: () => unknown) {
  const taken = Array.from({ length: times }, () => {
    const start = performance.now();
    work();
    return performance.now() - start;
  }).sort((a, b) => a - b);
  return { median: taken[times >> 1] as number, p95: taken[times - 1] as number };
}

const z = heights(side);
writeFileSync(process.argv[2] as string, z);
const grid = { x0: 0, y0: 0, cell, columns: side, rows: side };
const blocked = new Uint8Array(z.length);
const planned = {
  grid: { ...grid, columns: planSide, rows: planSide },
  z: heights(planSide),
  blocked: new Uint8Array(planSide * planSide),
  guessed: new Uint8Array(planSide * planSide),
};
const rows = [
  {
    name: "water on the plan's working grid: hollows, ways, areas, ponds, arrows",
    unit: "ms",
    limit: 100,
    judged: "p95",
    ...medianOf(() => [flowOver(planned), findPonds(planned), downhillArrows(planned)]),
  },
  {
    name: "hollows filled, directions, drained areas, 1,000,000 cells",
    unit: "ms",
    limit: 500,
    judged: "median",
    ...medianOf(() => flowOver({ grid, z, blocked })),
  },
  {
    name: "hollows filled, 1,000,000 cells",
    unit: "ms",
    limit: Number.POSITIVE_INFINITY,
    judged: "median",
    ...medianOf(() => flood(z, side, side)),
  },
];
process.stdout.write(JSON.stringify(rows));
