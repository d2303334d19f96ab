/** Edits of what is drawn beside the works: notes, dimensions, section lines, pictures; and locks. */
import {
  type Dimension,
  type Drawing,
  dimensionSchema,
  type Note,
  noteSchema,
  type Project,
  type SectionLine,
  sectionLineSchema,
  type Underlay,
  underlaySchema,
} from "../schema";
import { type Thing, thingKey } from "../thing";
import { thingName } from "../things";
import { command, done, type Edit, nextId, patched, refuse, replaced } from "./command";

function withDrawing(project: Project, change: Partial<Drawing>): Project {
  return { ...project, drawing: { ...project.drawing, ...change } };
}

type New<T> = Omit<T, "id">;
type Patch<T> = Partial<New<T>>;

export const addNote = command("note.add", (project, args: Pick<Note, "at" | "text"> & Patch<Note>): Edit => {
  const id = nextId("n", project.drawing.notes);
  const note = noteSchema.safeParse({ ...args, id, text: args.text.trim() });
  if (!note.success) return refuse("A note needs some words, at most 500 characters, and a place.");
  return done(withDrawing(project, { notes: [...project.drawing.notes, note.data] }), "write note", {
    made: id,
  });
});

export const changeNote = command(
  "note.change",
  (project, args: { id: string; patch: Patch<Note>; what?: string }): Edit => {
    const note = project.drawing.notes.find(({ id }) => id === args.id);
    if (!note) return refuse("That note is gone.");
    if (args.patch.text?.trim() === "") return refuse("A note needs some words. Delete takes it away.");
    const next = patched<Note>(noteSchema, note, args.patch);
    if (!next.ok) return refuse(next.why);
    const notes = replaced(project.drawing.notes, args.id, () => next.value);
    return notes
      ? done(withDrawing(project, { notes }), args.what ?? "change note")
      : refuse("That note is gone.");
  },
);

export const addDimension = command(
  "dimension.add",
  (project, args: Pick<Dimension, "from" | "to"> & Patch<Dimension>): Edit => {
    const id = nextId("i", project.drawing.dimensions);
    const dimension = dimensionSchema.safeParse({ ...args, id });
    if (!dimension.success) return refuse("A dimension needs two places.");
    const dimensions = [...project.drawing.dimensions, dimension.data];
    return done(withDrawing(project, { dimensions }), "draw dimension", { made: id });
  },
);

export const changeDimension = command(
  "dimension.change",
  (project, args: { id: string; patch: Patch<Dimension>; what?: string }): Edit => {
    const dimension = project.drawing.dimensions.find(({ id }) => id === args.id);
    if (!dimension) return refuse("That dimension is gone.");
    const next = patched<Dimension>(dimensionSchema, dimension, args.patch);
    if (!next.ok) return refuse(next.why);
    const dimensions = replaced(project.drawing.dimensions, args.id, () => next.value);
    return dimensions
      ? done(withDrawing(project, { dimensions }), args.what ?? "move dimension")
      : refuse("That dimension is gone.");
  },
);

export const addSection = command(
  "section.add",
  (project, args: Pick<SectionLine, "line"> & Patch<SectionLine>): Edit => {
    const { sections } = project.drawing;
    const [a, b] = args.line;
    if (Math.hypot(b[0] - a[0], b[1] - a[1]) < 0.01)
      return refuse("A section line needs two places that differ.");
    const id = nextId("x", sections);
    const letter = String.fromCharCode(80 + (sections.length % 10));
    const section = sectionLineSchema.safeParse({ name: `section ${letter}`, ...args, id });
    if (!section.success) return refuse("The section line has a place that is not a number.");
    return done(withDrawing(project, { sections: [...sections, section.data] }), "draw section line", {
      made: id,
    });
  },
);

export const changeSection = command(
  "section.change",
  (project, args: { id: string; patch: Patch<SectionLine>; what?: string }): Edit => {
    const section = project.drawing.sections.find(({ id }) => id === args.id);
    if (!section) return refuse("That section line is gone.");
    const next = patched<SectionLine>(sectionLineSchema, section, args.patch);
    if (!next.ok) return refuse(next.why);
    const sections = replaced(project.drawing.sections, args.id, () => next.value);
    return sections
      ? done(withDrawing(project, { sections }), args.what ?? "move section line")
      : refuse("That section line is gone.");
  },
);

export const addUnderlay = command("underlay.add", (project, args: { underlay: New<Underlay> }): Edit => {
  const id = nextId("u", project.drawing.underlays);
  const underlay = underlaySchema.safeParse({ ...args.underlay, id });
  if (!underlay.success) return refuse("That picture can't be placed: its size or its bytes can't be read.");
  const underlays = [...project.drawing.underlays, underlay.data];
  return done(withDrawing(project, { underlays }), "place picture", { made: id });
});

export const changeUnderlay = command(
  "underlay.change",
  (
    project,
    args: { id: string; patch: Omit<Patch<Underlay>, "data" | "media">; what?: string; mergeKey?: string },
  ): Edit => {
    const { underlays } = project.drawing;
    if (!underlays.some(({ id }) => id === args.id)) return refuse("That picture is gone.");
    const { scale, strength } = args.patch;
    if (scale !== undefined && !(scale > 0)) return refuse("The picture's scale must be more than nothing.");
    if (strength !== undefined && !(strength >= 0 && strength <= 1))
      return refuse("Strength goes from 0 to 1.");
    const changed = replaced(underlays, args.id, (underlay) => ({ ...underlay, ...args.patch }));
    return changed
      ? done(
          withDrawing(project, { underlays: changed }),
          args.what ?? "change picture",
          args.mergeKey ? { mergeKey: args.mergeKey } : {},
        )
      : refuse("That picture is gone.");
  },
);

/** Takes away a note, dimension, section line or picture. */
export const removeDrawn = command(
  "drawing.remove",
  (project, args: { kind: "note" | "dimension" | "section" | "underlay"; id: string }): Edit => {
    const { notes, dimensions, sections, underlays } = project.drawing;
    const others = ({ id }: { id: string }) => id !== args.id;
    const change: Readonly<Record<typeof args.kind, Partial<Drawing>>> = {
      note: { notes: notes.filter(others) },
      dimension: { dimensions: dimensions.filter(others) },
      section: { sections: sections.filter(others) },
      underlay: { underlays: underlays.filter(others) },
    };
    const word = args.kind === "section" ? "section line" : args.kind === "underlay" ? "picture" : args.kind;
    return done(withDrawing(project, change[args.kind]), `remove ${word}`);
  },
);

/** Turns the plan on screen and paper. Radians counter-clockwise, kept within one turn. */
export const turnPlan = command(
  "drawing.turn",
  (project, args: { turn: number }): Edit =>
    Number.isFinite(args.turn)
      ? done(
          withDrawing(project, { turn: Math.atan2(Math.sin(args.turn), Math.cos(args.turn)) }),
          "turn the plan",
          {
            mergeKey: "turn-plan",
          },
        )
      : refuse("The plan's turn is not a number."),
);

function toggled(list: readonly string[], things: readonly Thing[], on: boolean): string[] {
  const keys = new Set(things.map(thingKey));
  const rest = list.filter((key) => !keys.has(key));
  return on ? [...rest, ...keys] : rest;
}

/** "the well", "shot 12", "3 things": for the history. */
function namesOf(project: Project, things: readonly Thing[]): string {
  const [only] = things;
  return only && things.length === 1 ? thingName(project, only) : `${things.length} things`;
}

export const lockThings = command(
  "drawing.lock",
  (project, args: { things: readonly Thing[]; locked: boolean }): Edit =>
    done(
      withDrawing(project, { locked: toggled(project.drawing.locked, args.things, args.locked) }),
      `${args.locked ? "lock" : "unlock"} ${namesOf(project, args.things)}`,
    ),
);

export const hideThings = command(
  "drawing.hide",
  (project, args: { things: readonly Thing[]; hidden: boolean }): Edit =>
    done(
      withDrawing(project, { hidden: toggled(project.drawing.hidden, args.things, args.hidden) }),
      `${args.hidden ? "hide" : "show"} ${namesOf(project, args.things)}`,
    ),
);
