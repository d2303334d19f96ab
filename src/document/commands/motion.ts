/**
 * Things moved as one stiff piece: shifted, turned or mirrored on the plan.
 *
 * Units   metres, radians counter-clockwise.
 * Sign    a mirrored ring keeps the sense of its corners, and its first side stays the first: corner i becomes corner
 *         (1 − i) mod n, wall i becomes wall −i mod n, and a door's offset is counted from the wall's other end.
 * Source  first principles.
 */

import { placeResolver } from "../places";
import type {
  Breakline,
  Building,
  Dimension,
  DimensionEnd,
  Door,
  Drawing,
  Drive,
  Grading,
  Lot,
  Note,
  Place,
  Point,
  Project,
  SectionLine,
  Shot,
  TestPit,
  Underlay,
} from "../schema";
import { type Thing, thingKey } from "../thing";
import { dimensionPlace, thingShape } from "../things";
import { withFollowers } from "./follow";
import { withSameParts } from "./sameParts";

export interface Motion {
  readonly place: (at: Point) => Point;
  /** Added to directions. */
  readonly turn: number;
  readonly mirrors: boolean;
}

export function shifting([dx, dy]: Point): Motion {
  return { place: ([x, y]) => [x + dx, y + dy], turn: 0, mirrors: false };
}

export function turning(about: Point, angle: number): Motion {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const [px, py] = about;
  return {
    place: ([x, y]) => [px + (x - px) * c - (y - py) * s, py + (x - px) * s + (y - py) * c],
    turn: angle,
    mirrors: false,
  };
}

/** Mirrors about the line through two places that differ. */
export function mirroring(a: Point, b: Point): Motion {
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
  const [ux, uy] = [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
  return {
    place: ([x, y]) => {
      const off = (x - a[0]) * -uy + (y - a[1]) * ux;
      return [x + 2 * off * uy, y - 2 * off * ux];
    },
    turn: 0,
    mirrors: true,
  };
}

/** The project with the things moved; what leans on them follows as after any other edit. */
export function movedThings(project: Project, things: readonly Thing[], motion: Motion): Project {
  const keys = new Set(things.map(thingKey));
  const taken = takenOf(things);
  const moves = keys.has("building");
  const lot = movedLot(project.lot, keys.has("lot"), taken, motion);
  const building = project.building && moves ? movedBuilding(project.building, motion) : project.building;
  const drives = project.grading.drives.map((drive) =>
    taken("drive", drive.id) ? movedDrive(drive, motion, moves) : drive,
  );
  const swales = project.grading.swales.map((swale) =>
    taken("swale", swale.id) ? { ...swale, line: swale.line.map(motion.place) } : swale,
  );
  const flips = moves && motion.mirrors;
  const before = flips ? withFlippedTies(project) : project;
  const moved: Project = {
    ...before,
    lot,
    building,
    grading: {
      ...project.grading,
      drives,
      swales,
      ...movedShapes(project.grading, taken, motion),
      apron: flips
        ? {
            ...project.grading.apron,
            leave: flipped(project, project.grading.apron.leave),
            sides: project.grading.apron.sides.map((side) => ({
              ...side,
              wall: flipped(project, [side.wall])[0] ?? side.wall,
            })),
          }
        : project.grading.apron,
    },
    survey: {
      ...project.survey,
      marks: project.survey.marks.map((mark) =>
        mark.at && taken("mark", mark.id) ? { ...mark, at: motion.place(mark.at) } : mark,
      ),
      breaklines: project.survey.breaklines.map((line) =>
        taken("breakline", line.id) ? movedBreakline(line, motion) : line,
      ),
      pits: movedPits(project, taken, motion),
    },
    drawing: movedDrawing(project, before.drawing, keys, motion),
  };
  return withSameParts(project, withMovedShots(project, withFollowers(project, moved), taken, motion));
}

/** Asked for each of ten thousand shots at each step of a drag: kinds that aren't among the things answer at once. */
function takenOf(things: readonly Thing[]): Taken {
  const ids = new Map<Thing["kind"], Set<string>>();
  for (const thing of things) {
    if (!("id" in thing)) continue;
    const of = ids.get(thing.kind);
    if (of) of.add(thing.id);
    else ids.set(thing.kind, new Set([thing.id]));
  }
  return (kind, id) => ids.get(kind)?.has(id) ?? false;
}

type Taken = (kind: Thing["kind"], id: string) => boolean;

function movedLot(lot: Lot, moves: boolean, taken: Taken, motion: Motion): Lot {
  const features = lot.features.map((feature) =>
    taken("feature", feature.id) ? { ...feature, points: feature.points.map(motion.place) } : feature,
  );
  if (!moves) return { ...lot, features };
  const n = lot.outline.length;
  const deed = lot.deed && {
    ...lot.deed,
    start: motion.place(lot.deed.start),
    turn: lot.deed.turn - motion.turn,
  };
  const setbacks = motion.mirrors
    ? lot.setbacks.map((setback) => ({ ...setback, line: mirroredSide(setback.line, n) }))
    : lot.setbacks;
  return { ...lot, features, outline: movedRing(lot.outline, motion), deed, setbacks };
}

/** Mirrored, corner i of a ring of n becomes this one, and that one this. */
function mirroredCorner(i: number, n: number): number {
  return i < n ? (n + 1 - i) % n : i;
}

/** As for corners: side i runs from corner i to the next. */
function mirroredSide(i: number, n: number): number {
  return i < n ? (n - i) % n : i;
}

function movedRing(ring: readonly Point[], motion: Motion): Point[] {
  const n = ring.length;
  return ring.map((_, i) => motion.place(ring[motion.mirrors ? mirroredCorner(i, n) : i] as Point));
}

function movedBuilding(building: Building, motion: Motion): Building {
  const outline = movedRing(building.outline, motion);
  if (!motion.mirrors) return { ...building, outline };
  const n = building.outline.length;
  const flip = <T extends Pick<Door, "wall" | "offset" | "width">>(opening: T): T => {
    const [a, b] = [building.outline[opening.wall], building.outline[(opening.wall + 1) % n]];
    if (!a || !b) return opening;
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
    const offset = Math.max(0, length - opening.offset - opening.width);
    return { ...opening, wall: mirroredSide(opening.wall, n), offset };
  };
  return { ...building, outline, doors: building.doors.map(flip), windows: building.windows.map(flip) };
}

/** A drive that leaves its door is no longer tied to it. */
function movedDrive(drive: Drive, motion: Motion, withBuilding: boolean): Drive {
  return { ...drive, line: drive.line.map(motion.place), door: withBuilding ? drive.door : null };
}

/** Pads fall where they fell, turned along; a mirrored wall has its lower side on the other hand. */
function movedShapes(
  { pads, berms, walls, points }: Grading,
  taken: Taken,
  motion: Motion,
): Pick<Grading, "pads" | "berms" | "walls" | "points"> {
  return {
    pads: pads.map((pad) =>
      taken("pad", pad.id)
        ? { ...pad, outline: movedRing(pad.outline, motion), towards: movedWay(pad.towards, motion) }
        : pad,
    ),
    berms: berms.map((berm) =>
      taken("berm", berm.id) ? { ...berm, line: berm.line.map(motion.place) } : berm,
    ),
    walls: walls.map((wall) =>
      taken("retaining-wall", wall.id)
        ? {
            ...wall,
            line: wall.line.map(motion.place),
            lowSide: motion.mirrors ? (wall.lowSide === "left" ? "right" : "left") : wall.lowSide,
          }
        : wall,
    ),
    points: points.map((point) =>
      taken("grade-point", point.id) ? { ...point, at: motion.place(point.at) } : point,
    ),
  };
}

/** A direction of the plan, carried along. */
function movedWay(angle: number, motion: Motion): number {
  if (!motion.mirrors) return motion.turn === 0 ? angle : angle + motion.turn;
  const [a, b] = [motion.place([0, 0]), motion.place([Math.cos(angle), Math.sin(angle)])];
  return Math.atan2(b[1] - a[1], b[0] - a[0]);
}

function flipped(project: Project, walls: readonly number[]): number[] {
  const n = project.building?.outline.length ?? 0;
  return walls.map((wall) => mirroredSide(wall, n));
}

/** The project before its building is mirrored, with what names a corner naming the corner it becomes. */
function withFlippedTies(project: Project): Project {
  const n = project.building?.outline.length ?? 0;
  const corner = (i: number) => mirroredCorner(i, n);
  const end = (tied: DimensionEnd): DimensionEnd =>
    tied.kind === "corner" ? { ...tied, corner: corner(tied.corner) } : tied;
  return {
    ...project,
    staking: {
      ...project.staking,
      tapes: project.staking.tapes.map((tape) => ({ ...tape, from: corner(tape.from), to: corner(tape.to) })),
    },
    drawing: {
      ...project.drawing,
      dimensions: project.drawing.dimensions.map((dimension) => ({
        ...dimension,
        from: end(dimension.from),
        to: end(dimension.to),
      })),
    },
  };
}

function movedDrawing(
  project: Project,
  drawing: Drawing,
  keys: ReadonlySet<string>,
  motion: Motion,
): Drawing {
  const moved = <T extends { readonly id: string }>(
    kind: Thing["kind"],
    list: readonly T[],
    change: (item: T) => T,
  ) => list.map((item) => (keys.has(`${kind}:${item.id}`) ? change(item) : item));
  const moves = keys.has("building");
  return {
    ...drawing,
    notes: moved("note", drawing.notes, (note) => movedNote(note, motion)),
    sections: moved("section", drawing.sections, (section) => movedSection(section, motion)),
    underlays: moved("underlay", drawing.underlays, (picture) => movedPicture(picture, motion)),
    dimensions: drawing.dimensions.map((dimension) =>
      movedDimension(project, dimension, keys.has(`dimension:${dimension.id}`), moves, motion),
    ),
  };
}

/** It lies elsewhere on the ground; the heights typed for its places go along. */
function movedBreakline(line: Breakline, motion: Motion): Breakline {
  return { ...line, points: line.points.map(([x, y, z]) => [...motion.place([x, y]), z]) };
}

/** A pit that was taken along lies at the place itself, whatever it was tied to. */
function movedPits({ survey, building }: Project, taken: Taken, motion: Motion): TestPit[] {
  const place = placeResolver(survey, building?.outline ?? []);
  return survey.pits.map((pit): TestPit => {
    const at = taken("pit", pit.id) ? place(pit.place).at : null;
    if (!at) return pit;
    const [x, y] = motion.place(at);
    return { ...pit, place: { kind: "at", x, y } };
  });
}

function movedNote(note: Note, motion: Motion): Note {
  return { ...note, at: motion.place(note.at), pointsTo: note.pointsTo && motion.place(note.pointsTo) };
}

function movedSection(section: SectionLine, motion: Motion): SectionLine {
  return { ...section, line: [motion.place(section.line[0]), motion.place(section.line[1])] };
}

function movedPicture(picture: Underlay, motion: Motion): Underlay {
  return { ...picture, at: motion.place(picture.at), turn: picture.turn + motion.turn };
}

/** Ends at places go along; ends at corners stay with their corners. Mirrored as a whole it stands off to the other side. */
function movedDimension(
  project: Project,
  dimension: Dimension,
  taken: boolean,
  withBuilding: boolean,
  motion: Motion,
): Dimension {
  const moves = (end: DimensionEnd) => (end.kind === "corner" ? withBuilding : taken);
  const ends = [dimension.from, dimension.to];
  if (!ends.some(moves)) return taken ? standingOff(project, dimension, motion) : dimension;
  const put = (end: DimensionEnd): DimensionEnd => {
    if (end.kind === "corner" || !taken) return end;
    const [x, y] = motion.place([end.x, end.y]);
    return { kind: "at", x, y };
  };
  const flips = motion.mirrors && ends.every(moves);
  return {
    ...dimension,
    from: put(dimension.from),
    to: put(dimension.to),
    offset: flips ? -dimension.offset : dimension.offset,
  };
}

/** A thing by itself: a note's words leave what they point to, a dimension's line leaves its places. */
export function movedAlone(project: Project, thing: Thing, by: Point): Project | null {
  const { drawing } = project;
  const motion = shifting(by);
  if (thing.kind === "note") {
    const notes = drawing.notes.map((note) =>
      note.id === thing.id ? { ...note, at: motion.place(note.at) } : note,
    );
    return { ...project, drawing: { ...drawing, notes } };
  }
  if (thing.kind !== "dimension") return null;
  const dimensions = drawing.dimensions.map((dimension) =>
    dimension.id === thing.id ? standingOff(project, dimension, motion) : dimension,
  );
  return { ...project, drawing: { ...drawing, dimensions } };
}

/** A dimension whose places stay comes nearer to them or goes farther off. */
function standingOff(project: Project, dimension: Dimension, motion: Motion): Dimension {
  const [a, b] = [dimensionPlace(project, dimension.from), dimensionPlace(project, dimension.to)];
  const length = a && b ? Math.hypot(b[0] - a[0], b[1] - a[1]) : 0;
  if (!a || !b || length === 0 || motion.mirrors || motion.turn !== 0) return dimension;
  const [x, y] = motion.place(a);
  const left: Point = [-(b[1] - a[1]) / length, (b[0] - a[0]) / length];
  return { ...dimension, offset: dimension.offset + (x - a[0]) * left[0] + (y - a[1]) * left[1] };
}

/** Shots that were taken along: the tie that leads to the new place stays, any other becomes the place itself. */
function withMovedShots(before: Project, after: Project, taken: Taken, motion: Motion): Project {
  if (!before.survey.shots.some(({ id }) => taken("shot", id))) return after;
  const outline = after.building?.outline ?? [];
  const resolve = placeResolver(after.survey, outline);
  const shots = after.survey.shots.map((shot): Shot => {
    if (!taken("shot", shot.id)) return shot;
    const was = thingShape(before, { kind: "shot", id: shot.id })?.points[0];
    const original = before.survey.shots.find(({ id }) => id === shot.id);
    if (!was || !original) return shot;
    const [x, y] = motion.place(was);
    const tie = motion.mirrors ? flippedTie(original.place, outline.length) : original.place;
    const at = resolve(tie).at;
    const holds = at !== null && Math.hypot(at[0] - x, at[1] - y) < 1e-6;
    return { ...shot, place: holds && tie.kind !== "at" ? tie : { kind: "at", x, y } };
  });
  return { ...after, survey: { ...after.survey, shots } };
}

function flippedTie(place: Place, corners: number): Place {
  return place.kind === "corner" ? { ...place, corner: mirroredCorner(place.corner, corners) } : place;
}
