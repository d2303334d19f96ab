/** Where the floor of a new building starts: about a foot above the highest ground at its corners, within what the rules allow. */
import { buildingEdits, type Point, type Project } from "../../../document";
import { nearestWithin } from "../../../solve/floor-standing";
import type { Results } from "../../../solve/results";
import { groundAt } from "../../../terrain";
import { FOOT, INCH } from "../../../units";
import type { ToolContext } from "../tool";

/**
 * Floor height of a new building, m.
 *
 * Method  common practice: the high corner stands about a foot (0.3 m) out of the ground, then rules and
 *         grades move it: where the rules leave room elsewhere, it starts there, as near as can be. Without ground it starts
 *         from the mark's height, else from zero.
 */
export function firstFloor(
  context: Pick<ToolContext, "project" | "results" | "bandOf">,
  outline: readonly Point[],
): number {
  const project = context.project();
  const [above, step] = usual(project);
  const floor = outOfGround(project, context.results(), outline, [above, step]);
  // An outline that is drawn anew keeps its floor.
  if (project.building) return floor;
  const drawn = buildingEdits.drawBuilding.run(project, { outline, floor });
  return drawn.ok ? nearestWithin(context.bandOf(drawn.project), floor, step) : floor;
}

function usual({ display }: Project): readonly [above: number, step: number] {
  return ["ft-in", "in", "ft"].includes(display.length) ? [FOOT, INCH] : [0.3, 0.01];
}

function outOfGround(
  project: Project,
  results: Results,
  outline: readonly Point[],
  [above, step]: readonly [number, number],
): number {
  const heights = results.ground
    ? outline.flatMap(([x, y]) => {
        const at = results.ground && groundAt(results.ground, x, y);
        return at ? [at.z] : [];
      })
    : [];
  const ground = heights.length > 0 ? Math.max(...heights) : (project.survey.marks[0]?.height.m ?? 0);
  return Math.ceil((ground + above) / step - 1e-9) * step;
}
