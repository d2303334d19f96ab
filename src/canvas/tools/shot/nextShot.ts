/** Which shot of the level book the next click places. */
import type { Project, Shot } from "../../../document";
import type { Selected } from "../../../store/state";

/** The selected row where it has no place yet, else the first ground shot without one; null when all have theirs. */
export function nextShot(project: Project, selection: readonly Selected[]): Shot | null {
  const unplaced = project.survey.shots.filter(
    (shot) => shot.place.kind === "none" && shot.kind === "ground" && !shot.aside,
  );
  const chosen = unplaced.find((shot) =>
    selection.some((thing) => thing.kind === "shot" && thing.id === shot.id),
  );
  return chosen ?? unplaced[0] ?? null;
}

/** What a person calls the shot: its name, else its row in the level book. */
export function shotWords(project: Project, shot: Shot): string {
  if (shot.name) return shot.name;
  return `row ${project.survey.shots.indexOf(shot) + 1}`;
}
