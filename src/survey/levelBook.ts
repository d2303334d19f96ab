/**
 * Reduces a level book: backsights, intermediate sights and foresights → heights, page check, misclosure.
 *
 * Units   any one unit of length, the same in and out.
 * Sign    height = height of instrument - reading. misclosure = found - known.
 * Method  height of instrument = height of the point backsighted + bs; a row with fs and bs is a turning point.
 *         The run hangs on its first known elevation; each later known one closes it. The misclosure is shared
 *         over the set-ups between the two known elevations, equally or by the length of their sights, side shots with
 *         their set-up; beyond the last known elevation the correction stays as it is there.
 * Source  first principles; the equal share a set-up is the usual rule where sights are about equally long.
 * Errors  rows that can't be reduced are returned as faults, each with its line and column; nothing throws.
 */

export interface LevelBookRow {
  /** Line in the file or book, for messages. */
  readonly line: number;
  readonly point: string;
  readonly bs: number | null;
  readonly is: number | null;
  readonly fs: number | null;
  /** Known elevation of a benchmark, null for all other points. */
  readonly elevation: number | null;
  /** In a row with an fs: length of the set-up's sights, backsight and foresight together. */
  readonly distance?: number | null;
}

/** How a misclosure is shared out: the same to each set-up, in proportion to the length of its sights, or not at all. */
export type Spread = "setups" | "distance" | "nothing";

export interface BookPoint {
  readonly name: string;
  /** As found, unadjusted. */
  readonly elevation: number;
  readonly adjusted: number;
}

export interface BookSetup {
  /** Height of instrument, unadjusted. */
  readonly hi: number;
  /** The point backsighted. */
  readonly on: string;
}

export interface Closing {
  readonly name: string;
  readonly known: number;
  readonly found: number;
  readonly misclosure: number;
}

export interface LevelBook {
  readonly setups: readonly BookSetup[];
  /** One a row, in book order. */
  readonly points: readonly BookPoint[];
  readonly sumBs: number;
  readonly sumFs: number;
  /** Found - known at the last known elevation that closes a run; null while none does. */
  readonly misclosure: number | null;
  /** Every known elevation that closes a run, in book order. */
  readonly closings: readonly Closing[];
  /** Sum of bs - sum of fs equals last - first height: the arithmetic is right (it says nothing of the readings). */
  readonly pageCheck: boolean;
  /** There only where the misclosure was shared by distance: asked for, and the length of every set-up given. */
  readonly spread?: "distance";
}

export interface BookFault {
  readonly line: number;
  readonly column: keyof Omit<LevelBookRow, "line">;
  readonly what: string;
}

export type ReducedBook =
  | { readonly ok: true; readonly book: LevelBook }
  | { readonly ok: false; readonly faults: readonly BookFault[] };

/** A height in a run, above the point where the run starts. */
interface RunPoint {
  readonly row: LevelBookRow;
  readonly rise: number;
  /** Set-ups between the start of the run and this point. */
  readonly setup: number;
}

interface Run {
  readonly points: RunPoint[];
  readonly setups: { readonly hi: number; readonly on: string }[];
  /** Length of the sights of each set-up that has ended, null where it isn't given. */
  readonly lengths: (number | null)[];
  /** False while the last set-up waits for its foresight. */
  ended: boolean;
}

/** Rounding of summed decimal readings stays below this share of the largest figure. */
const ROUNDING = 1e-9;

export function reduceLevelBook(rows: readonly LevelBookRow[], spread: Spread = "setups"): ReducedBook {
  const faults: BookFault[] = [];
  const runs = followRuns(rows, faults);
  for (const run of runs) {
    const start = run.points[0]?.row;
    if (start === undefined || run.points.some(({ row }) => row.elevation !== null)) continue;
    faults.push({
      line: start.line,
      column: "elevation",
      what:
        "found no known elevation in the run that starts here, expected one on a benchmark's row" +
        (run === runs[0] ? "" : " (or an fs in this row, if it is a turning point)"),
    });
  }
  return faults.length > 0 ? { ok: false, faults } : { ok: true, book: assemble(rows, runs, spread) };
}

function followRuns(rows: readonly LevelBookRow[], faults: BookFault[]): Run[] {
  const runs: Run[] = [];
  for (const row of rows) {
    const run = runs.at(-1);
    const fault = rowFault(row, run);
    if (fault !== null) {
      faults.push({ line: row.line, ...fault });
      // Readings after a row that starts nothing would all be faulty for the same reason.
      if (run === undefined) return runs;
      continue;
    }
    if (run !== undefined && (row.bs === null || row.fs !== null || continuesAt(row, run))) sight(row, run);
    else runs.push(newRun(row));
  }
  return runs;
}

function rowFault(row: LevelBookRow, run: Run | undefined): Omit<BookFault, "line"> | null {
  const { bs, is, fs } = row;
  if (bs === null && is === null && fs === null) {
    return { column: "bs", what: "found no reading in this row, expected one under bs, is or fs" };
  }
  if (is !== null && (bs !== null || fs !== null)) {
    const other = bs === null ? "fs" : "bs";
    return {
      column: "is",
      what: `found an is beside the ${other}, expected one or the other (a turning point has fs and bs)`,
    };
  }
  const column = is === null ? "fs" : "is";
  if ((is === null && fs === null) || (run !== undefined && !run.ended)) return null;
  if (run === undefined) {
    return { column, what: `found a reading before any set-up has a bs, expected a bs on a benchmark first` };
  }
  return {
    column,
    what: `found a reading after the set-up ended with its fs, expected a bs for a new set-up first (side shots go under is)`,
  };
}

/** The bs stands in a row of its own, on the turning point that the fs of the row before ended on. */
function continuesAt(row: LevelBookRow, run: Run): boolean {
  return run.ended && row.point !== "" && run.points.at(-1)?.row.point === row.point;
}

function newRun(row: LevelBookRow): Run {
  return {
    points: [{ row, rise: 0, setup: 0 }],
    setups: [{ hi: row.bs ?? 0, on: row.point }],
    lengths: [],
    ended: false,
  };
}

/** Books one row of a run that is under way. */
function sight(row: LevelBookRow, run: Run): void {
  const hi = run.setups.at(-1)?.hi ?? 0;
  const reading = row.is ?? row.fs;
  const rise = reading === null ? (run.points.at(-1)?.rise ?? 0) : hi - reading;
  run.points.push({ row, rise, setup: run.setups.length });
  if (row.fs !== null) {
    run.ended = true;
    run.lengths.push(row.distance ?? null);
  }
  if (row.bs === null) return;
  run.setups.push({ hi: rise + row.bs, on: row.point });
  run.ended = false;
}

function assemble(rows: readonly LevelBookRow[], runs: readonly Run[], asked: Spread): LevelBook {
  const scale = largest(rows);
  const tidy = tidier(scale);
  const sumBs = tidy(sum(rows.map((row) => row.bs)));
  const sumFs = tidy(sum(rows.map((row) => row.fs)));
  const measured = runs.every(({ lengths }) => lengths.every((length) => length !== null && length > 0));
  const spread = asked === "distance" && !measured ? "setups" : asked;
  const hung = runs.map((run) => hang(run, spread));
  const closings = hung.flatMap(({ closings: found }) => found);
  const carried = sum(runs.map(lastMinusFirst));
  return {
    setups: hung.flatMap(({ run, base }) => run.setups.map(({ hi, on }) => ({ hi: tidy(base + hi), on }))),
    points: hung.flatMap(({ run, base, correction }) =>
      run.points.map(({ row, rise, setup }) => ({
        name: row.point,
        elevation: tidy(base + rise),
        adjusted: tidy(base + rise + correction(setup)),
      })),
    ),
    sumBs,
    sumFs,
    misclosure: closings.length === 0 ? null : tidy(closings.at(-1)?.misclosure ?? 0),
    closings: closings.map((c) => ({ ...c, found: tidy(c.found), misclosure: tidy(c.misclosure) })),
    pageCheck: Math.abs(sumBs - sumFs - carried) <= ROUNDING * scale * Math.max(1, rows.length),
    ...(spread === "distance" ? { spread } : {}),
  };
}

/** How far the run was carried: to the foresight it ended on, or to the beam where a last set-up has none. */
function lastMinusFirst(run: Run): number {
  return (run.ended ? run.points.at(-1)?.rise : run.setups.at(-1)?.hi) ?? 0;
}

interface HungRun {
  readonly run: Run;
  /** Elevation of the point where the run starts. */
  readonly base: number;
  readonly closings: Closing[];
  /** What to add after so many set-ups. */
  readonly correction: (setup: number) => number;
}

/** Hangs a run on its first known elevation and closes it on the later ones. */
function hang(run: Run, spread: Spread): HungRun {
  const known = run.points.flatMap((point) =>
    point.row.elevation === null ? [] : [{ ...point, known: point.row.elevation }],
  );
  const [first, ...later] = known;
  const base = first === undefined ? 0 : first.known - first.rise;
  const closings = later.map(({ row, rise, known: k }) => ({
    name: row.point,
    known: k,
    found: base + rise,
    misclosure: base + rise - k,
  }));
  const along = progress(run, spread);
  const knots = new Map<number, number>();
  // A turning point carries the run on, so where one set-up has two known heights it counts before a side shot.
  for (const sideShots of [true, false]) {
    for (const point of known) {
      if ((point.row.is !== null) === sideShots)
        knots.set(along(point.setup), point.known - base - point.rise);
    }
  }
  const correction = spread === "nothing" ? () => 0 : between([...knots].sort(([a], [b]) => a - b));
  return { run, base, closings, correction: (setup) => correction(along(setup)) };
}

/** How far along its run a set-up ends, in set-ups or in length. */
function progress({ lengths }: Run, spread: Spread): (setup: number) => number {
  if (spread === "setups") return (setup) => setup;
  return (setup) => sum(lengths.slice(0, setup));
}

/** Straight between the knots, level beyond them. */
function between(knots: readonly (readonly [number, number])[]): (at: number) => number {
  return (place) => {
    const after = knots.findIndex(([at]) => at >= place);
    const [toAt, to] = knots[after] ?? knots.at(-1) ?? [0, 0];
    const [fromAt, from] = knots[after - 1] ?? [toAt, to];
    return toAt === fromAt || after < 0 ? to : from + ((to - from) * (place - fromAt)) / (toAt - fromAt);
  };
}

/** Takes off the rounding of binary sums, far below any reading: 105.22099999999999 becomes 105.221. */
function tidier(scale: number): (value: number) => number {
  const places = 10 ** (12 - Math.ceil(Math.log10(scale)));
  return (value) => Math.round(value * places) / places + 0;
}

/** The largest figure of the book, at least one. */
function largest(rows: readonly LevelBookRow[]): number {
  let most = 1;
  for (const { bs, is, fs, elevation } of rows) {
    for (const figure of [bs, is, fs, elevation]) most = Math.max(most, Math.abs(figure ?? 0));
  }
  return most;
}

function sum(values: readonly (number | null)[]): number {
  return values.reduce<number>((total, value) => total + (value ?? 0), 0);
}
