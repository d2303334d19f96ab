/** Where things of the document lie on the plan. */
import type { Door, Point, Project, Window } from "../../document";

export { shotPlace } from "../../document";

/** Name of a corner of the building: A, B, C … */
export function cornerName(corner: number): string {
  return String.fromCharCode(65 + (corner % 26)) + (corner >= 26 ? String(Math.floor(corner / 26)) : "");
}

/** Name of a wall by its corners: "A–B". */
export function wallName(outline: readonly unknown[], wall: number): string {
  return `${cornerName(wall)}–${cornerName((wall + 1) % outline.length)}`;
}

/** The two ends of wall i; null where there is no such wall. */
export function wallEnds(outline: readonly Point[], wall: number): readonly [Point, Point] | null {
  const a = outline[wall];
  const b = outline[(wall + 1) % outline.length];
  return a && b ? [a, b] : null;
}

type Opening = Pick<Door, "wall" | "offset" | "width">;

/** The two edges of a door or window on its wall, near edge first; null when its wall is gone. */
export function doorEdges(outline: readonly Point[], door: Opening): readonly [Point, Point] | null {
  const ends = wallEnds(outline, door.wall);
  if (!ends) return null;
  const [a, b] = ends;
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
  if (length === 0) return null;
  const along = (s: number): Point => [
    a[0] + ((b[0] - a[0]) * s) / length,
    a[1] + ((b[1] - a[1]) * s) / length,
  ];
  return [along(door.offset), along(door.offset + door.width)];
}

/** A door or window by its id; null when it is gone. */
export function findOpening(
  project: Project,
  { kind, id }: { readonly kind: "door" | "window"; readonly id: string },
): Door | Window | null {
  const { building } = project;
  const list: readonly (Door | Window)[] = (kind === "door" ? building?.doors : building?.windows) ?? [];
  return list.find((each) => each.id === id) ?? null;
}

/** Middle of a door on the wall's outside face. */
export function doorCentre(outline: readonly Point[], door: Door): Point | null {
  const edges = doorEdges(outline, door);
  return edges && [(edges[0][0] + edges[1][0]) / 2, (edges[0][1] + edges[1][1]) / 2];
}
