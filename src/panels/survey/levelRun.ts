/** The level run's page in words and figures: the same book by height of instrument and by rise and fall. */
import type { Project } from "../../document";
import {
  type BookPage,
  bookPage,
  misclosureClass,
  type PageRow,
  runCloses,
  type Spread,
  surveyBook,
} from "../../survey";
import type { Notation } from "../notation";

export type PageForm = "instrument" | "rise";

export const pageHeads: Readonly<Record<PageForm, readonly string[]>> = {
  instrument: [
    "point",
    "backsight",
    "instrument",
    "between",
    "foresight",
    "height",
    "correction",
    "adjusted",
  ],
  rise: ["point", "backsight", "between", "foresight", "rise", "fall", "height", "correction", "adjusted"],
};

export type RunPage =
  | { readonly ok: true; readonly page: BookPage }
  | { readonly ok: false; readonly whys: readonly string[] };

export function runPage(project: Project, spread: Spread): RunPage {
  const rows = surveyBook(project.survey);
  if (rows.length === 0) return { ok: false, whys: ["Nothing was read yet."] };
  const made = bookPage(rows, spread);
  if (made.ok) {
    // As in the plan: what is past the permitted isn't shared out, for somebody misread something.
    const { within } = runCloses(made.page, misclosureClass(project.survey.misclosureClass));
    return within === false ? bookPageUnshared(rows, made) : made;
  }
  return {
    ok: false,
    whys: made.faults.map(({ line, what }) => `${rows[line - 1]?.point || `Line ${line}`}: ${what}`),
  };
}

function bookPageUnshared(rows: Parameters<typeof bookPage>[0], shared: RunPage): RunPage {
  const made = bookPage(rows, "nothing");
  return made.ok ? made : shared;
}

/** A row's cells under the heads of its form. */
export function pageCells(row: PageRow, form: PageForm, { length }: Notation): readonly string[] {
  const figure = (m: number | null) => (m === null ? "" : length(m));
  const heights = [
    figure(row.found),
    row.correction === 0 ? "" : figure(row.correction),
    figure(row.adjusted),
  ];
  const [bs, is, fs] = [row.bs, row.is, row.fs].map(figure) as [string, string, string];
  return form === "instrument"
    ? [row.point, bs, figure(row.hi), is, fs, ...heights]
    : [row.point, bs, is, fs, figure(row.rise), figure(row.fall), ...heights];
}

/** The sums at the foot, under the heads of the form. */
export function pageSums({ sums }: BookPage, form: PageForm, { length }: Notation): readonly string[] {
  const [bs, fs, rise, fall] = [sums.bs, sums.fs, sums.rise, sums.fall].map(length) as [
    string,
    string,
    string,
    string,
  ];
  return form === "instrument"
    ? ["sums", bs, "", "", fs, "", "", ""]
    : ["sums", bs, "", fs, rise, fall, "", "", ""];
}

/** The page check in one line: it proves the sums, not the readings. */
export function checkWords(page: BookPage, form: PageForm, { signed }: Notation): string {
  const { sums, lastMinusFirst, checks } = page;
  const [name, sum] =
    form === "instrument"
      ? ["backsights less foresights", sums.bs - sums.fs]
      : ["rises less falls", sums.rise - sums.fall];
  return `${name} ${signed(sum)}, last less first ${signed(lastMinusFirst)}: ${checks ? "the page checks" : "the page does not check"}`;
}

export interface Closes {
  readonly within: boolean | null;
  readonly words: string;
}

/** What the run misses its last known height by, against what the chosen class permits. */
export function closesWords(project: Project, page: BookPage, notation: Notation): Closes {
  const { misclosure, permitted, within } = runCloses(page, misclosureClass(project.survey.misclosureClass));
  if (misclosure === null)
    return {
      within,
      words:
        "The run doesn't come back to a known height, so nothing tells how well it closes. Read the mark once more from the last set-up.",
    };
  const off = `It misses by ${notation.signed(misclosure)}`;
  if (permitted === null)
    return {
      within,
      words: `${off}. The class goes by the run's length, which isn't known: say where each set-up stood and place its points.`,
    };
  return {
    within,
    words: `${off}; ${notation.length(permitted)} is permitted${within ? "" : ": level it again. Nothing is shared out"}.`,
  };
}
