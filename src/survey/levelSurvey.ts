/**
 * Levels a survey: readings → the height of each set-up's beam and of every point read from it.
 *
 * Units   metres, in the project's own datum (its marks').
 * Sign    height = beam - reading: a larger reading is lower ground (readings.ts turns the rods that read up).
 * Method  beams carried from marks and turning points (beams.ts), cut where the laser was bumped (steps.ts), adjusted
 *         together (adjust.ts), then every shot by subtraction. Standard deviation of a height:
 *         √(beam's² + reading's²), where the beam's accuracy and the distances are known.
 * Source  first principles.
 * Errors  what can't be levelled has no height and a problem that says how to mend it; nothing throws.
 */
import type { Point, Shot, Survey } from "../document/schema";
import type { LevelledPoint, Problem, SurveyResult } from "../solve/results";
import type { LengthNotation } from "../units";
import { type Adjusted, adjustBeams } from "./adjust";
import { beamBy, knownHeight } from "./beams";
import { checkProblems, knownBefore, moveProblem } from "./checks";
import { closings } from "./closings";
import { doubtfulReadings } from "./doubts";
import { farPitDepths, farSpacings, pitOrder } from "./farLengths";
import { oddShots } from "./oddShots";
import { type Readings, readingsOf } from "./readings";
import { checkShot, collectReferences, placeOf, type References } from "./references";
import { setupProblems, setupResult } from "./setups";
import { sightProblems } from "./sights";
import { type Cut, cutSurvey } from "./steps";
import type { Tie } from "./ties";

/** Levels a survey. `corners` are the building's, for shots that stand on one; `notation` is how problems tell lengths. */
export function levelSurvey(
  survey: Survey,
  corners: readonly Point[],
  notation: LengthNotation | null = null,
): { readonly result: SurveyResult; readonly problems: readonly Problem[] } {
  const first: Problem[] = [];
  const refs = collectReferences(survey, corners, first, notation);
  const shots = survey.shots.filter((shot) => !shot.aside);
  for (const shot of shots) checkShot(shot, refs, first);

  const readings = readingsOf(refs, survey.longSights);
  const cut = cutSurvey(survey, shots, refs, readings);
  const closed = closings(cut, readings, refs.judged);
  const adjusted = adjustBeams(cut.pieces.all, cut.held, readings, cut.beams);
  const setups = [...refs.setups.values()].map((setup) => setupResult(setup, cut, adjusted, refs));
  const mark = survey.marks[0];
  const tieOfShot = new Map([...cut.ties.values()].flat().map((tie) => [tie.shot, tie]));
  const levelled = { refs, readings, cut, adjusted, tieOfShot };
  const points = shots.map((shot) => levelShot(shot, tieOfShot.get(shot), levelled));
  // A cloud of points may have a problem a point: lists are joined whole, never spread over a call's arguments.
  const problems = [
    first,
    cut.problems,
    ...setups.map((setup) => setupProblems(setup, cut, shots, closed, refs)),
    lookProblems(shots, points, setups, refs),
    doubtfulReadings(shots, refs),
    oddShots(shots, points, refs),
    sightProblems(survey, shots, refs, readings),
    farSpacings(survey.grids, sidesOf(corners)),
    farPitDepths(survey.pits),
    pitOrder(survey.pits),
  ].flat();

  return {
    result: {
      setups,
      points,
      mark: mark === undefined ? null : { id: mark.id, name: mark.name, height: mark.height.m, at: mark.at },
      closings: closed,
    },
    problems,
  };
}

function sidesOf(corners: readonly Point[]): number[] {
  return corners.map(([x, y], i) => {
    const [toX, toY] = corners[(i + 1) % corners.length] as Point;
    return Math.hypot(toX - x, toY - y);
  });
}

/** What second looks have to say: steps of the beam, and lesser shifts. */
function lookProblems(
  shots: readonly Shot[],
  points: readonly LevelledPoint[],
  setups: SurveyResult["setups"],
  refs: References,
): Problem[] {
  const moves = setups.flatMap(({ id, moves: own = [] }) => {
    const setup = refs.setups.get(id);
    return setup === undefined ? [] : own.map((move) => moveProblem(setup, move, refs));
  });
  const steps = new Set(setups.flatMap(({ moves: own = [] }) => own.map(({ check }) => check)));
  const looks = shots.flatMap((shot, i) =>
    shot.kind !== "check" || steps.has(shot.id) ? [] : checkProblems(shot, points[i]?.shift ?? null, refs),
  );
  return [...moves, ...looks];
}

interface Levelled {
  readonly refs: References;
  readonly readings: Readings;
  readonly cut: Cut;
  readonly adjusted: Adjusted;
  readonly tieOfShot: ReadonlyMap<Shot, Tie>;
}

function levelShot(shot: Shot, tie: Tie | undefined, levelled: Levelled): LevelledPoint {
  const { refs, readings, cut, adjusted } = levelled;
  const piece = cut.pieces.of.get(shot);
  const beam = adjusted.beams.get(piece?.id ?? "");
  const reading = readings.get(shot);
  // A point that ties has one height, whichever set-up read it.
  const known = tie === undefined ? null : knownHeight(firstOf(tie, levelled), adjusted.beams);
  const read = beam === undefined || reading === undefined ? null : beam.height - reading.down;
  const height = read === null ? null : (known ?? read);
  const waits = reading !== undefined && piece === undefined && refs.setups.has(shot.setup);
  const hasAccuracy = (refs.setups.get(shot.setup)?.accuracy ?? null) !== null;
  return {
    shot: shot.id,
    name: shot.name,
    kind: shot.kind,
    at: placeOf(shot, refs),
    height,
    shift: shiftOf(shot, tie, read, levelled),
    ...(hasAccuracy ? { sigma: height === null ? null : sigmaOf(shot, tie, levelled) } : {}),
    ...(waits ? { waiting: true } : {}),
  };
}

/** The tie that names a point first: one that names a tie's own reading goes on to what that names. */
function firstOf(tie: Tie, { tieOfShot }: Levelled): Tie {
  let at = tie;
  for (const seen = new Set([at]); ; seen.add(at)) {
    const next: Tie | undefined = "shot" in at.to ? tieOfShot.get(at.to.shot) : undefined;
    if (next === undefined || seen.has(next)) return at;
    at = next;
  }
}

/** A reading on a mark is known from the mark and better than from the beam: its share of the beam's variance comes off. */
function sigmaOf(shot: Shot, tie: Tie | undefined, { cut, adjusted, readings }: Levelled): number | null {
  const beam = adjusted.sigmas.get(cut.pieces.of.get(shot)?.id ?? "") ?? null;
  const reading = readings.get(shot)?.sigma ?? null;
  if (beam === null || reading === null) return null;
  if (tie !== undefined && "mark" in tie.to) return Math.sqrt(Math.max(0, reading ** 2 - beam ** 2));
  return Math.hypot(beam, reading);
}

/** Found minus known; null where nothing was known before. */
function shiftOf(
  shot: Shot,
  tie: Tie | undefined,
  height: number | null,
  { refs, readings, cut, adjusted }: Levelled,
): number | null {
  if (height === null) return null;
  const piece = cut.pieces.of.get(shot);
  if (shot.kind === "check" && piece?.check !== shot) {
    const known = knownBefore(shot, adjusted.beams, refs, readings, cut.pieces);
    return known === null ? null : height - known;
  }
  const beam = adjusted.beams.get(piece?.id ?? "");
  const byThis = tie === undefined ? null : beamBy(tie, adjusted.beams);
  return beam === undefined || byThis === null ? null : beam.height - byThis;
}
