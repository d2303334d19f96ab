/**
 * A piece of a wall pulled out (an add-on, the arm of an L, T or U) or pushed in (a recess).
 *
 * Units   metres. Depth is positive out of the building.
 * Answer  the area grows by width × depth; no right angle is lost, unless the piece is slid along the wall too. A piece that ends at a corner whose other wall runs
 *         the same way carries that corner along, so that no corner is left in the middle of a straight wall.
 * Ties    doors and windows within the piece go out with it, all others keep their place; what was read at a corner
 *         stays where it was read; what names a corner or wall names it by its new number.
 * Source  first principles.
 * Errors  refused in words: too small, a cut through a door, walls that would cross.
 */
import { signedArea } from "../../geometry";
import { anchorPlace, placeResolver } from "../places";
import type { Anchor, Building, DimensionEnd, Place, Point, Project, Survey } from "../schema";
import { command, done, type Edit, refuse } from "./command";
import { drivesAtDoors } from "./follow";
import { leastCorner, outlineFault } from "./outline";

export interface PullOutArgs {
  readonly wall: number;
  /** Ends of the piece, from the wall's first corner. */
  readonly from: number;
  readonly to: number;
  readonly depth: number;
  /** Along the wall, from its first corner to its last: the right angles at the piece are let go. Missing: none. */
  readonly slide?: number;
}

/** A piece narrower or shallower than this is a slip of the hand, m. */
const leastPiece = 0.3;
/** Nearer than this is the same place, m. */
const near = 1e-6;
/** Sine of the angle up to which two walls run the same way. */
const sameWay = 1e-4;

/** A corner of the new outline, and the wall that begins there. */
interface Node {
  readonly at: Point;
  /** The corner it was; null: a new one. */
  readonly corner: number | null;
  /** The wall of the old outline from which the wall that begins here came. */
  readonly wall: number;
}

interface Piece {
  readonly wall: number;
  readonly ends: readonly [Point, Point];
  readonly length: number;
  readonly from: number;
  readonly to: number;
  readonly out: Point;
}

/** Pulls a piece of a wall out of the building, or pushes it in. */
export const pullOut = command("building.pullOut", (project, args: PullOutArgs & { what?: string }): Edit => {
  const { building } = project;
  if (!building) return refuse("There is no building yet. Draw its outline first.");
  const piece = pieceOf(building.outline, args);
  if (typeof piece === "string") return refuse(piece);
  const nodes = cleaned(pulledNodes(building.outline, piece));
  const outline = nodes.map(({ at }): Point => [at[0], at[1]]);
  const fault = outlineFault(outline) ?? areaFault(building.outline, outline, piece, args.depth);
  if (fault) return refuse(fault);
  const doors = movedOpenings(building, building.doors, piece, outline);
  const windows = movedOpenings(building, building.windows, piece, outline);
  if (typeof doors === "string") return refuse(doors);
  if (typeof windows === "string") return refuse(windows);
  const next = renumbered(project, nodes, { ...building, outline, doors, windows });
  return done(
    next,
    args.what ?? (args.depth > 0 ? "pull a piece of a wall out" : "push a piece of a wall in"),
  );
});

/** The outline that pulling would make; the reason where it can't be made. */
export function pulledOutline(
  outline: readonly Point[],
  args: PullOutArgs,
): { readonly ok: true; readonly outline: Point[] } | { readonly ok: false; readonly why: string } {
  const piece = pieceOf(outline, args);
  if (typeof piece === "string") return { ok: false, why: piece };
  const pulled = cleaned(pulledNodes(outline, piece)).map(({ at }): Point => [at[0], at[1]]);
  const why = outlineFault(pulled) ?? areaFault(outline, pulled, piece, args.depth);
  return why ? { ok: false, why } : { ok: true, outline: pulled };
}

function pieceOf(
  outline: readonly Point[],
  { wall, from, to, depth, slide = 0 }: PullOutArgs,
): Piece | string {
  const a = outline[wall];
  const b = outline[(wall + 1) % outline.length];
  if (!a || !b) return "The building has no such wall.";
  if (![from, to, depth, slide].every(Number.isFinite)) return "A size of the piece is not a number.";
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
  const [near0, far] = [Math.max(0, Math.min(from, to)), Math.min(length, Math.max(from, to))];
  if (far - near0 < leastPiece - near || Math.abs(depth) < leastPiece - near)
    return "The piece should be at least 0.3 m (1 ft) wide and deep.";
  const isScrap = (m: number) => m > near && m < leastCorner;
  if (isScrap(near0) || isScrap(length - far))
    return "The piece would leave a scrap of wall beside it. Take it up to the corner, or end it farther off.";
  const side = signedArea(outline) >= 0 ? 1 : -1;
  const [ux, uy] = [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
  const out: Point = [side * depth * uy + slide * ux, -side * depth * ux + slide * uy];
  return { wall, ends: [a, b], length, from: near0, to: far, out };
}

function along({ ends: [a, b], length }: Piece, s: number): Point {
  const share = s / length;
  return [a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share];
}

const moved = ([x, y]: Point, [dx, dy]: Point): Point => [x + dx, y + dy];
const isNear = (a: Point, b: Point) => Math.hypot(b[0] - a[0], b[1] - a[1]) < near;

function pulledNodes(outline: readonly Point[], piece: Piece): Node[] {
  const n = outline.length;
  const { wall, from, to, length, out } = piece;
  const next = (wall + 1) % n;
  const carriesFirst = from < near && runsAlong(outline, (wall + n - 1) % n, out);
  const carriesLast = to > length - near && runsAlong(outline, next, out);
  const nodes: Node[] = [];
  for (const [corner, at] of outline.entries()) {
    const carried = (corner === wall && carriesFirst) || (corner === next && carriesLast);
    nodes.push({ at: carried ? moved(at, out) : at, corner, wall: corner });
    if (corner !== wall) continue;
    if (from >= near) nodes.push({ at: along(piece, from), corner: null, wall });
    if (!carriesFirst) nodes.push({ at: moved(along(piece, from), out), corner: null, wall });
    if (!carriesLast) nodes.push({ at: moved(along(piece, to), out), corner: null, wall });
    if (to <= length - near) nodes.push({ at: along(piece, to), corner: null, wall });
  }
  return nodes;
}

function runsAlong(outline: readonly Point[], wall: number, out: Point): boolean {
  const [a, b] = [outline[wall], outline[(wall + 1) % outline.length]];
  if (!a || !b) return false;
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  return Math.abs(dx * out[1] - dy * out[0]) <= sameWay * Math.hypot(dx, dy) * Math.hypot(out[0], out[1]);
}

/** Without corners that fell together, and those that this left in the middle of a straight wall. */
function cleaned(nodes: readonly Node[]): Node[] {
  const apart = nodes.filter((node, i) => !isNear(node.at, (nodes.at(i - 1) as Node).at));
  if (apart.length === nodes.length) return apart;
  const n = apart.length;
  return apart.filter((node, i) => {
    const [a, b] = [(apart.at(i - 1) as Node).at, (apart[(i + 1) % n] as Node).at];
    const [ux, uy, vx, vy] = [node.at[0] - a[0], node.at[1] - a[1], b[0] - node.at[0], b[1] - node.at[1]];
    return Math.abs(ux * vy - uy * vx) > sameWay * Math.hypot(ux, uy) * Math.hypot(vx, vy);
  });
}

/** Where the outline would lap over itself its area isn't the sum any more. */
function areaFault(
  before: readonly Point[],
  after: readonly Point[],
  piece: Piece,
  depth: number,
): string | null {
  const sum = Math.abs(signedArea(before)) + (piece.to - piece.from) * depth;
  const is = Math.abs(signedArea(after)) * Math.sign(signedArea(before) * signedArea(after));
  if (Math.abs(is - sum) < 1e-6 * Math.max(1, sum)) return null;
  return "The piece would lap over another part of the building. Make it less deep, or narrower.";
}

type Opening = Building["doors"][number] | Building["windows"][number];

/** Doors or windows on the walls of the new outline; the reason where one would be cut or left without its wall. */
function movedOpenings<T extends Opening>(
  building: Building,
  openings: readonly T[],
  piece: Piece,
  outline: readonly Point[],
): T[] | string {
  const next: T[] = [];
  for (const opening of openings) {
    const ends = edgesOf(building.outline, opening);
    if (!ends) return `The ${opening.name} has no wall.`;
    const onWall = opening.wall === piece.wall;
    const [start, end] = [opening.offset, opening.offset + opening.width];
    const within = onWall && start >= piece.from - near && end <= piece.to + near;
    const beside = !onWall || end <= piece.from + near || start >= piece.to - near;
    if (!(within || beside))
      return `The piece would begin or end in the ${opening.name}. Begin and end it beside the ${opening.name}, or slide that first.`;
    const [a, b] = within ? [moved(ends[0], piece.out), moved(ends[1], piece.out)] : ends;
    const put = wallWith(outline, a, b);
    if (!put) return `The ${opening.name} would be left without a wall. Slide it or take it away first.`;
    next.push({ ...opening, ...put });
  }
  return next;
}

function edgesOf(
  outline: readonly Point[],
  { wall, offset, width }: Opening,
): readonly [Point, Point] | null {
  const [a, b] = [outline[wall], outline[(wall + 1) % outline.length]];
  if (!a || !b) return null;
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
  const [ux, uy] = [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
  const end = offset + width;
  return [
    [a[0] + ux * offset, a[1] + uy * offset],
    [a[0] + ux * end, a[1] + uy * end],
  ];
}

/** The wall on which both places lie, in its direction. */
function wallWith(
  outline: readonly Point[],
  first: Point,
  last: Point,
): { wall: number; offset: number } | null {
  for (const [wall, a] of outline.entries()) {
    const b = outline[(wall + 1) % outline.length] ?? a;
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
    const [ux, uy] = [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
    const [s, t] = [first, last].map(([x, y]) => (x - a[0]) * ux + (y - a[1]) * uy) as [number, number];
    const off = [first, last].map(([x, y]) => Math.abs((x - a[0]) * uy - (y - a[1]) * ux));
    if (Math.max(...off) < 1e-5 && s < t && s > -1e-5 && t < length + 1e-5)
      return { wall, offset: Math.max(0, s) };
  }
  return null;
}

// ---- what names a corner or a wall ------------------------------------------------------------------------------

function renumbered(project: Project, nodes: readonly Node[], building: Building): Project {
  const before = project.building as Building;
  const corner = (was: number): number | null => {
    const is = nodes.findIndex((node) => node.corner === was);
    return is < 0 ? null : is;
  };
  const walls = (was: number) => nodes.flatMap((node, i) => (node.wall === was ? [i] : []));
  const { survey, staking, grading, drawing } = project;
  const place = placesAfter(project, building, corner, walls);
  const left = grading.apron.leave.flatMap((wall) => (wall < before.outline.length ? walls(wall) : [wall]));
  return {
    ...project,
    building,
    survey: {
      ...survey,
      shots: survey.shots.map((shot) => ({ ...shot, place: place(shot.place) })),
      pits: survey.pits.map((pit) => ({ ...pit, place: place(pit.place) })),
    },
    staking: {
      ...staking,
      tapes: staking.tapes.flatMap((tape) => {
        const [from, to] = [corner(tape.from), corner(tape.to)];
        return from === null || to === null ? [] : [{ ...tape, from, to }];
      }),
    },
    grading: {
      ...grading,
      apron: {
        ...grading.apron,
        leave: left,
        sides: grading.apron.sides.flatMap((side) => walls(side.wall).map((wall) => ({ ...side, wall }))),
      },
      drives: drivesAtDoors(before, building, grading.drives),
    },
    drawing: {
      ...drawing,
      dimensions: drawing.dimensions.map((dimension) => ({
        ...dimension,
        from: endAfter(before.outline, dimension.from, corner),
        to: endAfter(before.outline, dimension.to, corner),
      })),
    },
  };
}

type Renumber = (was: number) => number | null;

function endAfter(outline: readonly Point[], end: DimensionEnd, corner: Renumber): DimensionEnd {
  if (end.kind === "at") return end;
  const is = corner(end.corner);
  if (is !== null) return { ...end, corner: is };
  const [x, y] = outline[end.corner] ?? [0, 0];
  return { kind: "at", x, y };
}

/** The ground doesn't move with the plan: a tie that leads to the same place is kept under its new number. */
function placesAfter(
  project: Project,
  building: Building,
  corner: Renumber,
  walls: (was: number) => number[],
): (place: Place) => Place {
  const was = placeResolver(project.survey, project.building?.outline ?? []);
  const is = placeResolver(project.survey as Survey, building.outline);
  const anchor = (each: Anchor): Anchor => {
    if (each.kind !== "corner") return each;
    const at = anchorPlace(project, each);
    const next = corner(each.corner);
    const stays = at && next !== null && isNear(building.outline[next] as Point, at);
    if (stays) return { ...each, corner: next };
    return at ? { kind: "at", x: at[0], y: at[1] } : each;
  };
  return (place) => {
    if (place.kind === "tapes") return { ...place, from: [anchor(place.from[0]), anchor(place.from[1])] };
    if (place.kind === "baseline") return { ...place, from: anchor(place.from), to: anchor(place.to) };
    if (place.kind === "polar")
      return { ...place, from: anchor(place.from), back: place.back && anchor(place.back) };
    if (place.kind !== "corner" && place.kind !== "wall") return place;
    const { at } = was(place);
    if (!at) return place;
    const next = place.kind === "corner" ? corner(place.corner) : null;
    const choices: Place[] =
      place.kind === "corner"
        ? next === null
          ? []
          : [{ ...place, corner: next }]
        : walls(place.wall).map((wall) => ({ ...place, wall }));
    const same = choices.find((choice) => {
      const leads = is(choice).at;
      return leads !== null && isNear(leads, at);
    });
    return same ?? { kind: "at", x: at[0], y: at[1] };
  };
}
