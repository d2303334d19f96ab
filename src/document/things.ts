/** Things of the document as a person names and finds them: which there are, what they are called, where they lie. */
import { isClosedBreakline } from "./breaklineKinds";
import { doorMiddle } from "./commands/follow";
import { isArea } from "./features";
import { placeResolver, shotPlace } from "./places";
import type { DimensionEnd, GroundPad, Point, Project, Underlay } from "./schema";
import { type Thing, thingKey } from "./thing";

type Kind = Thing["kind"];

const words: Readonly<Record<Kind, string>> = {
  building: "building",
  lot: "lot",
  door: "door",
  window: "window",
  shot: "shot",
  mark: "mark",
  drive: "drive",
  swale: "swale",
  pad: "pad",
  berm: "berm",
  "retaining-wall": "retaining wall",
  "grade-point": "grade point",
  breakline: "breakline",
  pit: "test pit",
  feature: "feature",
  note: "note",
  dimension: "dimension",
  section: "section line",
  underlay: "picture",
};

/** A kind of thing in plain words: "section line". */
export function kindWord(kind: Kind): string {
  return words[kind];
}

/** The thing in plain words: a pad by what it is for, "terrace", "parking pad". */
export function thingKindWord(project: Project, thing: Thing): string {
  const pad = thing.kind === "pad" ? project.grading.pads.find(({ id }) => id === thing.id) : undefined;
  return pad ? padWord(pad.use) : kindWord(thing.kind);
}

/** What a pad for this use is called. */
export function padWord(use: GroundPad["use"]): string {
  return use === "terrace" ? "terrace" : `${use} pad`;
}

/** All things that can be pointed at, in the order of the lists. */
export function allThings(project: Project): Thing[] {
  const { building, lot, survey, grading, drawing } = project;
  const of = <K extends Exclude<Kind, "building" | "lot">>(
    kind: K,
    list: readonly { readonly id: string }[],
  ) => list.map(({ id }) => ({ kind, id }) as Extract<Thing, { kind: K }>);
  return [
    ...(lot.outline.length > 0 ? [{ kind: "lot" } as const] : []),
    ...of("feature", lot.features),
    ...of("mark", survey.marks),
    ...of("shot", survey.shots),
    ...of("breakline", survey.breaklines),
    ...of("pit", survey.pits),
    ...(building ? [{ kind: "building" } as const] : []),
    ...of("door", building?.doors ?? []),
    ...of("window", building?.windows ?? []),
    ...of("drive", grading.drives),
    ...of("swale", grading.swales),
    ...of("pad", grading.pads),
    ...of("berm", grading.berms),
    ...of("retaining-wall", grading.walls),
    ...of("grade-point", grading.points),
    ...of("note", drawing.notes),
    ...of("dimension", drawing.dimensions),
    ...of("section", drawing.sections),
    ...of("underlay", drawing.underlays),
  ];
}

/** Is the thing still part of the project? */
export function hasThing(project: Project, thing: Thing): boolean {
  if (thing.kind === "building") return project.building !== null;
  if (thing.kind === "lot") return project.lot.outline.length > 0;
  return listOf(project, thing.kind).some(({ id }) => id === thing.id);
}

function listOf(
  project: Project,
  kind: Exclude<Kind, "building" | "lot">,
): readonly { readonly id: string }[] {
  const { building, lot, survey, grading, drawing } = project;
  const lists = {
    door: building?.doors ?? [],
    window: building?.windows ?? [],
    shot: survey.shots,
    mark: survey.marks,
    drive: grading.drives,
    swale: grading.swales,
    pad: grading.pads,
    berm: grading.berms,
    "retaining-wall": grading.walls,
    "grade-point": grading.points,
    breakline: survey.breaklines,
    pit: survey.pits,
    feature: lot.features,
    note: drawing.notes,
    dimension: drawing.dimensions,
    section: drawing.sections,
    underlay: drawing.underlays,
  };
  return lists[kind];
}

/** What the thing is called: "swale", "shot NE stake", "tree". Never empty. */
export function thingName(project: Project, thing: Thing): string {
  const { building, lot, survey, grading, drawing } = project;
  const named = (list: readonly { readonly id: string; readonly name: string }[], id: string) =>
    list.find((each) => each.id === id)?.name.trim() ?? "";
  switch (thing.kind) {
    case "building":
      return building?.name.trim() || "building";
    case "lot":
      return "lot";
    case "door":
      return named(building?.doors ?? [], thing.id) || "door";
    case "window":
      return named(building?.windows ?? [], thing.id) || "window";
    case "shot":
      return `shot ${named(survey.shots, thing.id) || thing.id.replace(/^\D+/, "")}`;
    case "mark":
      return named(survey.marks, thing.id) || "mark";
    case "drive":
      return named(grading.drives, thing.id) || "drive";
    case "swale":
      return named(grading.swales, thing.id) || "swale";
    case "pad":
      return named(grading.pads, thing.id) || "pad";
    case "berm":
      return named(grading.berms, thing.id) || "berm";
    case "retaining-wall":
      return named(grading.walls, thing.id) || "retaining wall";
    case "grade-point":
      return named(grading.points, thing.id) || "grade point";
    case "breakline":
      return named(survey.breaklines, thing.id) || "breakline";
    case "pit":
      return named(survey.pits, thing.id) || "test pit";
    case "section":
      return named(drawing.sections, thing.id) || "section line";
    case "underlay":
      return named(drawing.underlays, thing.id) || "picture";
    case "dimension":
      return "dimension";
    case "note": {
      const text = drawing.notes.find(({ id }) => id === thing.id)?.text ?? "";
      return `note “${text.length > 28 ? `${text.slice(0, 27).trimEnd()}…` : text}”`;
    }
    case "feature": {
      const feature = lot.features.find(({ id }) => id === thing.id);
      if (!feature) return "feature";
      return feature.name.trim() || (feature.kind === "other" ? "feature" : feature.kind.replace("-", " "));
    }
  }
}

/** Can the thing not be changed by hand? Doors and windows are as fast as their building. */
export function isLocked(project: Project, thing: Thing): boolean {
  const { locked } = project.drawing;
  if (locked.length === 0) return false;
  const inBuilding = thing.kind === "door" || thing.kind === "window";
  return locked.includes(thingKey(thing)) || (inBuilding && locked.includes("building"));
}

export function isHidden(project: Project, thing: Thing): boolean {
  return project.drawing.hidden.includes(thingKey(thing));
}

/** What is hidden one by one and still there. */
export function hiddenThings(project: Project): Thing[] {
  if (project.drawing.hidden.length === 0) return [];
  const keys = new Set(project.drawing.hidden);
  return allThings(project).filter((thing) => keys.has(thingKey(thing)));
}

/** The line or area of a thing on the plan. */
export interface Shape {
  readonly points: readonly Point[];
  /** The last place joins the first. */
  readonly closed: boolean;
}

/** Where a thing lies, m; null where it has no place (yet). */
export function thingShape(project: Project, thing: Thing): Shape | null {
  const { building, lot, survey, grading, drawing } = project;
  switch (thing.kind) {
    case "building":
      return building && { points: building.outline, closed: true };
    case "lot":
      return lot.outline.length > 0 ? { points: lot.outline, closed: true } : null;
    case "door":
    case "window":
      return openingShape(project, thing);
    case "shot": {
      const shot = survey.shots.find(({ id }) => id === thing.id);
      return spot(shot ? shotPlace(project, shot) : null);
    }
    case "pit": {
      const pit = survey.pits.find(({ id }) => id === thing.id);
      return spot(pit ? placeResolver(survey, building?.outline ?? [])(pit.place).at : null);
    }
    case "mark":
      return spot(survey.marks.find(({ id }) => id === thing.id)?.at ?? null);
    case "drive":
      return line(grading.drives.find(({ id }) => id === thing.id)?.line);
    case "swale":
      return line(grading.swales.find(({ id }) => id === thing.id)?.line);
    case "pad": {
      const pad = grading.pads.find(({ id }) => id === thing.id);
      return pad ? { points: pad.outline, closed: true } : null;
    }
    case "berm":
      return line(grading.berms.find(({ id }) => id === thing.id)?.line);
    case "retaining-wall":
      return line(grading.walls.find(({ id }) => id === thing.id)?.line);
    case "grade-point":
      return spot(grading.points.find(({ id }) => id === thing.id)?.at ?? null);
    case "breakline": {
      const found = survey.breaklines.find(({ id }) => id === thing.id);
      const points = found?.points.map(([x, y]): Point => [x, y]);
      return found && points ? { points, closed: isClosedBreakline(found.kind) } : null;
    }
    case "feature": {
      const feature = lot.features.find(({ id }) => id === thing.id);
      return feature ? { points: feature.points, closed: isArea(feature) } : null;
    }
    case "note": {
      const note = drawing.notes.find(({ id }) => id === thing.id);
      return note ? { points: note.pointsTo ? [note.at, note.pointsTo] : [note.at], closed: false } : null;
    }
    case "dimension": {
      const dimension = drawing.dimensions.find(({ id }) => id === thing.id);
      const ends = dimension && [
        dimensionPlace(project, dimension.from),
        dimensionPlace(project, dimension.to),
      ];
      return ends?.[0] && ends[1] ? { points: [ends[0], ends[1]], closed: false } : null;
    }
    case "section":
      return line(drawing.sections.find(({ id }) => id === thing.id)?.line);
    case "underlay": {
      const picture = drawing.underlays.find(({ id }) => id === thing.id);
      return picture ? { points: pictureCorners(picture), closed: true } : null;
    }
  }
}

function spot(at: Point | null): Shape | null {
  return at && { points: [at], closed: false };
}

function line(points: readonly Point[] | undefined): Shape | null {
  return points ? { points, closed: false } : null;
}

function openingShape(project: Project, thing: { kind: "door" | "window"; id: string }): Shape | null {
  const { building } = project;
  if (!building) return null;
  const list = thing.kind === "door" ? building.doors : building.windows;
  const opening = list.find(({ id }) => id === thing.id);
  if (!opening) return null;
  const { wall, offset, width } = opening;
  const ends = [
    doorMiddle(building.outline, { wall, offset, width: 0 }),
    doorMiddle(building.outline, { wall, offset: offset + width, width: 0 }),
  ];
  return ends[0] && ends[1] ? { points: [ends[0], ends[1]], closed: false } : null;
}

/** Where an end of a dimension lies; null where its corner is gone. */
export function dimensionPlace(project: Project, end: DimensionEnd): Point | null {
  return end.kind === "at" ? [end.x, end.y] : (project.building?.outline[end.corner] ?? null);
}

function pictureCorners({ at, scale, turn, width, height }: Underlay): Point[] {
  const [c, s] = [Math.cos(turn) * scale, Math.sin(turn) * scale];
  const [w, h] = [width / 2, height / 2];
  const corner = (x: number, y: number): Point => [at[0] + x * c - y * s, at[1] + x * s + y * c];
  return [corner(-w, h), corner(w, h), corner(w, -h), corner(-w, -h)];
}
