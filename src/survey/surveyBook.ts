/** The document's set-ups and shots as the rows of one level book, for its page in either form. */
import type { Shot, Survey } from "../document/schema";
import type { LevelBookRow } from "./levelBook";
import { readingsOf } from "./readings";
import { collectReferences, lookedAt, type References } from "./references";
import { cutSurvey } from "./steps";

export interface SurveyBookRow extends LevelBookRow {
  /** The shots that make the row: a turning point has one of each set-up. */
  readonly shots: readonly string[];
}

/**
 * Set-ups in their order: each begins with the reading that ties it (backsight), ends with the turning point that the
 * next one ties to (foresight), and has the rest between (intermediate sights). Distances below the beam in metres, so
 * rods that read up come out as they would have read down. A laser that was bumped is a set-up of its own from there on,
 * tied by the second look. Rows without a reading, that wait, and other second looks are left out.
 */
export function surveyBook(survey: Survey): SurveyBookRow[] {
  const refs = collectReferences(survey, [], []);
  const shots = survey.shots.filter((shot) => !shot.aside);
  const readings = readingsOf(refs, survey.longSights);
  const { pieces } = cutSurvey(survey, shots, refs, readings);
  const down = (shot: Shot) => readings.get(shot)?.down ?? null;
  const sight = (shot: Shot) => readings.get(shot)?.distance ?? null;
  const rows: SurveyBookRow[] = [];
  const setups = pieces.all
    .map((piece) => ({
      check: piece.check,
      own: shots.filter(
        (shot) =>
          pieces.of.get(shot) === piece &&
          readings.get(shot) !== undefined &&
          (shot.kind !== "check" || shot === piece.check),
      ),
    }))
    .filter(({ own }) => own.length > 0);
  const named = (shot: Shot) =>
    shot.kind === "check" ? lookedAt(shot, refs) : refs.shots.get(shot.of ?? "");
  setups.forEach(({ check, own }, i) => {
    const opening = check ?? openingShot(own);
    const next = setups[i + 1];
    const carries = next === undefined ? undefined : named(next.check ?? openingShot(next.own));
    const rest = own.filter((shot) => shot !== opening);
    const closing = rest.find((shot) => shot === carries) ?? rest.at(-1);
    const last = rows.at(-1);
    if (last?.shots.includes(named(opening)?.id ?? "")) {
      rows[rows.length - 1] = { ...last, bs: down(opening), shots: [...last.shots, opening.id] };
    } else rows.push(bookRow(opening, refs, rows.length, { bs: down(opening) }));
    for (const shot of rest) {
      if (shot !== closing) rows.push(bookRow(shot, refs, rows.length, { is: down(shot) }));
    }
    if (closing === undefined) return;
    const back = sight(opening);
    const fore = sight(closing);
    const distance = back === null || fore === null ? null : back + fore;
    rows.push(bookRow(closing, refs, rows.length, { fs: down(closing), distance }));
  });
  return rows;
}

/** What ties the set-up, else what was read first. */
function openingShot(shots: readonly Shot[]): Shot {
  const tie = shots.find((shot) => shot.of !== null && (shot.kind === "mark" || shot.kind === "turning"));
  return tie ?? (shots[0] as Shot);
}

function bookRow(shot: Shot, refs: References, index: number, sights: Partial<LevelBookRow>): SurveyBookRow {
  const mark = shot.kind === "mark" || shot.kind === "check" ? refs.marks.get(shot.of ?? "") : undefined;
  return {
    line: index + 1,
    point: mark?.name || shot.name || `row ${refs.rows.get(shot)}`,
    bs: null,
    is: null,
    fs: null,
    elevation: mark?.height.m ?? null,
    ...sights,
    shots: [shot.id],
  };
}
