/** Copies of things, each with an id of its own, beside the first ones or in another plan. */
import type { Building, Dimension, DimensionEnd, Point, Project } from "../schema";
import { type Thing, thingKey } from "../thing";
import { allThings, dimensionPlace, hasThing, kindWord, thingKindWord, thingName } from "../things";
import { wallLength } from "./building";
import { command, done, type Edit, nextId, refuse } from "./command";
import { movedThings, shifting } from "./motion";
import { openingsOverlap } from "./openings";

/** Why a kind can't be copied; those without a word can. */
const onlyOne: Partial<Record<Thing["kind"], string>> = {
  building: "A plan has one building, so it can't be copied.",
  lot: "A plan has one lot, so it can't be copied.",
  shot: "A shot is something that was read, so it can't be copied. Add a row to the level book instead.",
  pit: "A test pit is something that was dug and seen, so it can't be copied. Add another one instead.",
  mark: "A mark has a height of its own, so it can't be copied. Place another one instead.",
};

/** Why these can't be copied, in words; null where they can. */
export function copyFault(things: readonly Thing[]): string | null {
  if (things.length === 0) return "Select something first.";
  return things.map(({ kind }) => onlyOne[kind]).find((why) => why !== undefined) ?? null;
}

type Copied = Exclude<Thing, { kind: "building" | "lot" | "shot" | "mark" | "pit" }>;

interface PasteArgs {
  /** The plan in which the things were copied, as it was then. */
  readonly from: Project;
  readonly things: readonly Thing[];
  readonly by: Point;
}

/** Puts copies of things of another (or the same) project into this one, shifted. */
export const pasteThings = command(
  "arrange.paste",
  (project, { from, things, by }: PasteArgs): Edit => copied(project, from, things, by, "paste"),
);

/** Copies things of the project, shifted; a drive's copy isn't tied to the door. */
export const duplicateThings = command(
  "arrange.duplicate",
  (project, { things, by }: Omit<PasteArgs, "from">): Edit =>
    copied(project, project, things, by, "duplicate"),
);

function copied(project: Project, from: Project, things: readonly Thing[], by: Point, verb: string): Edit {
  const fault = copyFault(things);
  if (fault) return refuse(fault);
  if (!Number.isFinite(by[0]) || !Number.isFinite(by[1])) return refuse("The copy's place is not a number.");
  let now = project;
  const made: Thing[] = [];
  for (const thing of things) {
    if (!hasThing(from, thing)) return refuse(`That ${kindWord(thing.kind)} is gone.`);
    const put = withCopy(now, from, thing as Copied);
    if (typeof put === "string") return refuse(put);
    now = put.project;
    made.push({ kind: thing.kind, id: put.id } as Thing);
  }
  const loose = made.filter(({ kind }) => kind !== "door" && kind !== "window");
  const moved = loose.length > 0 ? movedThings(now, loose, shifting(by)) : now;
  const [only] = things;
  const word = only && things.length === 1 ? thingKindWord(from, only) : `${things.length} things`;
  return done(moved, `${verb} ${word}`);
}

/** Things of `after` that `before` hasn't got: what an edit made. */
export function copiedThings(before: Project, after: Project): Thing[] {
  const known = new Set(allThings(before).map(thingKey));
  return allThings(after).filter((thing) => !known.has(thingKey(thing)));
}

type Put = { readonly project: Project; readonly id: string } | string;

function withCopy(project: Project, from: Project, thing: Copied): Put {
  const { grading, drawing, lot, survey } = project;
  const find = <T extends { readonly id: string }>(list: readonly T[]) =>
    list.find(({ id }) => id === thing.id) as T;
  switch (thing.kind) {
    case "door":
    case "window":
      return withOpening(project, from, thing);
    case "drive": {
      const id = nextId("v", grading.drives);
      const drives = [...grading.drives, { ...find(from.grading.drives), id, door: null }];
      return { id, project: { ...project, grading: { ...grading, drives } } };
    }
    case "swale": {
      const id = nextId("w", grading.swales);
      const swales = [...grading.swales, { ...find(from.grading.swales), id }];
      return { id, project: { ...project, grading: { ...grading, swales } } };
    }
    case "pad": {
      const id = nextId("q", grading.pads);
      const pads = [...grading.pads, { ...find(from.grading.pads), id }];
      return { id, project: { ...project, grading: { ...grading, pads } } };
    }
    case "berm": {
      const id = nextId("e", grading.berms);
      const berms = [...grading.berms, { ...find(from.grading.berms), id }];
      return { id, project: { ...project, grading: { ...grading, berms } } };
    }
    case "retaining-wall": {
      const id = nextId("r", grading.walls);
      const walls = [...grading.walls, { ...find(from.grading.walls), id }];
      return { id, project: { ...project, grading: { ...grading, walls } } };
    }
    case "grade-point": {
      const id = nextId("z", grading.points);
      const points = [...grading.points, { ...find(from.grading.points), id }];
      return { id, project: { ...project, grading: { ...grading, points } } };
    }
    case "breakline": {
      const id = nextId("b", survey.breaklines);
      const breaklines = [...survey.breaklines, { ...find(from.survey.breaklines), id }];
      return { id, project: { ...project, survey: { ...survey, breaklines } } };
    }
    case "feature": {
      const id = nextId("f", lot.features);
      return {
        id,
        project: {
          ...project,
          lot: { ...lot, features: [...lot.features, { ...find(from.lot.features), id }] },
        },
      };
    }
    case "note": {
      const id = nextId("n", drawing.notes);
      const notes = [...drawing.notes, { ...find(from.drawing.notes), id }];
      return { id, project: { ...project, drawing: { ...drawing, notes } } };
    }
    case "dimension": {
      const id = nextId("i", drawing.dimensions);
      const dimensions = [...drawing.dimensions, freed(from, { ...find(from.drawing.dimensions), id })];
      return { id, project: { ...project, drawing: { ...drawing, dimensions } } };
    }
    case "section": {
      const id = nextId("x", drawing.sections);
      const sections = [...drawing.sections, { ...find(from.drawing.sections), id }];
      return { id, project: { ...project, drawing: { ...drawing, sections } } };
    }
    case "underlay": {
      const id = nextId("u", drawing.underlays);
      const underlays = [...drawing.underlays, { ...find(from.drawing.underlays), id }];
      return { id, project: { ...project, drawing: { ...drawing, underlays } } };
    }
  }
}

/** A dimension whose ends are places, so that a copy can lie elsewhere. */
function freed(project: Project, dimension: Dimension): Dimension {
  const free = (end: DimensionEnd): DimensionEnd => {
    const at = dimensionPlace(project, end);
    return at ? { kind: "at", x: at[0], y: at[1] } : end;
  };
  return { ...dimension, from: free(dimension.from), to: free(dimension.to) };
}

type OpeningRef = Extract<Thing, { kind: "door" | "window" }>;

/** A copied door or window takes the next free piece of its wall, after it or before it. */
function withOpening(project: Project, from: Project, thing: OpeningRef): Put {
  const { building } = project;
  if (!building) return "There is no building to put it in. Draw its outline first.";
  const list = thing.kind === "door" ? from.building?.doors : from.building?.windows;
  const opening = list?.find(({ id }) => id === thing.id);
  if (!opening) return `That ${thing.kind} is gone.`;
  const offset = freeOffset(building, opening);
  if (offset === null)
    return `There is no free piece of wall for a copy of ${thingName(from, thing)}. Choose another wall, or make room.`;
  const id = nextId(
    thing.kind === "door" ? "d" : "o",
    thing.kind === "door" ? building.doors : building.windows,
  );
  const copy = { ...opening, id, offset };
  const change: Partial<Building> =
    thing.kind === "door"
      ? { doors: [...building.doors, copy as Building["doors"][number]] }
      : { windows: [...building.windows, copy as Building["windows"][number]] };
  return { id, project: { ...project, building: { ...building, ...change } } };
}

/** Between two openings of a wall at least this is left, m. */
const leastPier = 0.3;

function freeOffset(
  building: Building,
  opening: { wall: number; offset: number; width: number },
): number | null {
  const length = wallLength(building.outline, opening.wall);
  const taken = [...building.doors, ...building.windows].filter(({ wall }) => wall === opening.wall);
  const { wall, width } = opening;
  const after = taken.map((each) => each.offset + each.width + leastPier);
  const before = taken.map((each) => each.offset - leastPier - width);
  const near = (a: number, b: number) => Math.abs(a - opening.offset) - Math.abs(b - opening.offset);
  const places = [...after.sort(near), ...before.sort(near)].filter(
    (offset) => offset >= 0 && offset + width <= length + 1e-9,
  );
  return (
    places.find((offset) => !taken.some((each) => openingsOverlap(each, { wall, offset, width }))) ?? null
  );
}
