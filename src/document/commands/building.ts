/** Edits of the building: its outline, place, floor, foundation and doors. */
import { type Building, buildingSchema, type Door, doorSchema, type Point, type Project } from "../schema";
import { inUsualSizes } from "../usualSizes";
import { command, done, type Edit, nextId, patched, refuse, replaced } from "./command";
import { withFollowers } from "./follow";
import { openingsOverlap } from "./openings";
import { distance, outlineFault } from "./outline";

export { changeFoundation, chooseFoundation } from "./foundation";
export { type PullOutArgs, pulledOutline, pullOut } from "./pullOut";

const noBuilding = "There is no building yet. Draw its outline first.";

function withBuilding(project: Project, change: Partial<Building>): Project {
  if (!project.building) return project;
  return withFollowers(project, { ...project, building: { ...project.building, ...change } });
}

/** A rectangle's corners from its low-left corner, sides and turn: A top-left, then clockwise. */
export function rectangleOutline(at: Point, width: number, depth: number, turn = 0): Point[] {
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  const corner = (x: number, y: number): Point => [at[0] + x * c - y * s, at[1] + x * s + y * c];
  return [corner(0, depth), corner(width, depth), corner(width, 0), corner(0, 0)];
}

/** Draws the building, or gives it a new outline. `floor` is used for a new one. */
export const drawBuilding = command(
  "building.draw",
  (project, args: { outline: readonly Point[]; floor: number }): Edit => {
    const fault = outlineFault(args.outline);
    if (fault) return refuse(fault);
    const outline = args.outline.map(([x, y]): Point => [x, y]);
    if (project.building) return done(withBuilding(project, { outline }), "redraw building");
    const building = buildingSchema.parse({ outline, floor: args.floor });
    const foundation = inUsualSizes(building.foundation, project.display);
    return done({ ...project, building: { ...building, foundation } }, "draw building");
  },
);

export const setOutline = command(
  "building.setOutline",
  (project, args: { outline: readonly Point[]; what?: string }): Edit => {
    const fault = outlineFault(args.outline);
    if (fault) return refuse(fault);
    if (!project.building) return refuse(noBuilding);
    const { outline: before, doors, windows } = project.building;
    const tooWide = [...doors, ...windows].find(
      ({ wall, width }) => wall < args.outline.length && width > wallLength(args.outline, wall) + 1e-9,
    );
    if (tooWide)
      return refuse(
        `${quoted(tooWide.name)} wouldn't fit in its wall any more. Make it narrower, move it to another wall or take it out first.`,
      );
    return done(
      withBuilding(project, {
        outline: args.outline.map(([x, y]): Point => [x, y]),
        doors: openingsOn(doors, before, args.outline),
        windows: openingsOn(windows, before, args.outline),
      }),
      args.what ?? "change outline",
    );
  },
);

const quoted = (name: string): string => `“${name}”`;

/**
 * Doors and windows keep their wall, and on it the place where they stand on the ground: a wall that is lengthened at one end
 * leaves them. One that no longer fits there is slid to the wall's end; one whose whole wall moves goes along.
 */
function openingsOn<Opening extends Pick<Door, "wall" | "offset" | "width">>(
  openings: readonly Opening[],
  before: readonly Point[],
  outline: readonly Point[],
): Opening[] {
  return openings
    .filter((opening) => opening.wall < outline.length)
    .map((opening) => {
      const length = wallLength(outline, opening.wall);
      const offset =
        before.length === outline.length ? offsetOnGround(opening, before, outline) : opening.offset;
      return { ...opening, offset: Math.max(0, Math.min(offset, length - opening.width)) };
    });
}

/** Distance along its new wall of the place where an opening began. */
function offsetOnGround(
  { wall, offset }: Pick<Door, "wall" | "offset">,
  before: readonly Point[],
  after: readonly Point[],
): number {
  const ends = (outline: readonly Point[]) =>
    [outline[wall], outline[(wall + 1) % outline.length]] as readonly [Point, Point];
  const [[a, b], [c, d]] = [ends(before), ends(after)];
  const wentAlong = distance([c[0] - a[0], c[1] - a[1]], [d[0] - b[0], d[1] - b[1]]) < 1e-6;
  const was = distance(a, b);
  const is = distance(c, d);
  if (wentAlong || was === 0 || is === 0) return offset;
  const at: Point = [a[0] + ((b[0] - a[0]) * offset) / was, a[1] + ((b[1] - a[1]) * offset) / was];
  return ((at[0] - c[0]) * (d[0] - c[0]) + (at[1] - c[1]) * (d[1] - c[1])) / is;
}

export function wallLength(outline: readonly Point[], wall: number): number {
  const [a, b] = [outline[wall], outline[(wall + 1) % outline.length]];
  return a && b ? distance(a, b) : 0;
}

export const moveBuilding = command(
  "building.move",
  (project, args: { dx: number; dy: number; mergeKey?: string }) => {
    if (!project.building) return refuse(noBuilding);
    const outline = project.building.outline.map(([x, y]): Point => [x + args.dx, y + args.dy]);
    return done(
      withBuilding(project, { outline }),
      "move building",
      args.mergeKey === undefined ? {} : { mergeKey: args.mergeKey },
    );
  },
);

/** Turns the building counter-clockwise by `angle` radians about `about`. */
export const turnBuilding = command("building.turn", (project, args: { angle: number; about: Point }) => {
  if (!project.building) return refuse(noBuilding);
  const [c, s] = [Math.cos(args.angle), Math.sin(args.angle)];
  const [px, py] = args.about;
  const outline = project.building.outline.map(
    ([x, y]): Point => [px + (x - px) * c - (y - py) * s, py + (x - px) * s + (y - py) * c],
  );
  return done(withBuilding(project, { outline }), "turn building");
});

/** Gives a four-cornered building new sides, keeping corner D (the fourth) and its turn. Wall A-B is the width. */
export const resizeBuilding = command(
  "building.resize",
  (project, args: { width: number; depth: number }): Edit => {
    if (!project.building) return refuse(noBuilding);
    const [, , c, d] = project.building.outline;
    if (project.building.outline.length !== 4 || !c || !d)
      return refuse("Only a four-sided building can be resized by two sides.");
    if (!(args.width >= 0.3 && args.depth >= 0.3))
      return refuse("Each side should be at least 0.3 m (1 ft) long.");
    const turn = Math.atan2(c[1] - d[1], c[0] - d[0]);
    return setOutline.run(project, {
      outline: rectangleOutline(d, args.width, args.depth, turn),
      what: "resize building",
    });
  },
);

export const setFloor = command(
  "building.setFloor",
  (project, args: { floor: number; label?: string; mergeKey?: string }): Edit => {
    if (!project.building) return refuse(noBuilding);
    if (!Number.isFinite(args.floor)) return refuse("The floor's height is not a number.");
    if (args.floor === project.building.floor) return done(project, "floor");
    const label = args.label ?? (args.floor > project.building.floor ? "floor up" : "floor down");
    return done(
      withBuilding(project, { floor: args.floor }),
      label,
      args.mergeKey === undefined ? {} : { mergeKey: args.mergeKey },
    );
  },
);

export const changeBuilding = command(
  "building.change",
  (project, args: { patch: Partial<Pick<Building, "name" | "topOfWallAboveFloor">>; what?: string }) => {
    if (!project.building) return refuse(noBuilding);
    const next = patched<Building>(buildingSchema, project.building, args.patch);
    return next.ok
      ? done({ ...project, building: next.value }, args.what ?? "change building")
      : refuse(next.why);
  },
);

export const removeBuilding = command("building.remove", (project, _args: Record<string, never>) => {
  if (!project.building) return refuse(noBuilding);
  const drives = project.grading.drives.map((drive) => ({ ...drive, door: null }));
  const bare = { ...project, building: null, grading: { ...project.grading, drives } };
  return done(withFollowers(project, bare), "remove building");
});

export const addDoor = command(
  "building.addDoor",
  (project, args: { wall: number; offset: number; width: number; kind?: Door["kind"] }): Edit => {
    if (!project.building) return refuse(noBuilding);
    const id = nextId("d", project.building.doors);
    const kind = args.kind ?? (args.width > 1.5 ? "overhead" : "walk");
    const door = doorSchema.safeParse({ id, kind, wall: args.wall, offset: args.offset, width: args.width });
    const fault = door.success
      ? doorFault(project.building, door.data)
      : "A door needs a wall, a place on it and a width.";
    if (!door.success || fault) return refuse(fault ?? "");
    return done(withBuilding(project, { doors: [...project.building.doors, door.data] }), "add door", {
      made: id,
    });
  },
);

export const changeDoor = command(
  "building.changeDoor",
  (project, args: { id: string; patch: Partial<Omit<Door, "id">> }): Edit => {
    const { building } = project;
    const door = building?.doors.find(({ id }) => id === args.id);
    if (!building || !door) return refuse("That door is gone.");
    const next = patched<Door>(doorSchema, door, args.patch);
    if (!next.ok) return refuse(next.why);
    const fault = doorFault(building, next.value);
    if (fault) return refuse(fault);
    const doors = replaced(building.doors, args.id, () => next.value);
    return doors ? done(withBuilding(project, { doors }), "change door") : refuse("That door is gone.");
  },
);

function doorFault(building: Building, door: Door): string | null {
  if (door.wall >= building.outline.length) return "The building has no such wall.";
  const length = wallLength(building.outline, door.wall);
  if (door.offset + door.width > length + 1e-6) return "The door is wider than what is left of its wall.";
  return overlapFault(building, door);
}

function overlapFault(building: Building, door: Door): string | null {
  const was = building.doors.find(({ id }) => id === door.id);
  // A door that stays where a file had it can still be renamed.
  if (was && was.wall === door.wall && was.offset === door.offset && was.width === door.width) return null;
  const other =
    building.doors.find((each) => each.id !== door.id && openingsOverlap(each, door)) ??
    building.windows.find((each) => openingsOverlap(each, door));
  return other
    ? `The door would overlap one (${other.name}) that is in this wall already. Choose a free piece of the wall, or make it narrower.`
    : null;
}

export const removeDoor = command("building.removeDoor", (project, args: { id: string }) => {
  if (!project.building) return refuse(noBuilding);
  const doors = project.building.doors.filter(({ id }) => id !== args.id);
  const drives = project.grading.drives.map((drive) =>
    drive.door === args.id ? { ...drive, door: null } : drive,
  );
  return done(
    { ...withBuilding(project, { doors }), grading: { ...project.grading, drives } },
    "remove door",
  );
});
