/**
 * Where the places of the document lie on the plan: one resolver for shots, test pits and whatever else is measured in.
 *
 * Units   metres, radians; x east, y north.
 * Sign    `out` is away from the building, `right` of the way from the first point to the second; angles clockwise.
 * Source  first principles (two tapes: intersection of circles).
 * Errors  a place that can't be found has a fault, in words that say what to mend; nothing throws.
 */
import { circlesMeet, signedArea } from "../geometry";
import type { Anchor, Mark, Place, Point, Project, Shot, StakeGrid, Survey } from "./schema";

export type Placed =
  | { readonly at: Point; readonly fault: null }
  | { readonly at: null; readonly fault: PlaceFault | null };

export interface PlaceFault {
  readonly code: "no-corner" | "no-wall" | "no-point" | "tapes-apart" | "one-point" | "no-grid";
  readonly what: string;
  readonly how: string;
}

export type PlaceResolver = (place: Place) => Placed;

const nowhere: Placed = { at: null, fault: null };

/** Answers where places lie; a place with kind "none" is nowhere and has no fault. */
export function placeResolver(
  survey: Pick<Survey, "marks" | "shots" | "grids">,
  corners: readonly Point[],
): PlaceResolver {
  let known: Known | null = null;
  return (place) => {
    if (place.kind === "none") return nowhere;
    if (place.kind === "at") return found([place.x, place.y]);
    if (place.kind === "corner") return cornerPlace(place.corner, corners);
    known ??= knownTo(survey, corners);
    return resolve(place, known);
  };
}

/** Where a shot lies: its own place; null while it has none, or it can't be found. */
export function shotPlace(project: Project, shot: Shot): Point | null {
  return placeResolver(project.survey, project.building?.outline ?? [])(shot.place).at;
}

/** The two places that two tapes leave to choose from, left and right as seen from the first known point; null where they don't meet. */
export function tapeCandidates(
  project: Project,
  from: readonly [Anchor, Anchor],
  lengths: readonly [number, number],
): { readonly left: Point; readonly right: Point } | null {
  const known = knownTo(project.survey, project.building?.outline ?? []);
  const a = anchorPoint(from[0], known);
  const b = anchorPoint(from[1], known);
  const meet = a && b && circlesMeet(a, lengths[0], b, lengths[1]);
  return meet && { left: [...meet.left], right: [...meet.right] };
}

/** Where a known point lies, null where it is gone. */
export function anchorPlace(project: Project, anchor: Anchor): Point | null {
  return anchorPoint(anchor, knownTo(project.survey, project.building?.outline ?? []));
}

/** Whether a place moves with the building's outline. */
export function leansOnBuilding(place: Place): boolean {
  return (
    place.kind === "corner" ||
    place.kind === "wall" ||
    anchorsOf(place).some((anchor) => anchor.kind === "corner")
  );
}

/** The known points that a place is measured from. */
export function anchorsOf(place: Place): readonly Anchor[] {
  switch (place.kind) {
    case "tapes":
      return place.from;
    case "baseline":
      return [place.from, place.to];
    case "polar":
      return place.back === null ? [place.from] : [place.from, place.back];
    default:
      return [];
  }
}

/** Where a stake of a grid stands. */
export function stakePoint(
  grid: Pick<StakeGrid, "at" | "turn" | "columnSpacing" | "rowSpacing">,
  row: number,
  column: number,
): Point {
  const along = column * grid.columnSpacing.m;
  const left = row * grid.rowSpacing.m;
  const cos = Math.cos(grid.turn);
  const sin = Math.sin(grid.turn);
  return [grid.at[0] + along * cos - left * sin, grid.at[1] + along * sin + left * cos];
}

/** The stakes of a grid in the order they are walked: the first row forth, the next back, and so on. */
export function stakeOrder(grid: Pick<StakeGrid, "rows" | "columns">): { row: number; column: number }[] {
  return Array.from({ length: grid.rows * grid.columns }, (_, i) => {
    const row = Math.floor(i / grid.columns);
    const step = i % grid.columns;
    return { row, column: row % 2 === 0 ? step : grid.columns - 1 - step };
  });
}

interface Known {
  readonly marks: ReadonlyMap<string, Mark>;
  readonly shots: Pick<ReadonlyMap<string, Shot>, "get">;
  readonly grids: ReadonlyMap<string, StakeGrid>;
  readonly corners: readonly Point[];
  /** Shots whose place is being found just now: a circle of shots leads nowhere. */
  readonly under: Set<string>;
}

type Lists = Pick<Survey, "marks" | "shots" | "grids">;
type Maps = Pick<Known, "marks" | "shots" | "grids">;

/** A survey is never changed in place, so its maps are made once; that of the shots when one is asked for by its id. */
const mapsOf = new WeakMap<Lists, Maps>();

function byId(survey: Lists): Maps {
  const known = mapsOf.get(survey);
  if (known !== undefined) return known;
  let shots: ReadonlyMap<string, Shot> | null = null;
  const made: Maps = {
    marks: firstById(survey.marks),
    grids: firstById(survey.grids),
    shots: {
      get(id) {
        shots ??= firstById(survey.shots);
        return shots.get(id);
      },
    },
  };
  mapsOf.set(survey, made);
  return made;
}

/** Of two with one id the first counts. */
function firstById<T extends { readonly id: string }>(items: readonly T[]): ReadonlyMap<string, T> {
  const map = new Map<string, T>();
  for (const item of items) if (!map.has(item.id)) map.set(item.id, item);
  return map;
}

function knownTo(survey: Lists, corners: readonly Point[]): Known {
  return { ...byId(survey), corners, under: new Set() };
}

function resolve(place: Place, known: Known): Placed {
  switch (place.kind) {
    case "none":
      return nowhere;
    case "at":
      return found([place.x, place.y]);
    case "corner":
      return cornerPlace(place.corner, known.corners);
    case "wall":
      return wallPlace(place, known.corners);
    case "tapes":
      return tapesPlace(place, known);
    case "baseline":
      return baselinePlace(place, known);
    case "stake":
      return gridPlace(place, known);
    case "polar":
      return polarPlace(place, known);
  }
}

function cornerPlace(corner: number, corners: readonly Point[]): Placed {
  const at = corners[corner];
  if (at !== undefined) return found(at);
  return fault(
    "no-corner",
    corners.length === 0
      ? "It stands on a corner of the building, but there is no building yet."
      : `It stands on corner ${corner + 1} of the building, which has ${corners.length} corners.`,
    "Choose a corner that is there, or click its place on the plan.",
  );
}

type PlaceOf<K extends Place["kind"]> = Extract<Place, { kind: K }>;

function wallPlace({ wall, along, out }: PlaceOf<"wall">, corners: readonly Point[]): Placed {
  const a = corners[wall];
  const b = corners[(wall + 1) % corners.length];
  if (!a || !b || (a[0] === b[0] && a[1] === b[1])) {
    return fault(
      "no-wall",
      "It is measured off a wall of the building that isn't there.",
      "Choose a wall that is there.",
    );
  }
  // Outside is to the right of a wall where the outline runs counter-clockwise.
  const outside = signedArea(corners) < 0 ? -1 : 1;
  return found(alongAndRight(a, b, along.m, outside * out.m));
}

function tapesPlace({ from, lengths, side }: PlaceOf<"tapes">, known: Known): Placed {
  const a = anchorPoint(from[0], known);
  const b = anchorPoint(from[1], known);
  if (!a || !b) return noPoint();
  if (a[0] === b[0] && a[1] === b[1]) return onePoint("Both tapes start at one point.");
  const meet = circlesMeet(a, lengths[0].m, b, lengths[1].m);
  if (meet) return found([...meet[side]]);
  const short = Math.hypot(b[0] - a[0], b[1] - a[1]) > lengths[0].m + lengths[1].m;
  return fault(
    "tapes-apart",
    `The two tapes, ${lengths[0].text} and ${lengths[1].text}, don't meet: ${
      short
        ? "together they are shorter than the way between the two points"
        : "one is so long that it reaches past the other all round"
    }.`,
    "Measure both again, and see that they start at the points named.",
  );
}

function baselinePlace({ from, to, along, right }: PlaceOf<"baseline">, known: Known): Placed {
  const a = anchorPoint(from, known);
  const b = anchorPoint(to, known);
  if (!a || !b) return noPoint();
  if (a[0] === b[0] && a[1] === b[1]) return onePoint("The line it is measured along has no length.");
  return found(alongAndRight(a, b, along.m, right.m));
}

function gridPlace({ grid, row, column }: PlaceOf<"stake">, known: Known): Placed {
  const stakes = known.grids.get(grid);
  if (stakes && row < stakes.rows && column < stakes.columns) return found(stakePoint(stakes, row, column));
  return fault(
    "no-grid",
    stakes
      ? `Its grid of stakes has ${stakes.rows} rows of ${stakes.columns}.`
      : "Its grid of stakes isn't there.",
    "Choose a stake that is there, or click its place on the plan.",
  );
}

function polarPlace({ from, back, angle, distance }: PlaceOf<"polar">, known: Known): Placed {
  const at = anchorPoint(from, known);
  const sight = back === null ? null : anchorPoint(back, known);
  if (!at || (back !== null && !sight)) return noPoint();
  const zero = sight ? Math.atan2(sight[0] - at[0], sight[1] - at[1]) : 0;
  if (sight && sight[0] === at[0] && sight[1] === at[1])
    return onePoint("The angle is turned from a point that is the one it is turned at.");
  const azimuth = zero + angle.radians;
  return found([at[0] + distance.m * Math.sin(azimuth), at[1] + distance.m * Math.cos(azimuth)]);
}

function anchorPoint(anchor: Anchor, known: Known): Point | null {
  switch (anchor.kind) {
    case "at":
      return [anchor.x, anchor.y];
    case "corner":
      return known.corners[anchor.corner] ?? null;
    case "mark":
      return known.marks.get(anchor.mark)?.at ?? null;
    case "shot":
      return shotAnchor(anchor.shot, known);
  }
}

function shotAnchor(id: string, known: Known): Point | null {
  const shot = known.shots.get(id);
  if (shot === undefined || known.under.has(id)) return null;
  if (shot.place.kind === "none") return shot.of === null ? null : (known.marks.get(shot.of)?.at ?? null);
  known.under.add(id);
  const placed = resolve(shot.place, known);
  known.under.delete(id);
  return placed.at;
}

/** So far from a towards b, and so far to the right of that way. */
function alongAndRight(a: Point, b: Point, along: number, right: number): Point {
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
  const ux = (b[0] - a[0]) / length;
  const uy = (b[1] - a[1]) / length;
  return [a[0] + along * ux + right * uy, a[1] + along * uy - right * ux];
}

function found(at: Point): Placed {
  return { at, fault: null };
}

function fault(code: PlaceFault["code"], what: string, how: string): Placed {
  return { at: null, fault: { code, what, how } };
}

function noPoint(): Placed {
  return fault(
    "no-point",
    "A point that it is measured from has no place itself.",
    "Give that point a place, or measure from another.",
  );
}

function onePoint(what: string): Placed {
  return fault("one-point", what, "Choose two different points.");
}
