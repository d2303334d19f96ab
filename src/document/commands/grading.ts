/** Edits of what shapes the ground: pads, berms, retaining walls, grade points, grade breaks, sides, and their order. */
import { nearestOnRing } from "../../geometry";
import {
  type ApronSide,
  apronSchema,
  type Berm,
  bermSchema,
  type Drive,
  type GradeBreak,
  type GradePoint,
  type Grading,
  type GroundPad,
  gradePointSchema,
  groundPadSchema,
  type Point,
  type Project,
  type RetainingWall,
  retainingWallSchema,
  type Vehicle,
  vehicleSchema,
} from "../schema";
import type { Thing } from "../thing";
import { padWord } from "../things";
import { inUsualSizes } from "../usualSizes";
import { command, done, type Edit, nextId, patched, refuse, replaced } from "./command";
import { changeDrive } from "./site";

function withGrading(project: Project, change: Partial<Grading>): Project {
  return { ...project, grading: { ...project.grading, ...change } };
}

/** "berm", "berm 2": the next name of its kind. */
function nextName(word: string, list: readonly { readonly name: string }[]): string {
  const taken = new Set(list.map(({ name }) => name));
  let name = word;
  for (let n = 2; taken.has(name); n++) name = `${word} ${n}`;
  return name;
}

export const addPad = command(
  "pad.add",
  (
    project,
    args: { outline: readonly Point[]; use?: GroundPad["use"]; towards?: number | undefined },
  ): Edit => {
    if (args.outline.length < 3) return refuse("A pad needs at least three corners.");
    const { pads } = project.grading;
    const use = args.use ?? "parking";
    const id = nextId("q", pads);
    const word = padWord(use);
    const pad = groundPadSchema.safeParse({
      id,
      use,
      name: nextName(word, pads),
      outline: args.outline,
      fall: use === "terrace" ? 0 : undefined,
      towards: args.towards,
    });
    if (!pad.success) return refuse("The pad has a corner that is not a place.");
    return done(withGrading(project, { pads: [...pads, pad.data] }), `draw ${word}`, { made: id });
  },
);

export const changePad = command(
  "pad.change",
  (project, args: { id: string; patch: Partial<Omit<GroundPad, "id">> }): Edit => {
    const pad = project.grading.pads.find(({ id }) => id === args.id);
    if (!pad) return refuse("That pad is gone.");
    const next = patched<GroundPad>(groundPadSchema, pad, args.patch);
    if (!next.ok) return refuse(next.why);
    const pads = replaced(project.grading.pads, args.id, () => next.value) ?? [];
    return done(withGrading(project, { pads }), `change ${pad.name}`);
  },
);

export const removePad = command("pad.remove", (project, args: { id: string }) => {
  const pad = project.grading.pads.find(({ id }) => id === args.id);
  const pads = project.grading.pads.filter(({ id }) => id !== args.id);
  return done(withGrading(project, { pads }), `remove ${pad ? padWord(pad.use) : "pad"}`);
});

export const addBerm = command("berm.add", (project, args: { line: readonly Point[] }): Edit => {
  if (args.line.length < 2) return refuse("A berm needs at least two places.");
  const { berms } = project.grading;
  const id = nextId("e", berms);
  const berm = bermSchema.safeParse({ id, name: nextName("berm", berms), line: args.line });
  if (!berm.success) return refuse("The berm's line has a place that is not a number.");
  return done(
    withGrading(project, { berms: [...berms, inUsualSizes(berm.data, project.display)] }),
    "draw berm",
    { made: id },
  );
});

export const changeBerm = command(
  "berm.change",
  (project, args: { id: string; patch: Partial<Omit<Berm, "id">> }): Edit => {
    const berm = project.grading.berms.find(({ id }) => id === args.id);
    if (!berm) return refuse("That berm is gone.");
    const next = patched<Berm>(bermSchema, berm, args.patch);
    if (!next.ok) return refuse(next.why);
    const berms = replaced(project.grading.berms, args.id, () => next.value) ?? [];
    return done(withGrading(project, { berms }), `change ${berm.name}`);
  },
);

export const removeBerm = command("berm.remove", (project, args: { id: string }) =>
  done(
    withGrading(project, { berms: project.grading.berms.filter(({ id }) => id !== args.id) }),
    "remove berm",
  ),
);

export const addRetainingWall = command(
  "retainingWall.add",
  (
    project,
    args: {
      line: readonly Point[];
      lowSide?: RetainingWall["lowSide"] | undefined;
      holds?: RetainingWall["holds"] | undefined;
    },
  ): Edit => {
    if (args.line.length < 2) return refuse("A retaining wall needs at least two places.");
    const { walls } = project.grading;
    const id = nextId("r", walls);
    const wall = retainingWallSchema.safeParse({
      id,
      name: nextName("retaining wall", walls),
      line: args.line,
      lowSide: args.lowSide ?? awayFromFill(project, args.line),
      holds: args.holds,
    });
    if (!wall.success) return refuse("The wall's line has a place that is not a number.");
    return done(
      withGrading(project, { walls: [...walls, inUsualSizes(wall.data, project.display)] }),
      "draw retaining wall",
      { made: id },
    );
  },
);

/** A wall mostly holds the fill of the building or of a pad, the nearest one: its lower side is the one away from it. */
function awayFromFill({ building, grading }: Project, line: readonly Point[]): RetainingWall["lowSide"] {
  const [a, b] = [line[0] as Point, line[line.length - 1] as Point];
  const [x0, y0] = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
  const outlines = [building?.outline ?? [], ...grading.pads.map((pad) => pad.outline)];
  const [nearest] = outlines
    .filter((outline) => outline.length > 0)
    .map((outline) => ({ outline, away: nearestOnRing(outline, x0, y0).distance }))
    .sort((one, other) => one.away - other.away);
  if (!nearest) return "right";
  const across = nearest.outline.reduce(
    (sum, [x, y]) => sum + (b[0] - a[0]) * (y - a[1]) - (b[1] - a[1]) * (x - a[0]),
    0,
  );
  return across > 0 ? "right" : "left";
}

export const changeRetainingWall = command(
  "retainingWall.change",
  (project, args: { id: string; patch: Partial<Omit<RetainingWall, "id">> }): Edit => {
    const wall = project.grading.walls.find(({ id }) => id === args.id);
    if (!wall) return refuse("That wall is gone.");
    const next = patched<RetainingWall>(retainingWallSchema, wall, args.patch);
    if (!next.ok) return refuse(next.why);
    const walls = replaced(project.grading.walls, args.id, () => next.value) ?? [];
    return done(withGrading(project, { walls }), `change ${wall.name}`);
  },
);

export const removeRetainingWall = command("retainingWall.remove", (project, args: { id: string }) =>
  done(
    withGrading(project, { walls: project.grading.walls.filter(({ id }) => id !== args.id) }),
    "remove retaining wall",
  ),
);

export const addGradePoint = command(
  "gradePoint.add",
  (project, args: { at: Point; height: number }): Edit => {
    const { points } = project.grading;
    const id = nextId("z", points);
    const point = gradePointSchema.safeParse({
      id,
      name: nextName("grade point", points),
      at: args.at,
      height: args.height,
    });
    if (!point.success) return refuse("A grade point needs a place and a height.");
    return done(withGrading(project, { points: [...points, point.data] }), "put grade point", { made: id });
  },
);

export const changeGradePoint = command(
  "gradePoint.change",
  (project, args: { id: string; patch: Partial<Omit<GradePoint, "id">> }): Edit => {
    const point = project.grading.points.find(({ id }) => id === args.id);
    if (!point) return refuse("That grade point is gone.");
    const next = patched<GradePoint>(gradePointSchema, point, args.patch);
    if (!next.ok) return refuse(next.why);
    const points = replaced(project.grading.points, args.id, () => next.value) ?? [];
    return done(withGrading(project, { points }), `change ${point.name}`);
  },
);

export const removeGradePoint = command("gradePoint.remove", (project, args: { id: string }) =>
  done(
    withGrading(project, { points: project.grading.points.filter(({ id }) => id !== args.id) }),
    "remove grade point",
  ),
);

/** A thing that shapes the ground and isn't a drive or a swale. */
export type EarthThing = Extract<Thing, { kind: "pad" | "berm" | "retaining-wall" | "grade-point" }>;

/** Puts the places of a shape anew, in their order; a grade point has one. */
export const setShapePlaces = command(
  "earth.setPlaces",
  (project, args: { thing: EarthThing; points: readonly Point[]; what: string }): Edit => {
    const { thing, what } = args;
    const points = args.points.map(([x, y]): Point => [x, y]);
    const edit = withPlaces(project, thing, points);
    return edit.ok ? { ...edit, label: what } : edit;
  },
);

function withPlaces(project: Project, { kind, id }: EarthThing, points: Point[]): Edit {
  if (kind === "pad") return changePad.run(project, { id, patch: { outline: points } });
  if (kind === "berm") return changeBerm.run(project, { id, patch: { line: points } });
  if (kind === "retaining-wall") return changeRetainingWall.run(project, { id, patch: { line: points } });
  const [at] = points;
  return at ? changeGradePoint.run(project, { id, patch: { at } }) : refuse("A grade point needs a place.");
}

export function renameShape(project: Project, { kind, id }: EarthThing, name: string): Edit {
  if (kind === "pad") return changePad.run(project, { id, patch: { name } });
  if (kind === "berm") return changeBerm.run(project, { id, patch: { name } });
  if (kind === "retaining-wall") return changeRetainingWall.run(project, { id, patch: { name } });
  return changeGradePoint.run(project, { id, patch: { name } });
}

export function removeShape(project: Project, { kind, id }: EarthThing): Edit {
  if (kind === "pad") return removePad.run(project, { id });
  if (kind === "berm") return removeBerm.run(project, { id });
  if (kind === "retaining-wall") return removeRetainingWall.run(project, { id });
  return removeGradePoint.run(project, { id });
}

/** A grade break at a distance from the road. */
export const addGradeBreak = command(
  "drive.addBreak",
  (project, args: { id: string; at: number; height: number | null; curve?: number }): Edit => {
    const drive = driveOf(project, args.id);
    if (!drive) return refuse("That drive is gone.");
    const breaks = [...drive.breaks, { at: args.at, height: args.height, curve: args.curve ?? 0 }];
    return changeDrive.run(project, { id: args.id, patch: { breaks }, what: "put a grade break" });
  },
);

export const changeGradeBreak = command(
  "drive.changeBreak",
  (project, args: { id: string; index: number; patch: Partial<GradeBreak> }): Edit => {
    const drive = driveOf(project, args.id);
    if (!drive?.breaks[args.index]) return refuse("That grade break is gone.");
    const breaks = drive.breaks.map((one, i) => (i === args.index ? { ...one, ...args.patch } : one));
    const edit = changeDrive.run(project, { id: args.id, patch: { breaks }, what: "move a grade break" });
    return edit;
  },
);

export const removeGradeBreak = command(
  "drive.removeBreak",
  (project, args: { id: string; index: number }): Edit => {
    const drive = driveOf(project, args.id);
    if (!drive?.breaks[args.index]) return refuse("That grade break is gone.");
    const breaks = drive.breaks.filter((_, i) => i !== args.index);
    return changeDrive.run(project, { id: args.id, patch: { breaks }, what: "remove a grade break" });
  },
);

function driveOf({ grading }: Project, id: string): Drive | undefined {
  return grading.drives.find((drive) => drive.id === id);
}

/** Figures of one side of the apron; null goes back to those of all sides. */
export const changeApronSide = command(
  "grading.changeSide",
  (project, args: { wall: number; patch: Partial<Omit<ApronSide, "wall">> }): Edit => {
    const { apron } = project.grading;
    const none: ApronSide = {
      wall: args.wall,
      showing: null,
      fall: null,
      width: null,
      fill: null,
      cut: null,
    };
    const before = apron.sides.find(({ wall }) => wall === args.wall) ?? none;
    const side = { ...before, ...args.patch };
    const own = [side.showing, side.fall, side.width, side.fill, side.cut].some((figure) => figure !== null);
    const others = apron.sides.filter(({ wall }) => wall !== args.wall);
    const sides = own ? [...others, side].sort((a, b) => a.wall - b.wall) : others;
    const next = patched<Grading["apron"]>(apronSchema, apron, { sides });
    return next.ok ? done(withGrading(project, { apron: next.value }), "change a side") : refuse(next.why);
  },
);

export const changeVehicle = command(
  "grading.changeVehicle",
  (project, args: { patch: Partial<Vehicle> }) => {
    const next = patched<Vehicle>(vehicleSchema, project.grading.vehicle, args.patch);
    return next.ok
      ? done(withGrading(project, { vehicle: next.value }), "change the vehicle")
      : refuse(next.why);
  },
);

/** The whole order of the acts, first to last; empty: the usual one. */
export const setGradingOrder = command("grading.setOrder", (project, args: { order: readonly string[] }) =>
  done(
    withGrading(project, { order: [...args.order] }),
    args.order.length === 0 ? "take the usual order" : "change the order",
  ),
);
