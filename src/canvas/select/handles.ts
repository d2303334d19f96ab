/** Handles of what is selected: where they are and what pulling one does. Their size on screen never changes. */
import type { Point, Project } from "../../document";
import type { DrawingMark } from "../../drawing/marks";
import type { Selected } from "../../store/state";
import { cornersOnPlan } from "../../underlay";
import { pxPerMm } from "../screen";
import { toScreen, toWorld, type View, type XY } from "../view/view";
import { isLocked, pictureById } from "./pictures";
import { doorEdges, wallEnds } from "./places";
import { outlineCentre, wallOutward } from "./shape";

export type Handle =
  | { readonly kind: "turn"; readonly at: Point; readonly stem: Point }
  | { readonly kind: "wall"; readonly at: Point; readonly wall: number }
  | { readonly kind: "corner"; readonly at: Point; readonly corner: number }
  | { readonly kind: "door-edge"; readonly at: Point; readonly id: string; readonly edge: 0 | 1 }
  | { readonly kind: "picture-turn"; readonly at: Point; readonly stem: Point; readonly id: string }
  | { readonly kind: "picture-corner"; readonly at: Point; readonly corner: number; readonly id: string }
  | { readonly kind: "vertex"; readonly at: Point; readonly line: LineRef; readonly index: number }
  /** Between two vertices: pulling it makes a new one. */
  | { readonly kind: "between"; readonly at: Point; readonly line: LineRef; readonly index: number };

/** A line of the document whose places can be pulled. */
export type LineRef = { readonly kind: "drive" | "swale"; readonly id: string } | { readonly kind: "lot" };

/** The turn handle stands off the building by this, px. */
const turnReach = 30;
/** A wall shorter than this on screen has no handle between its corners, px. */
const shortWall = 34;

/** Handles for a selection of one thing; several things have none. */
export function handlesFor(project: Project, selection: readonly Selected[], view: View): Handle[] {
  const [only] = selection;
  if (!only || selection.length > 1) return [];
  switch (only.kind) {
    case "building":
      return buildingHandles(project, view);
    case "door":
      return doorHandles(project, only.id);
    case "drive":
    case "swale":
      return lineHandles(project, { kind: only.kind, id: only.id }, view);
    case "lot":
      return lineHandles(project, { kind: "lot" }, view);
    case "underlay":
      return pictureHandles(project, only.id, view);
    default:
      return [];
  }
}

function buildingHandles(project: Project, view: View): Handle[] {
  const outline = project.building?.outline;
  if (!outline) return [];
  const corners = outline.map((at, corner): Handle => ({ kind: "corner", at, corner }));
  const walls = outline.flatMap((_, wall): Handle[] => {
    const ends = wallEnds(outline, wall);
    if (!ends || pixels(view, ends[0], ends[1]) < shortWall) return [];
    return [{ kind: "wall", at: middle(ends[0], ends[1]), wall }];
  });
  return [turnHandle(outline, view), ...corners, ...walls];
}

/** Off the wall that lies highest on the screen, where the hand doesn't cover the building. */
function turnHandle(outline: readonly Point[], view: View): Extract<Handle, { kind: "turn" }> {
  let best: { stem: Point; outward: Point; height: number } | null = null;
  for (const [wall] of outline.entries()) {
    const ends = wallEnds(outline, wall);
    const outward = wallOutward(outline, wall);
    if (!ends || !outward) continue;
    const stem = middle(ends[0], ends[1]);
    const height = toScreen(view, stem)[1];
    if (!best || height < best.height - 1e-6) best = { stem, outward, height };
  }
  if (!best) return { kind: "turn", at: outlineCentre(outline), stem: outlineCentre(outline) };
  const reach = turnReach / view.scale;
  const at: Point = [best.stem[0] + best.outward[0] * reach, best.stem[1] + best.outward[1] * reach];
  return { kind: "turn", at, stem: best.stem };
}

/** A locked picture has none. */
function pictureHandles(project: Project, id: string, view: View): Handle[] {
  const picture = pictureById(project, id);
  if (!picture || isLocked(project, id)) return [];
  const places = cornersOnPlan(picture);
  const corners = places.map((at, corner): Handle => ({ kind: "picture-corner", at, corner, id }));
  const { at, stem } = turnHandle(places, view);
  return [{ kind: "picture-turn", at, stem, id }, ...corners];
}

function doorHandles(project: Project, id: string): Handle[] {
  const door = project.building?.doors.find((each) => each.id === id);
  const edges = door && project.building ? doorEdges(project.building.outline, door) : null;
  if (!edges) return [];
  return [
    { kind: "door-edge", at: edges[0], id, edge: 0 },
    { kind: "door-edge", at: edges[1], id, edge: 1 },
  ];
}

/** The places of a line, and whether its last closes onto its first. */
export function linePoints(project: Project, line: LineRef): { points: readonly Point[]; closed: boolean } {
  if (line.kind === "lot") return { points: project.lot.outline, closed: true };
  const list = line.kind === "drive" ? project.grading.drives : project.grading.swales;
  return { points: list.find(({ id }) => id === line.id)?.line ?? [], closed: false };
}

function lineHandles(project: Project, line: LineRef, view: View): Handle[] {
  const { points, closed } = linePoints(project, line);
  const vertices = points.map((at, index): Handle => ({ kind: "vertex", at, line, index }));
  const betweens = points.flatMap((a, index): Handle[] => {
    const b = points[index + 1] ?? (closed ? points[0] : undefined);
    if (!b || pixels(view, a, b) < shortWall) return [];
    return [{ kind: "between", at: middle(a, b), line, index }];
  });
  return [...betweens, ...vertices];
}

/** The handle under a place on the screen; the nearest where several are within reach. */
export function handleAt(handles: readonly Handle[], view: View, at: XY, reach: number): Handle | null {
  let best: Handle | null = null;
  let bestDistance = reach;
  for (const handle of handles) {
    const [x, y] = toScreen(view, handle.at);
    // A place between two others gives way to them.
    const d = Math.hypot(x - at[0], y - at[1]) + (handle.kind === "between" ? 2 : 0);
    if (d <= bestDistance) {
      best = handle;
      bestDistance = d;
    }
  }
  return best;
}

/** The same handle as another, although it may have moved. */
export function sameHandle(a: Handle | null, b: Handle | null): boolean {
  if (!a || !b || a.kind !== b.kind) return a === b;
  const key = (h: Handle) =>
    ["wall" in h && h.wall, "corner" in h && h.corner, "edge" in h && h.edge, "index" in h && h.index].join(
      " ",
    );
  return key(a) === key(b);
}

const sizes: Readonly<Record<Handle["kind"], number>> = {
  turn: 3.2,
  "picture-turn": 3.2,
  "picture-corner": 3,
  wall: 2.4,
  corner: 3,
  "door-edge": 2.8,
  vertex: 3,
  between: 1.8,
};

/** Handles as marks; the one under the pointer is filled. */
export function handleMarks(handles: readonly Handle[], under: Handle | null): DrawingMark[] {
  const stems = handles.flatMap((handle): DrawingMark[] =>
    handle.kind === "turn" || handle.kind === "picture-turn"
      ? [{ kind: "line", points: [...handle.stem, ...handle.at], style: "handle-stem" }]
      : [],
  );
  const knobs = handles.map((handle): DrawingMark => {
    const hot = sameHandle(handle, under);
    const style = hot ? "handle-hot" : handle.kind === "between" ? "handle-between" : "handle";
    return {
      kind: "symbol",
      at: handle.at,
      symbol: "dot",
      size: sizes[handle.kind] * (hot ? 1.2 : 1),
      style,
    };
  });
  return [...stems, ...knobs];
}

function middle(a: Point, b: Point): Point {
  return [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
}

function pixels(view: View, a: Point, b: Point): number {
  return Math.hypot(b[0] - a[0], b[1] - a[1]) * view.scale;
}

/** Half the size of a handle's target, px: never less than ten across, and twenty for a finger. */
export const handleReach = { mouse: 3 * pxPerMm, touch: 6 * pxPerMm } as const;

/** World place of a shift on the screen, px right and up. */
export function besideOnScreen(view: View, at: Point, right: number, up: number): Point {
  const [x, y] = toScreen(view, at);
  return toWorld(view, [x + right, y - up]);
}
