/** Edits of marks, set-ups and shots. */

import { setupForNext } from "../nextSetup";
import { anchorsOf } from "../places";
import {
  type Anchor,
  type Mark,
  type Place,
  type Point,
  type Project,
  type Setup,
  type Shot,
  type Survey,
  setupSchema,
  shotSchema,
} from "../schema";
import { command, done, type Edit, nextId, refuse, replaced } from "./command";
import { measure } from "./measure";

export * from "./breaklines";
export * from "./instruments";
export * from "./join";
export { measure } from "./measure";
export { acceptShot, applyFix, correctReading, type FixEdit, setAside } from "./mending";
export * from "./pits";

function withSurvey(project: Project, change: Partial<Survey>): Project {
  return { ...project, survey: { ...project.survey, ...change } };
}

export const addMark = command(
  "survey.addMark",
  (project, args: { name: string; height: string; at?: Point | null }) => {
    const height = measure(args.height, project, "length");
    if (!height.ok) return refuse(height.why);
    const id = nextId("m", project.survey.marks);
    const mark: Mark = {
      id,
      name: args.name.trim() || "Mark",
      at: args.at ?? null,
      height: height.measure,
      note: "",
    };
    return done(withSurvey(project, { marks: [...project.survey.marks, mark] }), `add mark ${mark.name}`, {
      made: id,
    });
  },
);

export const changeMark = command(
  "survey.changeMark",
  (project, args: { id: string; patch: Partial<Omit<Mark, "id">> }) => {
    const before = project.survey.marks.find(({ id }) => id === args.id);
    const marks = replaced(project.survey.marks, args.id, (mark) => ({ ...mark, ...args.patch }));
    if (!before || !marks) return refuse("That mark is gone.");
    const fields = Object.keys(args.patch).join(" ");
    const label = changeOfMark(before, args.patch);
    // Two moves are two acts; typing on in one field is one.
    return done(
      withSurvey(project, { marks }),
      label,
      fields === "at" ? {} : { mergeKey: `mark ${args.id} ${fields}` },
    );
  },
);

/** What was done to a mark, as the history names it. */
function changeOfMark(before: Mark, patch: Partial<Omit<Mark, "id">>): string {
  const name = before.name && ` ${before.name}`;
  const fields = Object.keys(patch).join(" ");
  if (fields === "name") return `rename mark${name}`;
  if (fields !== "at") return `change mark${name}`;
  if (!patch.at) return `take the place of mark${name} away`;
  return `${before.at ? "move" : "place"} mark${name}`;
}

export const setMarkHeight = command(
  "survey.setMarkHeight",
  (project, args: { id: string; text: string }) => {
    const height = measure(args.text, project, "length");
    if (!height.ok) return refuse(height.why);
    const marks = replaced(project.survey.marks, args.id, (mark) => ({ ...mark, height: height.measure }));
    return marks
      ? done(withSurvey(project, { marks }), "change the mark's height")
      : refuse("That mark is gone.");
  },
);

/** Whether a shot or pit, other than those of these ids, is placed from such a point. */
function measuredFrom(
  { survey }: Project,
  from: (anchor: Anchor) => boolean,
  except: ReadonlySet<string> = new Set(),
): boolean {
  return [...survey.shots, ...survey.pits].some(
    ({ id, place }) => !except.has(id) && anchorsOf(place).some(from),
  );
}

export const removeMark = command("survey.removeMark", (project, args: { id: string }) => {
  if (project.survey.shots.some((shot) => shot.of === args.id)) {
    return refuse("Shots were read on this mark. Remove those rows first.");
  }
  if (measuredFrom(project, (anchor) => anchor.kind === "mark" && anchor.mark === args.id))
    return refuse("Places are measured from this mark. Give those another place first.");
  return done(
    withSurvey(project, { marks: project.survey.marks.filter((mark) => mark.id !== args.id) }),
    "remove mark",
  );
});

export const addSetup = command("survey.addSetup", (project, args: { name?: string }) => {
  const id = nextId("u", project.survey.setups);
  const name = args.name?.trim() || `Set-up ${project.survey.setups.length + 1}`;
  const setup = setupSchema.parse({ id, name });
  return done(withSurvey(project, { setups: [...project.survey.setups, setup] }), `add ${name}`, {
    made: id,
  });
});

/** A set-up begun in the book: with its first row, the reading that ties it to the reference mark, where there is one. */
export const beginSetup = command("survey.beginSetup", (project): Edit => {
  const added = addSetup.run(project, {});
  const [mark] = project.survey.marks;
  if (!added.ok || !mark) return added;
  const tie = addShot.run(added.project, {
    ...(added.made === undefined ? {} : { setup: added.made }),
    name: mark.name,
    kind: "mark",
    of: mark.id,
  });
  return tie.ok ? { ...tie, label: added.label } : tie;
});

export const changeSetup = command(
  "survey.changeSetup",
  (project, args: { id: string; patch: Partial<Omit<Setup, "id">> }) => {
    const setups = replaced(project.survey.setups, args.id, (setup) => ({ ...setup, ...args.patch }));
    return setups
      ? done(withSurvey(project, { setups }), "change set-up", { mergeKey: `setup ${args.id}` })
      : refuse("That set-up is gone.");
  },
);

/** An empty text takes the assumed beam height away. */
export const setAssumedBeam = command(
  "survey.setAssumedBeam",
  (project, args: { id: string; text: string }) => {
    const height = args.text.trim() === "" ? null : measure(args.text, project, "length");
    if (height && !height.ok) return refuse(height.why);
    const setups = replaced(project.survey.setups, args.id, (setup) => ({
      ...setup,
      assumedBeam: height ? height.measure : null,
    }));
    return setups
      ? done(withSurvey(project, { setups }), "set the beam's height")
      : refuse("That set-up is gone.");
  },
);

export const removeSetup = command("survey.removeSetup", (project, args: { id: string }) => {
  if (project.survey.shots.some((shot) => shot.setup === args.id))
    return refuse("This set-up still has shots. Move or remove them first.");
  return done(
    withSurvey(project, { setups: project.survey.setups.filter((setup) => setup.id !== args.id) }),
    "remove set-up",
  );
});

export interface NewShot {
  readonly setup?: string;
  readonly name?: string;
  readonly reading?: string;
  readonly kind?: Shot["kind"];
  readonly of?: string | null;
  readonly place?: Place;
}

/** Adds a row to the level book; without a set-up it takes the last one, and makes the first where there is none. */
export const addShot = command("survey.addShot", (project, args: NewShot): Edit => {
  const ready = project.survey.setups.length > 0 ? project : withFirstSetup(project);
  const setup = args.setup ?? setupForNext(ready.survey);
  if (setup === null || !ready.survey.setups.some(({ id }) => id === setup))
    return refuse("That set-up is gone.");
  const reading =
    args.reading === undefined || args.reading.trim() === ""
      ? null
      : measure(args.reading, project, "reading");
  if (reading && !reading.ok) return refuse(reading.why);
  const id = nextId("s", ready.survey.shots);
  const shot: Shot = {
    ...shotSchema.parse({ id, setup, reading: null }),
    name: args.name?.trim() ?? "",
    reading: reading ? reading.measure : null,
    kind: args.kind ?? "ground",
    of: args.of ?? null,
    place: args.place ?? { kind: "none" },
  };
  return done(
    withSurvey(ready, { shots: [...ready.survey.shots, shot] }),
    `add shot${shot.name ? ` ${shot.name}` : ""}`,
    { made: id },
  );
});

function withFirstSetup(project: Project): Project {
  const made = addSetup.run(project, {});
  return made.ok ? made.project : project;
}

export const changeShot = command(
  "survey.changeShot",
  (project, args: { id: string; patch: Partial<Omit<Shot, "id" | "reading">>; what?: string }) => {
    const shots = replaced(project.survey.shots, args.id, (shot) => ({ ...shot, ...args.patch }));
    return shots
      ? done(withSurvey(project, { shots }), args.what ?? "change shot")
      : refuse("That shot is gone.");
  },
);

/** Sets a reading from what was typed; an empty text clears it. */
export const setReading = command("survey.setReading", (project, args: { id: string; text: string }) => {
  const reading = args.text.trim() === "" ? null : measure(args.text, project, "reading");
  if (reading && !reading.ok) return refuse(reading.why);
  const shots = replaced(project.survey.shots, args.id, (shot) => ({
    ...shot,
    reading: reading ? reading.measure : null,
    accepted: false,
  }));
  return shots ? done(withSurvey(project, { shots }), "type a reading") : refuse("That shot is gone.");
});

export const placeShot = command(
  "survey.placeShot",
  (project, args: { id: string; place: Place; mergeKey?: string }) => {
    const before = project.survey.shots.find(({ id }) => id === args.id);
    const shots = replaced(project.survey.shots, args.id, (shot) => ({ ...shot, place: args.place }));
    const hadPlace = before !== undefined && before.place.kind !== "none";
    const act = args.place.kind === "none" ? "take the place away of" : hadPlace ? "move" : "place";
    const name = before?.name && ` ${before.name}`;
    return shots
      ? done(
          withSurvey(project, { shots }),
          `${act} shot${name}`,
          args.mergeKey === undefined ? {} : { mergeKey: args.mergeKey },
        )
      : refuse("That shot is gone.");
  },
);

export const removeShots = command("survey.removeShots", (project, args: { ids: readonly string[] }) => {
  const gone = new Set(args.ids);
  const leaning = project.survey.shots.find(
    (shot) => !gone.has(shot.id) && shot.of !== null && gone.has(shot.of),
  );
  if (leaning)
    return refuse(`Shot ${leaning.name || leaning.id} hangs on one of these. Remove that one first.`);
  if (measuredFrom(project, (anchor) => anchor.kind === "shot" && gone.has(anchor.shot), gone))
    return refuse("Other places are measured from one of these. Give those another place first.");
  const shots = project.survey.shots.filter((shot) => !gone.has(shot.id));
  return done(
    withSurvey(project, { shots }),
    args.ids.length === 1 ? "remove shot" : `remove ${args.ids.length} shots`,
  );
});

/** Today's reading on the reference mark, for the set-out; an empty text takes it away. */
export const setMarkReading = command("worksheet.setMarkReading", (project, args: { text: string }) => {
  const reading = args.text.trim() === "" ? null : measure(args.text, project, "reading");
  if (reading && !reading.ok) return refuse(reading.why);
  return done(
    { ...project, worksheet: { ...project.worksheet, markReading: reading ? reading.measure : null } },
    "type today's reading on the mark",
  );
});
