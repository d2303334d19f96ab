/** Readings that are asked about, each with the answers that one click gives. Nothing is refused: any answer may wait. */
import { applyFix, type Edit, type Project, type Shot, surveyEdits } from "../../document";
import type { Problem } from "../../solve/results";
import { asksAgain, formatLength, parseLength } from "../../units";
import type { Notation } from "../notation";

export interface Answer {
  readonly words: string;
  readonly edit: (project: Project) => Edit;
}

export interface Question {
  readonly shot: string;
  readonly row: number;
  readonly words: string;
  readonly answers: readonly Answer[];
}

const units = [
  { suffix: "in", words: "inches" },
  { suffix: "ft", words: "feet" },
  { suffix: "m", words: "metres" },
  { suffix: "cm", words: "centimetres" },
  { suffix: "mm", words: "millimetres" },
] as const;

/** A unit explains a reading that it brings within twice or half of its neighbours. */
const near = Math.log(2);

/**
 * Does a name read like what the rod shows: a length with its unit, with a fraction, or with two decimals? A bare figure is a
 * stake's number.
 */
const likeReading = /["'″′”’]|\d\s*(?:mm|cm|m|ft|in)$|\d[\s-]+\d+\/\d+|\d[.,]\d{2,}/i;

/** Rows that have no reading, but a name that is one: typed in the column beside. */
function misplacedReadings({ survey, display }: Project): { readonly shot: Shot; readonly row: number }[] {
  return survey.shots.flatMap((shot, row) => {
    const name = shot.name.trim();
    if (shot.reading !== null || shot.aside || shot.accepted || !likeReading.test(name)) return [];
    return parseLength(name, display.reading).ok ? [{ shot, row }] : [];
  });
}

function moveToReadings(project: Project, shots: readonly Shot[]): Edit {
  let now: Edit = { ok: true, project, label: "move names to the readings" };
  for (const { id, name } of shots) {
    if (!now.ok) return now;
    const read: Edit = surveyEdits.setReading.run(now.project, { id, text: name });
    if (!read.ok) return read;
    now = surveyEdits.changeShot.run(read.project, {
      id,
      patch: { name: "" },
      what: "move names to the readings",
    });
  }
  return now;
}

function nameQuestions(project: Project, notation: Notation): Question[] {
  const misplaced = misplacedReadings(project);
  return misplaced.map(({ shot, row }) => {
    const parsed = parseLength(shot.name, notation.display.reading);
    const told = parsed.ok ? notation.length(parsed.m) : "";
    const all: Answer[] =
      misplaced.length < 2
        ? []
        : [
            {
              words: `Move all ${misplaced.length}`,
              edit: (now) =>
                moveToReadings(
                  now,
                  misplaced.map((each) => each.shot),
                ),
            },
          ];
    return {
      shot: shot.id,
      row,
      words: `it is the name of a row without a reading, and reads as ${told}. Is it the reading?`,
      answers: [
        { words: "Move it to the reading", edit: (now: Project) => moveToReadings(now, [shot]) },
        ...all,
        { words: "It is a name", edit: (now: Project) => surveyEdits.acceptShot.run(now, { id: shot.id }) },
      ],
    };
  });
}

/** The questions of a level book in the order of its rows; `problems` are those of the same project. */
export function questionsOf(
  project: Project,
  problems: readonly Problem[],
  notation: Notation,
): readonly Question[] {
  const names = nameQuestions(project, notation);
  if (names.length > 0) return names;
  const told = new Map<string, Problem>();
  for (const problem of problems) {
    const id = problem.ids?.[0];
    const isFar = problem.code === "reading-doubtful";
    if (id !== undefined && (isFar || (problem.code === "shot-odd" && !told.has(id)))) told.set(id, problem);
  }
  const readings = readingsBySetup(project);
  const middles = new Map([...readings].map(([setup, list]) => [setup, middleOf(list)]));
  const odd: Question[] = [];
  const far = project.survey.shots.flatMap((shot, row): Question[] => {
    if (shot.reading === null || shot.aside || shot.accepted) return [];
    const problem = told.get(shot.id);
    const neighbours = readings.get(shot.setup) ?? [];
    if (problem?.code !== "reading-doubtful" && !isFar(shot.reading.m, middles.get(shot.setup), neighbours)) {
      if (problem) odd.push(oddQuestion(shot, row, problem));
      return [];
    }
    return [unitQuestion(shot, row, neighbours, problem, notation)];
  });
  // A reading in a wrong unit makes its neighbours look odd: they are asked about once it is settled.
  return far.length > 0 ? far : odd;
}

function readingsBySetup({ survey }: Project): Map<string, number[]> {
  const readings = new Map<string, number[]>();
  for (const { setup, reading, aside } of survey.shots) {
    if (reading === null || aside) continue;
    const list = readings.get(setup);
    if (list === undefined) readings.set(setup, [reading.m]);
    else list.push(reading.m);
  }
  return readings;
}

/** What is well within the usual of its set-up isn't compared with each of its neighbours. */
const passesBy = 5;

function isFar(m: number, middle: number | undefined, readings: readonly number[]): boolean {
  const ratio = Math.abs(m) / (middle || Number.NaN);
  if (ratio > 1 / passesBy && ratio < passesBy) return false;
  return asksAgain(m, without(readings, m)) !== null;
}

function without(readings: readonly number[], m: number): number[] {
  const at = readings.indexOf(m);
  return readings.filter((_, i) => i !== at);
}

function unitQuestion(
  shot: Shot,
  row: number,
  readings: readonly number[],
  problem: Problem | undefined,
  notation: Notation,
): Question {
  const m = shot.reading?.m ?? 0;
  const others = without(readings, m);
  const middle = middleOf(others);
  const meant = others.length >= 3 ? meantAs(shot.reading?.text ?? "", m, middle) : null;
  const beside =
    others.length >= 3
      ? `its neighbours are near ${notation.length(middle)}`
      : (problem?.what ?? "that is far off");
  const mend: Answer[] = meant
    ? [
        {
          words: `${meant.text}, ${notation.length(meant.m)}`,
          edit: (project) => surveyEdits.setReading.run(project, { id: shot.id, text: meant.text }),
        },
      ]
    : [];
  return {
    shot: shot.id,
    row,
    words: `${formatLength(m, notation.display.length, notation.display.rounding)}? ${beside}${meant ? `: did you mean ${meant.words}?` : "."}`,
    answers: [...mend, accept(shot.id), setAside(shot.id)],
  };
}

function oddQuestion(shot: Shot, row: number, problem: Problem): Question {
  const answers = (problem.fixes ?? []).map((fix) => ({
    words: fix.words,
    edit: (project: Project) => applyFix(project, fix),
  }));
  return { shot: shot.id, row, words: problem.what, answers };
}

const accept = (id: string): Answer => ({
  words: "It is right",
  edit: (project) => surveyEdits.acceptShot.run(project, { id }),
});

const setAside = (id: string): Answer => ({
  words: "Set it aside",
  edit: (project) => surveyEdits.setAside.run(project, { id, aside: true }),
});

/** The typed number in the unit that brings it nearest to its neighbours; null where none brings it near. */
function meantAs(
  text: string,
  m: number,
  middle: number,
): { readonly text: string; readonly m: number; readonly words: string } | null {
  const number = /^[\d.,\s/-]+/.exec(text)?.[0].trim();
  if (!number || !(middle > 0)) return null;
  let best: { text: string; m: number; words: string } | null = null;
  let nearest = near;
  for (const { suffix, words } of units) {
    const typed = `${number} ${suffix}`;
    const parsed = parseLength(typed, suffix);
    if (!parsed.ok || !(parsed.m > 0) || Math.abs(parsed.m - m) < 1e-6) continue;
    const off = Math.abs(Math.log(parsed.m / middle));
    if (off >= nearest) continue;
    nearest = off;
    best = { text: typed, m: parsed.m, words };
  }
  return best;
}

function middleOf(values: readonly number[]): number {
  const sizes = values.map(Math.abs).sort((a, b) => a - b);
  return sizes[sizes.length >> 1] ?? 0;
}
