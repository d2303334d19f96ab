/**
 * What stays and what goes along when the building changes: ground that was read at a corner stays where it
 * was read, a drive that ends at a door goes along with the door, a dimension goes along with its corners and stays
 * where the last one was when a corner is gone.
 */
import { polylineLength } from "../../geometry";
import { leansOnBuilding, placeResolver } from "../places";
import type {
  Building,
  Dimension,
  DimensionEnd,
  Door,
  Drive,
  Place,
  Point,
  Project,
  Survey,
} from "../schema";

/** `after` with its shots left where `before` had them, its drives' ends at their doors, its dimensions' at corners. */
export function withFollowers(before: Project, after: Project): Project {
  const shots = leftBehind(before, after.building, after.survey, after.survey.shots);
  const pits = leftBehind(before, after.building, after.survey, after.survey.pits);
  const drives = drivesAtDoors(before.building, after.building, after.grading.drives);
  const dimensions = dimensionsLeftBehind(before.building, after.building, after.drawing.dimensions);
  // A part that stays is the same object: what is reckoned from it isn't reckoned again.
  const sameSurvey = shots === after.survey.shots && pits === after.survey.pits;
  const survey = sameSurvey ? after.survey : { ...after.survey, shots, pits };
  const grading = drives === after.grading.drives ? after.grading : { ...after.grading, drives };
  const drawing = dimensions === after.drawing.dimensions ? after.drawing : { ...after.drawing, dimensions };
  return { ...after, survey, grading, drawing };
}

function same(a: Point | undefined, b: Point | undefined): boolean {
  return a !== undefined && b !== undefined && a[0] === b[0] && a[1] === b[1];
}

/** The ground doesn't move with the plan: what was measured from a corner that moved keeps the place it had. */
function leftBehind<T extends { readonly place: Place }>(
  project: Project,
  after: Building | null,
  survey: Survey,
  things: T[],
): T[] {
  const before = project.building;
  if (!before || before.outline === after?.outline) return things;
  const was = placeResolver(project.survey, before.outline);
  const is = placeResolver(survey, after?.outline ?? []);
  let changed = false;
  const left = things.map((thing): T => {
    if (!leansOnBuilding(thing.place)) return thing;
    const at = was(thing.place).at;
    if (!at || same(at, is(thing.place).at ?? undefined)) return thing;
    changed = true;
    return { ...thing, place: { kind: "at", x: at[0], y: at[1] } };
  });
  return changed ? left : things;
}

/** A dimension whose corner is gone keeps the place that the corner had. */
function dimensionsLeftBehind(
  before: Building | null,
  after: Building | null,
  dimensions: Dimension[],
): Dimension[] {
  if (!before) return dimensions;
  const left = after?.outline.length ?? 0;
  const isGone = (end: DimensionEnd) => end.kind === "corner" && end.corner >= left;
  if (!dimensions.some(({ from, to }) => isGone(from) || isGone(to))) return dimensions;
  const kept = (end: DimensionEnd): DimensionEnd => {
    const was = end.kind === "corner" && isGone(end) ? before.outline[end.corner] : undefined;
    return was ? { kind: "at", x: was[0], y: was[1] } : end;
  };
  return dimensions.map((dimension) => ({
    ...dimension,
    from: kept(dimension.from),
    to: kept(dimension.to),
  }));
}

/** Drives that end at a door end where that door is now. */
export function drivesAtDoors(before: Building | null, after: Building | null, drives: Drive[]): Drive[] {
  if (!before || !after || before === after) return drives;
  let changed = false;
  const moved = drives.map((drive): Drive => {
    const was = before.doors.find(({ id }) => id === drive.door);
    const is = after.doors.find(({ id }) => id === drive.door);
    const from = was && doorMiddle(before.outline, was);
    const to = is && doorMiddle(after.outline, is);
    if (!from || !to || same(from, to)) return drive;
    changed = true;
    const line = [...drive.line.slice(0, -1), to];
    return { ...drive, line, breaks: slidBreaks(drive, line) };
  });
  return changed ? moved : drives;
}

/**
 * Grade breaks on the last stretch slide with it, so that none is left on the landing or against it, where its height
 * would make a cliff. Those before it stay where they are on the ground.
 */
function slidBreaks({ line: before, landing, breaks }: Drive, line: readonly Point[]): Drive["breaks"] {
  if (breaks.length === 0) return breaks;
  const [was, is] = [polylineLength(before), polylineLength(line)].map((length) => length - landing.length);
  const corner = polylineLength(before.slice(0, -1));
  if (was === undefined || is === undefined || was <= 0 || is <= 0) return breaks;
  // Where the landing now takes the whole last stretch the run before it is what is left to slide on.
  const from = corner < Math.min(was, is) ? corner : 0;
  return breaks.map((one) =>
    one.at <= from || one.at > was
      ? one
      : { ...one, at: from + ((one.at - from) * (is - from)) / (was - from) },
  );
}

/** Middle of a door on the wall's outside face; null where its wall is gone. */
export function doorMiddle(
  outline: readonly Point[],
  door: Pick<Door, "wall" | "offset" | "width">,
): Point | null {
  const a = outline[door.wall];
  const b = outline[(door.wall + 1) % outline.length];
  if (!a || !b) return null;
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
  if (length === 0) return null;
  const share = (door.offset + door.width / 2) / length;
  return [a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share];
}
