/** A flat x, y line that grows; repeated places are taken once. */
export class LineBuffer {
  private values = new Float64Array(256);
  private used = 0;

  clear(): void {
    this.used = 0;
  }

  /** Number of places held. */
  get count(): number {
    return this.used >> 1;
  }

  /** Adds a place; false where it is the same as the last one. */
  add(x: number, y: number): boolean {
    const { used } = this;
    if (used > 0 && this.values[used - 2] === x && this.values[used - 1] === y) return false;
    if (used === this.values.length) {
      const larger = new Float64Array(2 * used);
      larger.set(this.values);
      this.values = larger;
    }
    this.values[used] = x;
    this.values[used + 1] = y;
    this.used = used + 2;
    return true;
  }

  /** A copy of the line so far. */
  line(): Float64Array {
    return this.values.slice(0, this.used);
  }
}
