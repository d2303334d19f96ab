/**
 * How fast surfaces are made and read: run by `terrain.mjs`, which bundles it. Prints the rows as JSON. Arguments: the
 * greatest number of points, a file into which the surface for the contours is written, and one for points and the places
 * whose heights are asked.
 */
import { writeFileSync } from "node:fs";
import Delaunator from "delaunator";
import {
  type Breakline,
  locate,
  type Tin,
  tinContours,
  triangulate,
  triangulateWithLines,
} from "../../src/terrain";
import { trianglePlane } from "../../src/terrain/plane";

interface Row {
  readonly name: string;
  readonly unit: string;
  readonly median: number;
  readonly p95: number;
  readonly limit: number;
  readonly judged: "median";
}

/** Pieces of a breakline; lines are laid so that one edge in a hundred is on one. */
const pieces = 10;
/** Mean spacing of the points, m. */
const spacing = 2;
const levels = 37;

function randomFrom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

const hills = (x: number, y: number) => 5 * Math.sin(x / 40) + 4 * Math.cos(y / 30) + 0.02 * x;

function cloud(count: number, random: () => number) {
  const side = spacing * Math.sqrt(count);
  const x = Float64Array.from({ length: count }, () => random() * side);
  const y = Float64Array.from({ length: count }, () => random() * side);
  const z = Float64Array.from(x, (px, i) => hills(px, y[i] as number) + random() * 0.2);
  return { side, x, y, z };
}

function lines(count: number, side: number, random: () => number): Breakline[] {
  return Array.from({ length: Math.round((0.03 * count) / pieces) }, (_, l) => {
    let [x, y] = [side * (0.05 + 0.9 * random()), side * (0.05 + 0.9 * random())];
    let way = random() * 2 * Math.PI;
    const corners = Array.from({ length: pieces + 1 }, () => {
      const here = [x, y, hills(x, y)] as const;
      way += (random() - 0.5) / 2;
      x += 0.9 * spacing * Math.cos(way);
      y += 0.9 * spacing * Math.sin(way);
      return here;
    });
    const column = (k: 0 | 1 | 2) => corners.map((corner) => corner[k]);
    return { name: `line ${l}`, x: column(0), y: column(1), z: column(2) };
  });
}

function timed(work: () => void): number {
  const start = performance.now();
  work();
  return performance.now() - start;
}

function row(name: string, unit: string, limit: number, values: readonly number[]): Row {
  const sorted = Float64Array.from(values).sort();
  const at = (share: number) =>
    sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] as number;
  return { name, unit, median: at(0.5), p95: at(0.95), limit, judged: "median" };
}

/** Both in turn, so that what else the machine does falls on both. */
function timeMaking(count: number, times: number, limit: number): Row {
  const random = randomFrom(count);
  const { side, x, y, z } = cloud(count, random);
  const drawn = lines(count, side, random);
  const flat = new Float64Array(2 * count);
  for (let i = 0; i < count; i++) flat.set([x[i] as number, y[i] as number], 2 * i);
  const shares: number[] = [];
  for (let i = 0; i < times; i++) {
    const bare = timed(() => new Delaunator(flat));
    shares.push(timed(() => triangulateWithLines(x, y, z, drawn)) / bare);
  }
  return row(
    `surface of ${count} points, 1 % of edges on breaklines, to Delaunator alone`,
    "×",
    limit,
    shares,
  );
}

function surface(count: number): { tin: Tin; side: number } {
  const { side, x, y, z } = cloud(count, randomFrom(count));
  const made = triangulate(x, y, z);
  if (!made.ok) throw new Error(made.reason);
  return { tin: made.tin, side };
}

/** Microseconds a query, each search starting at the answer before. */
function timeFinding(count: number): Row[] {
  const { tin, side } = surface(count);
  const walk = (places: Float64Array) => {
    let last = 0;
    return (
      (1000 *
        timed(() => {
          for (let i = 0; i < places.length; i += 2)
            last = Math.max(0, locate(tin, places[i] as number, places[i + 1] as number, last));
        })) /
      (places.length / 2)
    );
  };
  const random = randomFrom(7);
  const along = Array.from({ length: 40 }, () => walk(line(side, random)));
  const rasters = Array.from({ length: 7 }, () => walk(raster(side)));
  return [
    row(`a place found in ${count} points, along a line`, "µs", 1, along),
    row(`a place found in ${count} points, raster of a million`, "µs", 1, rasters),
  ];
}

function line(side: number, random: () => number): Float64Array {
  const end = () => side * (0.05 + 0.9 * random());
  const [ax, ay, bx, by] = [end(), end(), end(), end()];
  const count = 20_000;
  return Float64Array.from({ length: 2 * count }, (_, i) => {
    const share = (i >> 1) / count;
    return i % 2 === 0 ? ax + share * (bx - ax) : ay + share * (by - ay);
  });
}

function raster(side: number): Float64Array {
  const across = 1000;
  const place = (k: number) => side * (0.02 + (0.96 * (k + 0.5)) / across);
  return Float64Array.from({ length: 2 * across * across }, (_, i) => {
    const [row, k] = [Math.floor((i >> 1) / across), (i >> 1) % across];
    return place(i % 2 === 1 ? row : row % 2 === 0 ? k : across - 1 - k);
  });
}

/** Writes the surface for the other program: counts, x, y, z, triangles, levels, all float64. */
function timeContours(file: string): Row {
  const { tin } = surface(100_000);
  let [low, high] = [Infinity, -Infinity];
  for (const z of tin.z) [low, high] = [Math.min(low, z), Math.max(high, z)];
  const asked = Array.from({ length: levels }, (_, k) => low + ((k + 0.5) / levels) * (high - low));
  const parts = [[tin.x.length, tin.triangles.length / 3, levels], tin.x, tin.y, tin.z, tin.triangles, asked];
  writeFileSync(file, Float64Array.from(parts.flatMap((part) => Array.from(part))));
  const times = Array.from({ length: 15 }, () => timed(() => tinContours(tin, asked)));
  return row(`contours, ${levels} levels, 100000 points`, "ms", Infinity, times);
}

/** Writes points and places for the other program: counts, x, y, z, places as x, y in turn, all float64. */
function timeHeights(file: string): Row {
  const { tin, side } = surface(100_000);
  const places = raster(side);
  const parts = [Float64Array.of(tin.x.length, places.length / 2), tin.x, tin.y, tin.z, places];
  writeFileSync(
    file,
    Buffer.concat(parts.map((part) => Buffer.from(part.buffer, part.byteOffset, part.byteLength))),
  );
  const heights = new Float64Array(places.length / 2);
  const read = () => {
    let last = 0;
    for (let i = 0; i < heights.length; i++) {
      const [x, y] = [places[2 * i] as number, places[2 * i + 1] as number];
      last = Math.max(0, locate(tin, x, y, last));
      heights[i] = trianglePlane(tin, last, x, y).z;
    }
  };
  return row(
    "heights at a raster of a million places in 100000 points",
    "ms",
    Infinity,
    Array.from({ length: 5 }, () => timed(read)),
  );
}

const [most, file, places] = process.argv.slice(2);
const rows = [timeMaking(10_000, 41, 3)];
if (Number(most) >= 1_000_000) rows.push(timeMaking(1_000_000, 5, 2));
rows.push(...timeFinding(100_000));
if (Number(most) >= 1_000_000) rows.push(...timeFinding(1_000_000));
rows.push(timeHeights(places as string));
rows.push(timeContours(file as string));
process.stdout.write(JSON.stringify(rows));
