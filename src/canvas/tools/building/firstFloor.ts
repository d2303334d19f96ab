/** Where the floor of a new building starts: about a foot above the highest ground at its corners. */
import type { Point, Project } from "../../../document";
import type { Results } from "../../../solve/results";
import { groundAt } from "../../../terrain";
import { FOOT, INCH } from "../../../units";

/**
 * Floor height of a new building, m.
 *
 * Method  common practice: the high corner stands about a foot (0.3 m) out of the ground, then rules and
 *         grades move it. Without ground it starts from the mark's height, else from zero.
 */
export function firstFloor(project: Project, results: Results, outline: readonly Point[]): number {
  const heights = results.ground
    ? outline.flatMap(([x, y]) => {
        const at = results.ground && groundAt(results.ground, x, y);
        return at ? [at.z] : [];
      })
    : [];
  const ground = heights.length > 0 ? Math.max(...heights) : (project.survey.marks[0]?.height.m ?? 0);
  const inFeet = ["ft-in", "in", "ft"].includes(project.display.length);
  const [above, step] = inFeet ? [FOOT, INCH] : [0.3, 0.01];
  return Math.ceil((ground + above) / step - 1e-9) * step;
}
