/**
 * The page of a level book in both of its usual forms: by height of instrument, and by rise and fall.
 *
 * Units   any one unit of length, the same in and out.
 * Sign    rise = reading before - reading, where it is positive; else fall is its size.
 * Source  first principles. The page check (sum of backsights - sum of foresights = sum of rises - sum of falls = last -
 *         first) proves the arithmetic, not the readings.
 */
import { type BookFault, type LevelBook, type LevelBookRow, reduceLevelBook, type Spread } from "./levelBook";

export interface PageRow extends LevelBookRow {
  /** Height of the instrument that is set up with this row's backsight, null in other rows. */
  readonly hi: number | null;
  readonly rise: number | null;
  readonly fall: number | null;
  readonly found: number;
  readonly adjusted: number;
  /** adjusted - found. */
  readonly correction: number;
}

export interface BookPage {
  readonly rows: readonly PageRow[];
  readonly sums: { readonly bs: number; readonly fs: number; readonly rise: number; readonly fall: number };
  readonly lastMinusFirst: number;
  /** All three differences are equal. */
  readonly checks: boolean;
  readonly book: LevelBook;
}

export function bookPage(
  rows: readonly LevelBookRow[],
  spread: Spread = "setups",
):
  | { readonly ok: true; readonly page: BookPage }
  | { readonly ok: false; readonly faults: readonly BookFault[] } {
  const reduced = reduceLevelBook(rows, spread);
  if (!reduced.ok) return reduced;
  const { book } = reduced;
  let before: number | null = null;
  let setups = 0;
  const page = rows.map((row, i): PageRow => {
    const reading = row.is ?? row.fs;
    const step = reading === null || before === null ? null : before - reading;
    const { elevation: found = Number.NaN, adjusted = Number.NaN } = book.points[i] ?? {};
    before = row.bs ?? reading;
    return {
      ...row,
      hi: row.bs === null ? null : (book.setups[setups++]?.hi ?? null),
      rise: step === null || step < 0 ? null : tidy(step),
      fall: step === null || step >= 0 ? null : tidy(-step),
      found,
      adjusted,
      correction: tidy(adjusted - found),
    };
  });
  const total = (pick: (row: PageRow) => number | null) =>
    tidy(page.reduce((sum, row) => sum + (pick(row) ?? 0), 0));
  const sums = {
    bs: book.sumBs,
    fs: book.sumFs,
    rise: total(({ rise }) => rise),
    fall: total(({ fall }) => fall),
  };
  const lastMinusFirst = tidy((page.at(-1)?.found ?? 0) - (page[0]?.found ?? 0));
  const checks =
    near(sums.rise - sums.fall, lastMinusFirst) &&
    (book.pageCheck || near(sums.bs - sums.fs, lastMinusFirst));
  return { ok: true, page: { rows: page, sums, lastMinusFirst, checks, book } };
}

/** Takes off the rounding of binary sums, far below any reading. */
function tidy(value: number): number {
  return Number(value.toFixed(9)) + 0;
}

function near(a: number, b: number): boolean {
  return Math.abs(a - b) < 1e-6;
}
