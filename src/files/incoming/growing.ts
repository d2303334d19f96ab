/** Points, lines and triangles gathered one by one into flat arrays that grow as needed. */
import type { IncomingFaces, IncomingLine, IncomingPoints, LineKind } from "./incoming";

export class Numbers {
  private values = new Float64Array(1024);
  length = 0;

  push(value: number): void {
    if (this.length === this.values.length) {
      const wider = new Float64Array(2 * this.length);
      wider.set(this.values);
      this.values = wider;
    }
    this.values[this.length++] = value;
  }

  /** The numbers so far. */
  done(): Float64Array {
    return this.values.slice(0, this.length);
  }
}

export class PointGatherer {
  private readonly x = new Numbers();
  private readonly y = new Numbers();
  private readonly z = new Numbers();
  private readonly names: string[] = [];

  get count(): number {
    return this.names.length;
  }

  add(name: string, x: number, y: number, z: number): void {
    this.names.push(name);
    this.x.push(x);
    this.y.push(y);
    this.z.push(z);
  }

  done(): IncomingPoints {
    return { names: this.names, x: this.x.done(), y: this.y.done(), z: this.z.done() };
  }
}

/** Corners at one place with one height are one corner. */
export class FaceGatherer {
  private readonly x = new Numbers();
  private readonly y = new Numbers();
  private readonly z = new Numbers();
  private readonly triangles: number[] = [];
  private readonly known = new Map<string, number>();

  /** Adds a triangle, unless two of its corners are one. */
  add(
    a: readonly [number, number, number],
    b: readonly [number, number, number],
    c: readonly [number, number, number],
  ): void {
    const [i, j, k] = [this.corner(a), this.corner(b), this.corner(c)];
    if (i !== j && j !== k && k !== i) this.triangles.push(i, j, k);
  }

  done(): IncomingFaces {
    return {
      x: this.x.done(),
      y: this.y.done(),
      z: this.z.done(),
      triangles: Uint32Array.from(this.triangles),
    };
  }

  private corner([x, y, z]: readonly [number, number, number]): number {
    const key = `${x} ${y} ${z}`;
    const found = this.known.get(key);
    if (found !== undefined) return found;
    const made = this.x.length;
    this.known.set(key, made);
    this.x.push(x);
    this.y.push(y);
    this.z.push(z);
    return made;
  }
}

/** A line without a last corner that repeats its first (it is closed then) and without corners repeated in a row; null under two corners. */
export function lineOf(
  name: string,
  corners: readonly (readonly [number, number, number])[],
  closed = false,
  said: { readonly kind?: LineKind } = {},
): IncomingLine | null {
  const same = (a: readonly number[] | undefined, b: readonly number[] | undefined) =>
    a !== undefined && b !== undefined && a[0] === b[0] && a[1] === b[1];
  const kept = corners.filter((corner, i) => i === 0 || !same(corner, corners[i - 1]));
  let round = closed;
  if (kept.length > 2 && same(kept[0], kept.at(-1))) {
    kept.pop();
    round = true;
  }
  if (kept.length < 2) return null;
  return { name, ...said, closed: round, xyz: Float64Array.from(kept.flat()) };
}
