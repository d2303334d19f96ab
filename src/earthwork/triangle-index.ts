/** Finds the triangles of a surface near a box. */
import type { Bounds } from "../geometry";
import type { Tin } from "../terrain";

/**
 * Triangles in the square buckets that their boxes reach. Method: buckets of about one triangle each, the
 * triangles of a bucket one after another in a single array.
 */
export class TriangleIndex {
  private readonly minX: number;
  private readonly minY: number;
  private readonly perMetre: number;
  private readonly columns: number;
  private readonly rows: number;
  /** Triangles of bucket b: entries[starts[b]] up to entries[starts[b + 1]]. */
  private readonly starts: Uint32Array;
  private readonly entries: Uint32Array;
  /** Number of the query that a triangle was last visited by. */
  private readonly visited: Uint32Array;
  private query = 0;

  constructor(private readonly tin: Tin) {
    const count = tin.triangles.length / 3;
    let maxX = -Infinity;
    let maxY = -Infinity;
    let minX = Infinity;
    let minY = Infinity;
    for (const corner of tin.hull) {
      minX = Math.min(minX, tin.x[corner] as number);
      maxX = Math.max(maxX, tin.x[corner] as number);
      minY = Math.min(minY, tin.y[corner] as number);
      maxY = Math.max(maxY, tin.y[corner] as number);
    }
    this.minX = minX;
    this.minY = minY;
    const longer = Math.max(maxX - minX, maxY - minY);
    const side = Math.max(Math.sqrt(((maxX - minX) * (maxY - minY)) / count), longer / 4096);
    this.perMetre = 1 / side;
    this.columns = Math.floor((maxX - minX) / side) + 1;
    this.rows = Math.floor((maxY - minY) / side) + 1;
    this.visited = new Uint32Array(count);
    this.starts = this.countedStarts();
    this.entries = this.filledEntries();
  }

  /** Visits, once each, triangles that may touch the box (and perhaps some beside it). */
  near(box: Bounds, visit: (triangle: number) => void): void {
    this.query++;
    this.forEachBucket(box, (bucket) => {
      for (let i = this.starts[bucket] as number; i < (this.starts[bucket + 1] as number); i++) {
        const triangle = this.entries[i] as number;
        if (this.visited[triangle] === this.query) continue;
        this.visited[triangle] = this.query;
        visit(triangle);
      }
    });
  }

  private countedStarts(): Uint32Array {
    const starts = new Uint32Array(this.columns * this.rows + 1);
    this.forEachEntry((bucket) => {
      starts[bucket + 1] = (starts[bucket + 1] as number) + 1;
    });
    for (let b = 1; b < starts.length; b++) starts[b] = (starts[b] as number) + (starts[b - 1] as number);
    return starts;
  }

  private filledEntries(): Uint32Array {
    const filled = this.starts.slice();
    const entries = new Uint32Array(this.starts[this.starts.length - 1] as number);
    this.forEachEntry((bucket, triangle) => {
      const at = filled[bucket] as number;
      entries[at] = triangle;
      filled[bucket] = at + 1;
    });
    return entries;
  }

  private forEachEntry(visit: (bucket: number, triangle: number) => void): void {
    const { x, y, triangles } = this.tin;
    for (let t = 0; t < triangles.length / 3; t++) {
      const a = triangles[3 * t] as number;
      const b = triangles[3 * t + 1] as number;
      const c = triangles[3 * t + 2] as number;
      const box = {
        minX: Math.min(x[a] as number, x[b] as number, x[c] as number),
        maxX: Math.max(x[a] as number, x[b] as number, x[c] as number),
        minY: Math.min(y[a] as number, y[b] as number, y[c] as number),
        maxY: Math.max(y[a] as number, y[b] as number, y[c] as number),
      };
      this.forEachBucket(box, (bucket) => visit(bucket, t));
    }
  }

  private forEachBucket(box: Bounds, visit: (bucket: number) => void): void {
    const firstColumn = Math.max(0, Math.floor((box.minX - this.minX) * this.perMetre));
    const lastColumn = Math.min(this.columns - 1, Math.floor((box.maxX - this.minX) * this.perMetre));
    const firstRow = Math.max(0, Math.floor((box.minY - this.minY) * this.perMetre));
    const lastRow = Math.min(this.rows - 1, Math.floor((box.maxY - this.minY) * this.perMetre));
    for (let row = firstRow; row <= lastRow; row++) {
      for (let column = firstColumn; column <= lastColumn; column++) visit(row * this.columns + column);
    }
  }
}
