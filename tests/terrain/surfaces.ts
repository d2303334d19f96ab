/** Surfaces and checks that the terrain and earthwork tests share. */
import { expect } from "vitest";
import { inCircle, turn } from "../../src/geometry";
import { type Tin, triangulate } from "../../src/terrain";

export type Spot = readonly [x: number, y: number, z: number];

export function columns(spots: readonly Spot[]): [number[], number[], number[]] {
  return [spots.map((s) => s[0]), spots.map((s) => s[1]), spots.map((s) => s[2])];
}

/** The surface over the spots; fails the test where there is none. */
export function surfaceOf(spots: readonly Spot[]): Tin {
  const made = triangulate(...columns(spots));
  if (!made.ok) throw new Error(`no surface: ${made.reason}`);
  return made.tin;
}

export function planAreaOf(tin: Tin): number {
  let sum = 0;
  forEachTriangle(tin, (a, b, c) => {
    sum += crossOf(tin, a, b, c) / 2;
  });
  return sum;
}

export function forEachTriangle(tin: Tin, visit: (a: number, b: number, c: number, index: number) => void) {
  for (let e = 0; e < tin.triangles.length; e += 3) {
    visit(tin.triangles[e] as number, tin.triangles[e + 1] as number, tin.triangles[e + 2] as number, e / 3);
  }
}

function crossOf({ x, y }: Tin, a: number, b: number, c: number): number {
  const [ax, ay] = [x[a] as number, y[a] as number];
  return (
    ((x[b] as number) - ax) * ((y[c] as number) - ay) - ((y[b] as number) - ay) * ((x[c] as number) - ax)
  );
}

/** Twins are mutual and run over the same two points; the rim is the hull; triangles and points count up. */
export function expectSound(tin: Tin, distinct: number) {
  const { triangles, halfedges, hull } = tin;
  const next = (e: number) => (e % 3 === 2 ? e - 2 : e + 1);
  const rim: string[] = [];
  const faults: string[] = [];
  for (let e = 0; e < halfedges.length; e++) {
    const twin = halfedges[e] as number;
    if (twin < 0) rim.push(`${triangles[e]}-${triangles[next(e)]}`);
    else if (
      halfedges[twin] !== e ||
      triangles[twin] !== triangles[next(e)] ||
      triangles[next(twin)] !== triangles[e]
    )
      faults.push(`half-edge ${e} and its twin ${twin}`);
  }
  expect(faults).toEqual([]);
  const sides = [...hull].map((from, i) => `${from}-${hull[(i + 1) % hull.length]}`);
  expect(rim.sort()).toEqual(sides.sort());
  expect(triangles.length / 3).toBe(2 * distinct - 2 - hull.length);
}

/** Every triangle runs counter-clockwise, in measured coordinates. */
export function expectCounterClockwise({ x, y, triangles }: Tin) {
  for (let e = 0; e < triangles.length; e += 3) {
    const [a, b, c] = [triangles[e] as number, triangles[e + 1] as number, triangles[e + 2] as number];
    expect(
      turn(x[a] as number, y[a] as number, x[b] as number, y[b] as number, x[c] as number, y[c] as number),
    ).toBeGreaterThan(0);
  }
}

/** No point across an edge lies inside the circle of the triangle on this side: exact in measured coordinates. */
export function edgesThatAreNotDelaunay({ x, y, triangles, halfedges }: Tin): number {
  let faults = 0;
  const at = (i: number) =>
    [x[triangles[i] as number] as number, y[triangles[i] as number] as number] as const;
  for (let e = 0; e < halfedges.length; e++) {
    const twin = halfedges[e] as number;
    if (twin < 0) continue;
    const base = e - (e % 3);
    const far = twin % 3 === 0 ? twin + 2 : twin - 1;
    if (inCircle(...at(base), ...at(base + 1), ...at(base + 2), ...at(far)) > 0) faults++;
  }
  return faults;
}
