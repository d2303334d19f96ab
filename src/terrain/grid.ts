/** A regular grid of cells; cell (i, j) is at index j * columns + i, its centre at x0 + (i + 0.5) * cell. */
export interface Grid {
  readonly x0: number;
  readonly y0: number;
  readonly cell: number;
  readonly columns: number;
  readonly rows: number;
}
