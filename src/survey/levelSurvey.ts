/**
 * Readings → heights: the height of each set-up's beam and of every point read from it.
 *
 * Units   metres, in the project's own datum (its marks').
 * Sign    height = beam - reading: a larger reading is lower ground.
 * Method  beams from marks and turning points (see beams.ts), then every shot by subtraction.
 * Source  first principles.
 * Errors  what can't be levelled has no height and a problem that says how to mend it; nothing throws.
 */
import type { Point, Shot, Survey } from "../document/schema";
import type { LevelledPoint, Problem, SurveyResult } from "../solve/results";
import { type Beams, beamBy, solveBeams } from "./beams";
import { checkProblems, knownBefore } from "./checks";
import { doubtfulReadings } from "./doubts";
import { checkShot, collectReferences, placeOf, type References } from "./references";
import { setupProblems, setupResult } from "./setups";
import { collectTies, type Tie } from "./ties";

/** Levels a survey. `corners` are the building's, for shots that stand on one. */
export function levelSurvey(
  survey: Survey,
  corners: readonly Point[],
): { readonly result: SurveyResult; readonly problems: readonly Problem[] } {
  const problems: Problem[] = [];
  const refs = collectReferences(survey, corners, problems);
  const shots = survey.shots.filter((shot) => !shot.aside);
  for (const shot of shots) checkShot(shot, refs, problems);

  const ties = collectTies(shots, refs, problems);
  const beams = solveBeams(refs.setups.values(), ties);
  const setups = [...refs.setups.values()].map((setup) => setupResult(setup, ties, beams, refs));
  for (const setup of setups) problems.push(...setupProblems(setup, ties, shots));

  const tieOfShot = new Map([...ties.values()].flat().map((tie) => [tie.shot, tie]));
  const mark = survey.marks[0];
  const points = shots.map((shot) =>
    levelShot(shot, tieOfShot.get(shot), mark?.height.m ?? null, beams, refs),
  );
  shots.forEach((shot, i) => {
    if (shot.kind === "check") problems.push(...checkProblems(shot, points[i]?.shift ?? null, refs));
  });
  problems.push(...doubtfulReadings(shots, refs));

  return {
    result: {
      setups,
      points,
      mark: mark === undefined ? null : { id: mark.id, name: mark.name, height: mark.height.m, at: mark.at },
    },
    problems,
  };
}

function levelShot(
  shot: Shot,
  tie: Tie | undefined,
  markHeight: number | null,
  beams: Beams,
  refs: References,
): LevelledPoint {
  const beam = beams.get(shot.setup);
  const height = beam === undefined || shot.reading === null ? null : beam.height - shot.reading.m;
  return {
    shot: shot.id,
    name: shot.name,
    kind: shot.kind,
    at: placeOf(shot, refs),
    height,
    aboveMark: height === null || markHeight === null ? null : height - markHeight,
    shift: shiftOf(shot, tie, height, beams, refs),
  };
}

/** Found minus known; null where nothing was known before. */
function shiftOf(
  shot: Shot,
  tie: Tie | undefined,
  height: number | null,
  beams: Beams,
  refs: References,
): number | null {
  if (height === null) return null;
  if (shot.kind === "check") {
    const known = knownBefore(shot, beams, refs);
    return known === null ? null : height - known;
  }
  const beam = beams.get(shot.setup);
  const byThis = tie === undefined ? null : beamBy(tie, beams);
  return beam === undefined || byThis === null ? null : beam.height - byThis;
}
