/** The document's set-ups and shots as the rows of one level book, for its page in either form. */
import type { Shot, Survey } from "../document/schema";
import type { LevelBookRow } from "./levelBook";
import { readAll } from "./readings";
import { collectReferences, type References } from "./references";

export interface SurveyBookRow extends LevelBookRow {
  /** The shots that make the row: a turning point has one of each set-up. */
  readonly shots: readonly string[];
}

/**
 * Set-ups in their order: each begins with the reading that ties it (backsight), ends with the turning point that the
 * next one ties to (foresight), and has the rest between (intermediate sights). Distances below the beam in metres, so
 * rods that read up come out as they would have read down. Rows without a reading and second looks are left out.
 */
export function surveyBook(survey: Survey): SurveyBookRow[] {
  const refs = collectReferences(survey, [], []);
  const live = survey.shots.filter((shot) => !shot.aside && shot.kind !== "check");
  const readings = readAll(live, refs, survey.longSights);
  const down = (shot: Shot) => readings.get(shot)?.down ?? null;
  const sight = (shot: Shot) => readings.get(shot)?.distance ?? null;
  const rows: SurveyBookRow[] = [];
  const setups = [...refs.setups.values()]
    .map(({ id }) => live.filter((shot) => shot.setup === id && readings.has(shot)))
    .filter((shots) => shots.length > 0);
  setups.forEach((shots, i) => {
    const opening = openingShot(shots);
    const next = setups[i + 1];
    const carries = next === undefined ? undefined : refs.shots.get(openingShot(next).of ?? "");
    const rest = shots.filter((shot) => shot !== opening);
    const closing = rest.find((shot) => shot === carries) ?? rest.at(-1);
    const last = rows.at(-1);
    if (last !== undefined && opening.kind === "turning" && last.shots.includes(opening.of ?? "")) {
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
  const mark = shot.kind === "mark" ? refs.marks.get(shot.of ?? "") : undefined;
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
