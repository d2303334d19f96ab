/** What a plan that isn't complete yet needs next, in one line. */
import type { Project } from "../../document";
import type { Results } from "../../solve/results";

/** Nothing at all on the plan, as after "new plan". */
export function isEmpty(project: Project): boolean {
  return (
    project.building === null &&
    project.lot.outline.length === 0 &&
    project.survey.shots.length === 0 &&
    project.survey.marks.every((mark) => mark.at === null) &&
    project.grading.drives.length === 0 &&
    project.grading.swales.length === 0 &&
    project.drawing.underlays.length === 0
  );
}

/** The next thing missing before cut and fill can be seen; null when nothing is. */
export function planNote(project: Project, results: Results): string | null {
  if (isEmpty(project)) return null;
  if (!results.ground) {
    const ready = results.survey.points.filter((point) => point.at !== null && point.height !== null).length;
    if (ready >= 3)
      return "The placed shots lie in one line: shoot a spot to the side of them to see the ground.";
    const missing = 3 - ready;
    return `${missing} more placed ${missing === 1 ? "shot with a reading shows" : "shots with readings show"} the ground.`;
  }
  if (!project.building) return "Draw the building to see cut and fill.";
  return null;
}

/** What the plan's heights are told from, as they are drawn; null while there are none. */
export function heightsNote({ survey, ground }: Pick<Results, "survey" | "ground">): string | null {
  if (survey.mark) return "heights from the mark";
  return ground ? "heights from the plan's zero" : null;
}
