/** The building as it was taped, the lot by its deed and setbacks, and what of the building stands in a setback. */
import type { Building, Lot, Point, Shot, Staking } from "../document/schema";
import { cornerName } from "../grading";
import {
  type CornerMove,
  closeTraverse,
  cornerAngles,
  cornerHeights,
  crossingsByLine,
  deedCalls,
  LEAST_MOVE,
  type LevelTape,
  type LotLine,
  levelTapes,
  lineOfPiece,
  lineSetbacks,
  lotLines,
  lotSize,
  type Misread,
  misreadTape,
  misreadWords,
  moveInWords,
  outOfSquare,
  type Squared,
  type SquaringResult,
  setbackCrossings,
  setbackLines,
  setbacksByLine,
  squareUp,
  tapeName,
  type UnleveledTape,
} from "../plot";
import { farLengths } from "../survey";
import type { LevelledPoint, PlanMove, PlotResult, Problem } from "./results";
import type { Words } from "./words";

/** 1/4 in, what framers accept of a building's diagonals: common practice. */
const SQUARE_ENOUGH = 0.00635;
/** About 1/4 in: tapes that fit together no better than this are pulled again, m. */
const TAPE_ERROR = 0.006;

export interface PlotStage {
  readonly plot: PlotResult;
  readonly problems: readonly Problem[];
}

export function plotStage(
  staking: Staking,
  lot: Lot,
  corners: Building["outline"],
  shots: readonly Shot[],
  points: readonly LevelledPoint[],
  words: Words,
): PlotStage {
  const taped = tapedBuilding(staking, corners, shots, points, words);
  const [lines, sides] = [lotLines(lot), lot.outline.length];
  const setbacks = setbacksByLine(setbackLines(lot.outline, lineSetbacks(lot)), lines, sides);
  const building = { name: "the building", points: corners, closed: true };
  const crossings =
    corners.length < 3
      ? []
      : crossingsByLine(setbackCrossings(lot.outline, lineSetbacks(lot), [building]), lines, sides);
  const closed =
    lot.deed === null || lot.deed.courses.length === 0 ? null : closeTraverse(deedCalls(lot.deed));
  return {
    plot: {
      ...taped.found,
      lot: lotSize(lot),
      deed: closed?.ok ? closed.traverse : null,
      setbacks,
      crossings,
    },
    problems: [
      ...farTapes(staking),
      ...farCourses(lot),
      ...farSetbacks(lot, lines),
      ...taped.problems,
      ...crossings.map(({ line, distance, by, at }) => crossingProblem(line, distance, by, at, lot, words)),
    ],
  };
}

type Taped = Pick<PlotResult, "squared" | "untaped" | "misread" | "angles" | "out" | "moves" | "tapes">;

function tapedBuilding(
  staking: Staking,
  corners: readonly Point[],
  shots: readonly Shot[],
  points: readonly LevelledPoint[],
  words: Words,
): { readonly found: Taped; readonly problems: readonly Problem[] } {
  const names = corners.map((_, i) => cornerName(i));
  // Without tapes no height is asked for: a thousand shots needn't be looked through in every frame of a drag.
  const heights = staking.tapes.length > 0 ? cornerHeights(shots, points) : new Map<number, number>();
  const { level, left } = levelTapes(staking, names, heights);
  const slanting = left.map((tape) => unleveled(tape, staking));
  const none = {
    squared: null,
    untaped: null,
    misread: null,
    angles: [],
    out: null,
    moves: [],
    tapes: level,
  };
  if (level.length === 0) return { found: none, problems: slanting };
  const plannedOf = (squared: Squared) => plannedCorners(squared, names, corners);
  const bad = misreadTape(level, plannedOf);
  if (bad !== null) return contradicting(bad, none, level, slanting, plannedOf, words);
  const result: SquaringResult = squareUp(level);
  if (!result.ok) return { found: { ...none, untaped: `${result.what} ${result.how}` }, problems: slanting };
  const { squared } = result;
  const out = outOfSquare(squared.corners, plannedOf(squared));
  const places = new Map(names.map((name, i) => [name, corners[i] as Point]));
  const moves = (out?.moves ?? []).flatMap((move) => planMove(move, places) ?? []);
  return {
    found: { ...none, squared, angles: cornerAngles(squared.corners), out, moves },
    problems: [...slanting, ...moveProblems(out, words), ...tapeProblems(squared, level, words)],
  };
}

function plannedCorners(squared: Squared, names: readonly string[], corners: readonly Point[]): Point[] {
  return squared.corners.flatMap(({ name }): Point[] => {
    const at = corners[names.indexOf(name)];
    return at ? [at] : [];
  });
}

/** A misread tape moves no corner: it is named first, and where it is known which, the others' solution is offered. */
function contradicting(
  bad: Misread,
  none: Taped,
  level: readonly LevelTape[],
  slanting: readonly Problem[],
  plannedOf: (squared: Squared) => readonly Point[],
  words: Words,
): { readonly found: Taped; readonly problems: readonly Problem[] } {
  const said = misreadWords(bad, level, { length: words.length, metres: true });
  const squared = bad.suspect?.without ?? null;
  const [tape = null] = bad.suspect === null ? [] : [tapeName(level[bad.suspect.tape])];
  const problem: Problem = {
    code: "tapes-disagree",
    severity: "error",
    where: tape === null ? "the taped sides and diagonals" : `tape ${tape}`,
    ...said,
    ids: (bad.suspect === null ? bad.among : [bad.suspect.tape]).flatMap((i) => level[i]?.id ?? []),
  };
  return {
    found: {
      ...none,
      misread: { tape, ...said },
      squared,
      angles: squared === null ? [] : cornerAngles(squared.corners),
      out: squared === null ? null : outOfSquare(squared.corners, plannedOf(squared)),
    },
    problems: [...slanting, problem],
  };
}

/** Taped lengths that look as if typed in another unit: asked about, and reckoned with as they are. */
function farTapes({ tapes }: Staking): Problem[] {
  return farLengths(
    tapes.map(({ id, from, to, length }) => ({
      id,
      where: `tape ${cornerName(from)}–${cornerName(to)}`,
      length,
    })),
    "tape-doubtful",
  );
}

function farCourses({ deed }: Lot): Problem[] {
  const courses = deed?.courses ?? [];
  return farLengths(
    courses.map(({ id, distance }, i) => ({ id, where: `course ${i + 1} of the deed`, length: distance })),
    "course-doubtful",
  );
}

/** A setback counts once a line; those of a curve are alike. */
function farSetbacks({ setbacks }: Lot, lines: readonly LotLine[]): Problem[] {
  const firsts = lines.flatMap(({ first }, i) => {
    const setback = setbacks.find(({ line }) => line === first);
    return setback
      ? [{ id: `setback ${i + 1}`, where: `setback from lot line ${i + 1}`, length: setback.distance }]
      : [];
  });
  return farLengths(firsts, "setback-doubtful").map(({ ids: _, ...problem }) => problem);
}

/** Told along the sides at the corner, so it can be laid on the planned ones. */
function planMove(move: CornerMove, places: ReadonlyMap<string, Point>): PlanMove | null {
  const at = places.get(move.corner);
  if (at === undefined) return null;
  let [x, y] = [0, 0];
  for (const { corner, distance } of move.parts) {
    const to = places.get(corner) ?? at;
    const side = Math.hypot(to[0] - at[0], to[1] - at[1]) || 1;
    x += (distance * (to[0] - at[0])) / side;
    y += (distance * (to[1] - at[1])) / side;
  }
  const length = Math.hypot(x, y) || 1;
  return { ...move, at: [at[0], at[1]], way: [x / length, y / length] };
}

function unleveled({ id, why }: UnleveledTape, { tapes }: Staking): Problem {
  const tape = tapes.find((each) => each.id === id);
  const where =
    tape === undefined ? "a taped length" : `tape ${cornerName(tape.from)}–${cornerName(tape.to)}`;
  const said = {
    "no-height": [
      "It lay on the slope, but its ends have no heights, so its level length isn't known.",
      "Shoot both corners, or pull the tape level.",
    ],
    "too-steep": [
      "The corners at its ends differ in height by more than its length.",
      "Look at the readings at both corners, and at the tape.",
    ],
    "no-corner": [
      "It goes to a corner that the building doesn't have.",
      "Remove it, or choose its corners again.",
    ],
  }[why];
  return {
    code: "tape-not-level",
    severity: "caution",
    where,
    what: said[0] ?? "",
    how: said[1] ?? "",
    ids: [id],
  };
}

function moveProblems(out: PlotResult["out"], words: Words): Problem[] {
  return (out?.moves ?? []).flatMap((move): Problem[] =>
    move.distance <= SQUARE_ENOUGH
      ? []
      : [
          {
            code: "out-of-square",
            severity: "caution",
            where: `corner ${move.corner}`,
            what: `By the tapes it stands ${words.length(move.distance)} from where the plan has it.`,
            how: `Move it ${moveInWords(move, words.length, LEAST_MOVE)}, holding the first side.`,
          },
        ],
  );
}

/** With one spare measure the misfit shows, but not which tape has it. */
function tapeProblems(squared: Squared, tapes: readonly LevelTape[], words: Words): Problem[] {
  const { residuals, redundancy, standardError } = squared;
  if (standardError === null || standardError <= TAPE_ERROR) return [];
  const base = { code: "tapes-disagree", severity: "caution" as const };
  const again = "Pull them again; a tape that sags or isn't level reads too long.";
  const about = `by about ${words.length(standardError)} a tape`;
  if (redundancy < 2) {
    return [
      {
        ...base,
        where: "the taped sides and diagonals",
        what: `They don't fit together, ${about}: one of them is off, and with one spare measure none can say which.`,
        how: again,
        ids: tapes.map(({ id }) => id),
      },
    ];
  }
  const size = residuals.map(({ residual }) => Math.abs(residual));
  const worst = size.indexOf(Math.max(...size));
  const off = residuals[worst];
  if (off === undefined) return [];
  return [
    {
      ...base,
      where: `tape ${off.from}–${off.to}`,
      what: `The tapes don't fit together, ${about}: this one least, ${words.length(Math.abs(off.residual))} ${off.residual > 0 ? "longer" : "shorter"} than the others make likely.`,
      how: again,
      ids: [tapes[worst]?.id ?? ""],
    },
  ];
}

function crossingProblem(
  line: number,
  distance: number,
  by: number,
  at: readonly [number, number] | Point,
  lot: Lot,
  words: Words,
): Problem {
  const name = lot.setbacks.find((setback) => setback.line === line)?.name ?? "";
  const piece = `${name === "" ? "" : `${name} `}setback from lot line ${lineOfPiece(lotLines(lot), line, lot.outline.length) + 1}`;
  return {
    code: "in-setback",
    severity: "caution",
    where: "the building",
    what:
      by > distance
        ? `It leaves the lot by ${words.length(by - distance)} at lot line ${line + 1}.`
        : `It stands ${words.length(by)} in the ${piece} of ${words.length(distance)}.`,
    how: "Move it in. Whether eaves, steps or walls count, the building office says; where the line is, a surveyor.",
    at: [at[0], at[1]],
  };
}
