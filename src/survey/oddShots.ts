/** Shots that don't fit their neighbours, each with its likely cause and what one click can do about it. */
import type { Shot } from "../document/schema";
import type { Fix, LevelledPoint, Problem } from "../solve/results";
import { likelyCause } from "./causes";
import { apart } from "./limits";
import { leaveOneOut, type Prediction } from "./neighbours";
import { type References, shotInWords } from "./references";

/** Asked about beyond so many standard deviations, or beyond the lesser number where a slip explains it. */
const ODD = 5;
const ODD_WITH_CAUSE = 3;
/** A ditch or a hollow is half a metre deep without anything being wrong; only beyond this is a shot asked about, m. */
const LEAST = 0.45;
/** About 6 in: less is no slip that earthwork would notice, even where one explains it, m. */
const LEAST_WITH_CAUSE = 0.15;
/** A slip explains a reading that it brings within so many standard deviations. */
const EXPLAINED = 1.5;

/** A cloud of more points than this comes from a machine, not from a rod: nobody typed it, nobody slips. */
const MOST = 20_000;

interface Judged {
  readonly shot: Shot;
  readonly prediction: Prediction;
  /** What the rod should have shown for the predicted height, m. */
  readonly reading: number;
}

export function oddShots(
  shots: readonly Shot[],
  points: readonly LevelledPoint[],
  refs: References,
): Problem[] {
  const rows = rowsToJudge(shots, points);
  if (rows === null) return [];
  const spots = rows.map(({ at, height }) => ({ x: at[0], y: at[1], z: height }));
  const judged = leaveOneOut(spots).map((prediction, i): Judged | null => {
    const shot = rows[i]?.shot;
    if (prediction === null || shot?.reading == null) return null;
    const sense = refs.setups.get(shot.setup)?.rod.reads === "up" ? -1 : 1;
    return { shot, prediction, reading: shot.reading.m + sense * prediction.off };
  });
  const swapped = exchangedRows(judged);
  const said = new Set<Shot>();
  return judged.flatMap((each): Problem[] => {
    if (each === null || each.shot.accepted || said.has(each.shot)) return [];
    const other = swapped.get(each.shot);
    if (other === undefined) return oddProblem(each, refs);
    said.add(other.shot);
    return [swapProblem(each, other, refs)];
  });
}

/** The shots of ground with a place and a height; null where they are too many. */
function rowsToJudge(shots: readonly Shot[], points: readonly LevelledPoint[]) {
  const rows: { shot: Shot; at: readonly [number, number]; height: number }[] = [];
  for (let i = 0; i < shots.length; i++) {
    const shot = shots[i] as Shot;
    const { at = null, height = null } = points[i] ?? {};
    const isGround = shot.kind === "ground" || (shot.kind === "turning" && shot.of === null);
    if (isGround && at && height !== null && shot.place.kind !== "none") rows.push({ shot, at, height });
    if (rows.length > MOST) return null;
  }
  return rows;
}

function isOdd({ off, scatter, bends }: Prediction, explained: boolean): boolean {
  if (bends) return false;
  const size = Math.abs(off);
  return explained
    ? size >= LEAST_WITH_CAUSE && size >= ODD_WITH_CAUSE * scatter
    : size >= LEAST && size >= ODD * scatter;
}

/** Odd shots that follow each other in one set-up and both fit with each other's reading. */
function exchangedRows(judged: readonly (Judged | null)[]): Map<Shot, Judged> {
  const pairs = new Map<Shot, Judged>();
  judged.forEach((one, i) => {
    const other = judged[i + 1];
    if (!one || !other || one.shot.setup !== other.shot.setup || pairs.has(one.shot)) return;
    if (one.shot.accepted || other.shot.accepted) return;
    if (!isOdd(one.prediction, true) || !isOdd(other.prediction, true)) return;
    if (!fits(one, other) || !fits(other, one)) return;
    pairs.set(one.shot, other);
    pairs.set(other.shot, one);
  });
  return pairs;
}

function fits(place: Judged, reading: Judged): boolean {
  const shown = reading.shot.reading?.m ?? Number.NaN;
  return Math.abs(shown - place.reading) <= EXPLAINED * place.prediction.scatter;
}

function oddProblem(judged: Judged, refs: References): Problem[] {
  const { shot, prediction, reading } = judged;
  if (shot.reading === null || !isOdd(prediction, true)) return [];
  const cause = likelyCause(shot.reading, reading, EXPLAINED * prediction.scatter);
  if (cause === null && !isOdd(prediction, false)) return [];
  const mend: Fix[] =
    cause === null
      ? []
      : [
          {
            words: "Mend the reading",
            edits: [{ command: "survey.correctReading", args: { id: shot.id, m: cause.reading } }],
          },
        ];
  return [
    {
      ...problemOf(judged, refs),
      what: `${liesOff(prediction, refs)}${cause === null ? "" : ` ${cause.words}`}`,
      how: "Shoot it again; or mend the reading, set the shot aside, or accept it as it is.",
      fixes: [...mend, ...keepOrLeave(shot)],
    },
  ];
}

function swapProblem(one: Judged, other: Judged, refs: References): Problem {
  const second = shotInWords(other.shot, refs);
  return {
    ...problemOf(one, refs),
    what: `${liesOff(one.prediction, refs)} It and ${second} would both fit with each other's reading: the two rows seem exchanged.`,
    how: "Exchange the two readings; or set a shot aside, or accept it as it is.",
    ids: [one.shot.id, other.shot.id],
    fixes: [
      {
        words: "Exchange the two readings",
        edits: [
          { command: "survey.correctReading", args: { id: one.shot.id, m: other.shot.reading?.m ?? 0 } },
          { command: "survey.correctReading", args: { id: other.shot.id, m: one.shot.reading?.m ?? 0 } },
        ],
      },
      {
        words: "Accept both as they are",
        edits: [one, other].map(({ shot }) => ({ command: "survey.acceptShot", args: { id: shot.id } })),
      },
    ],
  };
}

function problemOf({ shot }: Judged, refs: References) {
  const at = refs.place(shot.place).at;
  return {
    code: "shot-odd",
    severity: "caution" as const,
    where: shotInWords(shot, refs),
    ids: [shot.id],
    ...(at === null ? {} : { at }),
  };
}

function liesOff({ off, scatter }: Prediction, { notation }: References): string {
  return `It lies ${apart(off, notation)} ${off > 0 ? "higher" : "lower"} than its neighbours make likely, where ${apart(scatter, notation)} would be usual.`;
}

function keepOrLeave(shot: Shot): Fix[] {
  return [
    { words: "Set it aside", edits: [{ command: "survey.setAside", args: { id: shot.id, aside: true } }] },
    { words: "Accept it as it is", edits: [{ command: "survey.acceptShot", args: { id: shot.id } }] },
  ];
}
