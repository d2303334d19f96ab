/** Things that a box on the screen touches. */
import { allThings, isHidden, isLocked, type Project, type Shape, thingShape } from "../../document";
import { segmentsMeet } from "../../geometry";
import type { Selected } from "../../store/state";
import { toScreen, type View, type XY } from "../view/view";
import { isOpen } from "./layerOfThing";

/**
 * What the box with these two corners, px, touches. Locked and hidden things and layers are left out, and so is a shot that
 * counts as a corner of the building. The lot must lie in the box with all its corners: its lines go round everything.
 */
export function thingsInBox(project: Project, view: View, a: XY, b: XY): Selected[] {
  const box = {
    left: Math.min(a[0], b[0]),
    right: Math.max(a[0], b[0]),
    top: Math.min(a[1], b[1]),
    bottom: Math.max(a[1], b[1]),
  };
  const inside = ([x, y]: XY) => x >= box.left && x <= box.right && y >= box.top && y <= box.bottom;
  return allThings(project).filter((thing) => {
    if (isHidden(project, thing) || isLocked(project, thing) || isCornerShot(project, thing)) return false;
    if (!isOpen(thing)) return false;
    const shape = thingShape(project, thing);
    if (!shape) return false;
    const points = shape.points.map((at) => toScreen(view, at));
    if (thing.kind === "lot") return points.every(inside);
    return points.some(inside) || crosses({ points, closed: shape.closed }, box);
  });
}

function isCornerShot(project: Project, thing: Selected): boolean {
  return (
    thing.kind === "shot" && project.survey.shots.find(({ id }) => id === thing.id)?.place.kind === "corner"
  );
}

interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

function crosses({ points, closed }: Shape, { left, right, top, bottom }: Box): boolean {
  const corners: XY[] = [
    [left, top],
    [right, top],
    [right, bottom],
    [left, bottom],
  ];
  return points.some((a, i) => {
    const b = points[i + 1] ?? (closed ? points[0] : undefined);
    if (!b) return false;
    return corners.some((c, k) => segmentsMeet(a, b, c, corners[(k + 1) % 4] as XY));
  });
}
