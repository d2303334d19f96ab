/** What the pointer can snap to: places, edges and directions of the things on the plan, each with its word. */
import {
  allThings,
  breaklineWord,
  type Feature,
  isArea,
  type Point,
  type Project,
  thingName,
  thingShape,
  visibleProject,
} from "../../document";
import { distance } from "../../geometry";
import { lotLines, piecesOf } from "../../plot";
import type { Selected } from "../../store/state";
import { cornerName, doorCentre, shotPlace, wallName } from "../select/places";
import { arcOf, type Round } from "./rounds";

/** What a snapped place is, so that a tool can tie to it. */
export type SnapTie =
  | { readonly kind: "building-corner"; readonly corner: number }
  | { readonly kind: "door"; readonly id: string }
  | { readonly kind: "shot" | "mark"; readonly id: string };

export interface SnapPoint {
  readonly at: Point;
  readonly word: string;
  readonly tie?: SnapTie;
  /** Between two places, as against a place of its own. */
  readonly middle?: true;
}

export interface SnapEdge {
  readonly a: Point;
  readonly b: Point;
  readonly word: string;
  /** "wall A–B", "the lot line". */
  readonly of: string;
}

/** What is to be kept clear round a place, a curve of the lot. */
export type SnapCircle = Round;

/** A direction to keep to: along it or square to it. */
export interface SnapDirection {
  /** Radians counter-clockwise from east. */
  readonly angle: number;
  /** "wall A–B", "the lot line"; null for the plan's own axes. */
  readonly of: string | null;
}

export interface SnapTargets {
  readonly points: readonly SnapPoint[];
  readonly edges: readonly SnapEdge[];
  readonly directions: readonly SnapDirection[];
  readonly circles: readonly SnapCircle[];
}

/** Things that are under the hand must not catch themselves. */
export type Without = (thing: Selected) => boolean;

const nothingLeftOut: Without = () => false;

/** Everything on the plan that can be snapped to; not what is hidden. */
export function snapTargets(whole: Project, without: Without = nothingLeftOut): SnapTargets {
  const project = visibleProject(whole);
  const { building, lot } = outlineTargets(project, without);
  const spots = spotTargets(project, without);
  const lines = lineTargets(project, without);
  const features = featureTargets(project, without);
  return {
    points: [...building.points, ...spots, ...lot.points, ...lines.points, ...features.points],
    edges: [...building.edges, ...lot.edges, ...lines.edges, ...features.edges],
    directions: directionsOf(building, lot),
    circles: [...keepClearCircles(project, without), ...(without({ kind: "lot" }) ? [] : lotCurves(project))],
  };
}

/** The directions alone: of a crowd of shots none is looked at. */
export function snapDirections(whole: Project): readonly SnapDirection[] {
  const { building, lot } = outlineTargets(visibleProject(whole), nothingLeftOut);
  return directionsOf(building, lot);
}

function outlineTargets(project: Project, without: Without) {
  return {
    building: without({ kind: "building" }) ? none : buildingTargets(project, without),
    lot: without({ kind: "lot" }) ? none : ringTargets(project.lot.outline, lotWords),
  };
}

function directionsOf(building: SnapTargets, lot: SnapTargets): readonly SnapDirection[] {
  const own: SnapDirection = { angle: 0, of: null };
  return [...building.directions, ...lot.directions, own];
}

const none: SnapTargets = { points: [], edges: [], directions: [], circles: [] };

interface RingWords {
  corner(i: number): { word: string; tie?: SnapTie };
  middle(i: number): string;
  edge(i: number): string;
  direction(i: number): string;
}

const lotWords: RingWords = {
  corner: () => ({ word: "corner of the lot" }),
  middle: () => "middle of the lot line",
  edge: () => "on the lot line",
  direction: () => "the lot line",
};

function ringTargets(ring: readonly Point[], words: RingWords): SnapTargets {
  const points: SnapPoint[] = [];
  const edges: SnapEdge[] = [];
  const directions: SnapDirection[] = [];
  for (const [i, a] of ring.entries()) {
    const b = ring[(i + 1) % ring.length] ?? a;
    points.push({ at: a, ...words.corner(i) }, { at: middle(a, b), word: words.middle(i), middle: true });
    edges.push({ a, b, word: words.edge(i), of: words.direction(i) });
    directions.push({ angle: Math.atan2(b[1] - a[1], b[0] - a[0]), of: words.direction(i) });
  }
  return { points, edges, directions, circles: [] };
}

function buildingTargets(project: Project, without: Without): SnapTargets {
  const { building } = project;
  if (!building) return none;
  const ring = building.outline;
  const walls = ringTargets(ring, {
    corner: (corner) => ({
      word: `corner ${cornerName(corner)}`,
      tie: { kind: "building-corner", corner },
    }),
    middle: (i) => `middle of wall ${wallName(ring, i)}`,
    edge: (i) => `on wall ${wallName(ring, i)}`,
    direction: (i) => `wall ${wallName(ring, i)}`,
  });
  const doors = building.doors.flatMap((door): SnapPoint[] => {
    const at = without({ kind: "door", id: door.id }) ? null : doorCentre(ring, door);
    return at ? [{ at, word: `middle of the ${door.name}`, tie: { kind: "door", id: door.id } }] : [];
  });
  // Where a door stands in the middle of its wall that place is the door's.
  const places = walls.points.filter(
    ({ at, middle: isMiddle }) => !isMiddle || !doors.some((door) => distance(at, door.at) < samePlace),
  );
  return { ...walls, points: [...doors, ...places] };
}

/** Nearer than this two places are one, m. */
const samePlace = 0.01;

function spotTargets(project: Project, without: Without): SnapPoint[] {
  const shots = project.survey.shots.flatMap((shot): SnapPoint[] => {
    // A shot on a corner of the building is that corner.
    if (shot.place.kind === "corner" || without({ kind: "shot", id: shot.id })) return [];
    const at = shotPlace(project, shot);
    return at
      ? [{ at, word: shot.name ? `shot ${shot.name}` : "a shot", tie: { kind: "shot", id: shot.id } }]
      : [];
  });
  const marks = project.survey.marks.flatMap((mark): SnapPoint[] =>
    mark.at && !without({ kind: "mark", id: mark.id })
      ? [{ at: mark.at, word: mark.name, tie: { kind: "mark", id: mark.id } }]
      : [],
  );
  return [...marks, ...shots];
}

function lineTargets(project: Project, without: Without): Pick<SnapTargets, "points" | "edges"> {
  const points: SnapPoint[] = [];
  const edges: SnapEdge[] = [];
  const kinds = [
    ["drive", project.grading.drives],
    ["swale", project.grading.swales],
  ] as const;
  for (const [kind, things] of kinds) {
    for (const thing of things) {
      if (without({ kind, id: thing.id })) continue;
      for (const [i, a] of thing.line.entries()) {
        const b = thing.line[i + 1];
        points.push({ at: a, word: `point of the ${thing.name}` });
        if (b) edges.push({ a, b, word: `on the ${thing.name}`, of: `the ${thing.name}` });
      }
    }
  }
  for (const thing of allThings(project)) {
    if (!isShape(thing) || without(thing)) continue;
    const shape = thingShape(project, thing);
    const of = `the ${thingName(project, thing)}`;
    for (const [i, a] of (shape?.points ?? []).entries()) {
      const b = shape?.points[i + 1] ?? (shape?.closed ? shape.points[0] : undefined);
      points.push({ at: a, word: thing.kind === "grade-point" ? of : `point of ${of}` });
      if (b) edges.push({ a, b, word: `on ${of}`, of });
    }
  }
  for (const { id, name, kind } of project.survey.breaklines) {
    const shape = thingShape(project, { kind: "breakline", id });
    if (!shape || without({ kind: "breakline", id })) continue;
    const of = `the ${name || breaklineWord(kind)}`;
    for (const [i, a] of shape.points.entries()) {
      const b = shape.points[i + 1] ?? (shape.closed ? shape.points[0] : undefined);
      points.push({ at: a, word: `point of ${of}` });
      if (b) edges.push({ a, b, word: `on ${of}`, of });
    }
  }
  return { points, edges };
}

function isShape({ kind }: Selected): boolean {
  return kind === "pad" || kind === "berm" || kind === "retaining-wall" || kind === "grade-point";
}

/** A tree, a corner of the septic field, along the fence. */
function featureTargets(project: Project, without: Without): Pick<SnapTargets, "points" | "edges"> {
  const points: SnapPoint[] = [];
  const edges: SnapEdge[] = [];
  for (const feature of project.lot.features) {
    if (without({ kind: "feature", id: feature.id })) continue;
    const name = featureName(feature);
    const ring = isArea(feature) ? [...feature.points, feature.points[0] as Point] : feature.points;
    for (const at of feature.points)
      points.push({ at, word: feature.points.length === 1 ? name : `point of ${name}` });
    for (const [i, b] of ring.slice(1).entries())
      edges.push({ a: ring[i] as Point, b, word: `on ${name}`, of: name });
  }
  return { points, edges };
}

function featureName(feature: Feature): string {
  return feature.name || `the ${feature.kind.replace("-", " ")}`;
}

function keepClearCircles(project: Project, without: Without): SnapCircle[] {
  return project.lot.features.flatMap((feature): SnapCircle[] => {
    const [centre, ...others] = feature.points;
    const round = centre && others.length === 0 && feature.keepClear > 0;
    if (!round || without({ kind: "feature", id: feature.id })) return [];
    return [{ centre, radius: feature.keepClear, of: `what ${featureName(feature)} keeps clear` }];
  });
}

/** Curves of the deed: each by its first place, one near its middle and its last. */
function lotCurves({ lot }: Project): SnapCircle[] {
  return lotLines(lot).flatMap((line): SnapCircle[] => {
    const pieces = line.curve ? piecesOf(line, lot.outline.length) : [];
    const at = (piece: number | undefined) =>
      piece === undefined ? undefined : lot.outline[piece % lot.outline.length];
    const [a, b] = [at(pieces[0]), at(pieces[Math.ceil(pieces.length / 2)])];
    const c = at((pieces.at(-1) ?? -1) + 1);
    const arc = pieces.length > 1 && a && b && c ? arcOf(a, b, c, "the lot's curve") : null;
    return arc ? [arc] : [];
  });
}

function middle(a: Point, b: Point): Point {
  return [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
}
