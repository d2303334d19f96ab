/** Handles of what is selected: where they are and what pulling one does. Their size on screen never changes. */
import { isLocked, type Point, type Project, thingShape } from "../../document";
import { dimensionShape } from "../../drawing";
import type { DrawingMark } from "../../drawing/marks";
import type { Selected } from "../../store/state";
import { cornersOnPlan } from "../../underlay";
import { pxPerMm } from "../screen";
import { toScreen, toWorld, type View, type XY } from "../view/view";
import { pictureById } from "./pictures";
import { doorEdges, findOpening, wallEnds } from "./places";
import { outlineCentre, wallOutward } from "./shape";

export type Handle =
  | { readonly kind: "turn"; readonly at: Point; readonly stem: Point }
  | { readonly kind: "wall"; readonly at: Point; readonly wall: number }
  | { readonly kind: "corner"; readonly at: Point; readonly corner: number }
  | { readonly kind: "door-edge"; readonly at: Point; readonly of: OpeningRef; readonly edge: 0 | 1 }
  /** What a note points to; beside a note without a leader, pulling it makes one. */
  | { readonly kind: "leader"; readonly at: Point; readonly id: string; readonly makes: boolean }
  | { readonly kind: "dimension-end"; readonly at: Point; readonly id: string; readonly end: "from" | "to" }
  | { readonly kind: "dimension-line"; readonly at: Point; readonly id: string }
  | { readonly kind: "picture-turn"; readonly at: Point; readonly stem: Point; readonly id: string }
  | { readonly kind: "picture-corner"; readonly at: Point; readonly corner: number; readonly id: string }
  | { readonly kind: "vertex"; readonly at: Point; readonly line: LineRef; readonly index: number }
  /** Between two vertices: pulling it makes a new one. */
  | { readonly kind: "between"; readonly at: Point; readonly line: LineRef; readonly index: number };

/** A line of the document whose places can be pulled. */
export type LineRef =
  | {
      readonly kind: "drive" | "swale" | "breakline" | "feature" | "section" | ShapeKind;
      readonly id: string;
    }
  | { readonly kind: "lot" };

/** Shapes of the ground with places that can be pulled. */
export type ShapeKind = "pad" | "berm" | "retaining-wall";

/** A door or a window. */
export interface OpeningRef {
  readonly kind: "door" | "window";
  readonly id: string;
}

/** The turn handle stands off the building by this, px. */
const turnReach = 30;
/** A wall shorter than this on screen has no handle between its corners, px. */
const shortWall = 34;

/** Handles for a selection of one thing; several things have none, and what is locked has none. */
export function handlesFor(project: Project, selection: readonly Selected[], view: View): Handle[] {
  const [only] = selection;
  if (!only || selection.length > 1 || isLocked(project, only)) return [];
  switch (only.kind) {
    case "building":
      return buildingHandles(project, view);
    case "door":
    case "window":
      return openingHandles(project, { kind: only.kind, id: only.id });
    case "note":
      return noteHandles(project, only.id, view);
    case "dimension":
      return dimensionHandles(project, only.id);
    case "drive":
    case "swale":
    case "breakline":
    case "pad":
    case "berm":
    case "retaining-wall":
    case "feature":
    case "section":
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

function pictureHandles(project: Project, id: string, view: View): Handle[] {
  const picture = pictureById(project, id);
  if (!picture) return [];
  const places = cornersOnPlan(picture);
  const corners = places.map((at, corner): Handle => ({ kind: "picture-corner", at, corner, id }));
  const { at, stem } = turnHandle(places, view);
  return [{ kind: "picture-turn", at, stem, id }, ...corners];
}

function openingHandles(project: Project, of: OpeningRef): Handle[] {
  const opening = findOpening(project, of);
  const edges = opening && project.building ? doorEdges(project.building.outline, opening) : null;
  if (!edges) return [];
  return [
    { kind: "door-edge", at: edges[0], of, edge: 0 },
    { kind: "door-edge", at: edges[1], of, edge: 1 },
  ];
}

/** Off a note without a leader, where the words don't cover it, px. */
const leaderReach = 16;

function noteHandles(project: Project, id: string, view: View): Handle[] {
  const note = project.drawing.notes.find((each) => each.id === id);
  if (!note) return [];
  const at = note.pointsTo ?? besideOnScreen(view, note.at, -leaderReach, 0);
  return [{ kind: "leader", at, id, makes: note.pointsTo === null }];
}

function dimensionHandles(project: Project, id: string): Handle[] {
  const dimension = project.drawing.dimensions.find((each) => each.id === id);
  const shape = dimension && dimensionShape(project, dimension);
  if (!shape) return [];
  const [a, b] = [shape.a, shape.b].map(([x, y]): Point => [x, y]) as [Point, Point];
  return [
    { kind: "dimension-line", at: middle(a, b), id },
    { kind: "dimension-end", at: [shape.from[0], shape.from[1]], id, end: "from" },
    { kind: "dimension-end", at: [shape.to[0], shape.to[1]], id, end: "to" },
  ];
}

/** The places of a line, and whether its last closes onto its first. */
export function linePoints(project: Project, line: LineRef): { points: readonly Point[]; closed: boolean } {
  if (line.kind === "lot") return { points: project.lot.outline, closed: true };
  const { points = [], closed = false } = thingShape(project, line) ?? {};
  return { points, closed };
}

function lineHandles(project: Project, line: LineRef, view: View): Handle[] {
  const { points, closed } = linePoints(project, line);
  // A feature that is one place is moved by itself.
  if (points.length === 1) return [];
  const vertices = points.map((at, index): Handle => ({ kind: "vertex", at, line, index }));
  const betweens = points.flatMap((a, index): Handle[] => {
    const b = points[index + 1] ?? (closed ? points[0] : undefined);
    if (!b || pixels(view, a, b) < shortWall) return [];
    return [{ kind: "between", at: middle(a, b), line, index }];
  });
  // A section line is straight.
  return line.kind === "section" ? vertices : [...betweens, ...vertices];
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
    [
      "wall" in h && h.wall,
      "corner" in h && h.corner,
      "edge" in h && h.edge,
      "index" in h && h.index,
      "end" in h && h.end,
    ].join(" ");
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
  leader: 2.6,
  "dimension-end": 2.8,
  "dimension-line": 2.4,
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
    const style = hot ? "handle-hot" : isFaint(handle) ? "handle-between" : "handle";
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

/** Pulling it makes something new. */
function isFaint(handle: Handle): boolean {
  return handle.kind === "between" || (handle.kind === "leader" && handle.makes);
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
