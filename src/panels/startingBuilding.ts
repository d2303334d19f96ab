/** A first building to move about: amid the shots, its floor a foot above the highest ground there. */
import { buildingEdits, type Point, type Project, shotPlace } from "../document";
import { type Ground, groundAt } from "../terrain";
import { FOOT } from "../units";

export function startingBuilding(
  project: Project,
  ground: Ground | null,
): { outline: Point[]; floor: number } {
  const metric = project.display.area === "m2";
  const [width, depth] = metric ? [9.6, 7.2] : [32 * FOOT, 24 * FOOT];
  const [x, y] = middle(project);
  const outline = buildingEdits.rectangleOutline([x - width / 2, y - depth / 2], width, depth);
  const heights = outline.flatMap(([px, py]) => (ground ? (groundAt(ground, px, py)?.z ?? []) : []));
  const highest = heights.length > 0 ? Math.max(...heights) : (project.survey.marks[0]?.height.m ?? 0);
  return { outline, floor: highest + FOOT };
}

/** Middle of the placed shots, or of the lot, or of the empty plan. */
function middle(project: Project): Point {
  const { survey, lot } = project;
  const shots = survey.shots.flatMap((shot): Point[] => {
    const at = shotPlace(project, shot);
    return at ? [at] : [];
  });
  const places = shots.length > 0 ? shots : lot.outline;
  if (places.length === 0) return [0, 0];
  const sum = places.reduce(([sx, sy], [x, y]) => [sx + x, sy + y] as const, [0, 0] as const);
  return [sum[0] / places.length, sum[1] / places.length];
}
