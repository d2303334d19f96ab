/** Edits of what belongs to a set-up: its rod, the beam's accuracy and error, bumps; and of grids of stakes. */
import { parseBeamAccuracy, parseLength } from "../../units";
import { stakeOrder } from "../places";
import {
  type Project,
  type Rod,
  rodSchema,
  type Setup,
  type Shot,
  type StakeGrid,
  type Survey,
  shotSchema,
  stakeGridSchema,
} from "../schema";
import { command, done, type Edit, nextId, patched, refuse, replaced } from "./command";
import { measure } from "./measure";

function withSetup(project: Project, id: string, change: (setup: Setup) => Setup, label: string): Edit {
  const setups = replaced(project.survey.setups, id, change);
  return setups
    ? done({ ...project, survey: { ...project.survey, setups } }, label)
    : refuse("That set-up is gone.");
}

/** The usual sense of each kind of rod: makers differ for cut and fill, so `reads` may be given beside it. */
const USUAL_SENSE = { plain: "down", line: "down", direct: "up", "cut-fill": "up" } as const;

export const setRod = command(
  "survey.setRod",
  (project, args: { id: string; kind?: Rod["kind"]; reads?: Rod["reads"]; offset?: string }): Edit => {
    const setup = project.survey.setups.find(({ id }) => id === args.id);
    if (!setup) return refuse("That set-up is gone.");
    const kind = args.kind ?? setup.rod.kind;
    const sense = args.kind === undefined ? setup.rod.reads : USUAL_SENSE[kind];
    const typed = args.offset?.trim() ?? "";
    const offset = typed === "" ? null : measure(typed, project, "reading");
    if (offset && !offset.ok) return refuse(offset.why);
    const kept = args.offset === undefined ? setup.rod.offset : (offset?.measure ?? null);
    const rod = rodSchema.parse({ kind, reads: args.reads ?? sense, offset: kept });
    return withSetup(project, args.id, (each) => ({ ...each, rod }), "change the rod");
  },
);

/** As on the data sheet; an empty text takes it away. */
export const setAccuracy = command("survey.setAccuracy", (project, args: { id: string; text: string }) => {
  const text = args.text.trim();
  const parsed = text === "" ? null : parseBeamAccuracy(text);
  if (parsed && !parsed.ok) return refuse(parsed.message);
  const accuracy = parsed === null ? null : { text, ratio: parsed.ratio };
  return withSetup(project, args.id, (setup) => ({ ...setup, accuracy }), "type the beam's accuracy");
});

/** Rise over run of the line of sight from a two-peg check; 0 takes the correction away. */
export const setCollimation = command(
  "survey.setCollimation",
  (project, args: { id: string; error: number }) => {
    if (!(Math.abs(args.error) <= 0.1))
      return refuse("A beam that is out by more than one in ten is no beam.");
    return withSetup(
      project,
      args.id,
      (setup) => ({ ...setup, collimation: args.error }),
      "correct the beam's error",
    );
  },
);

/** Answers where a bump began: `from` is the first row read with the beam as it is now, null where nobody knows. */
export const reportBump = command(
  "survey.reportBump",
  (project, args: { check: string; from: string | null }): Edit => {
    const { shots } = project.survey;
    const check = shots.find(({ id }) => id === args.check);
    if (check?.kind !== "check")
      return refuse("A bump is told by a second look. Choose the row that found it.");
    const from = args.from === null ? undefined : shots.find(({ id }) => id === args.from);
    if (args.from !== null && (from?.setup !== check.setup || shots.indexOf(from) > shots.indexOf(check)))
      return refuse("Choose a row of the same set-up that was read before the second look.");
    return withSetup(
      project,
      check.setup,
      (setup) => ({
        ...setup,
        bumps: [
          ...setup.bumps.filter((bump) => bump.check !== check.id),
          { check: check.id, from: args.from },
        ],
      }),
      "say when the laser was bumped",
    );
  },
);

/** Rows for second looks at shots, to be read next, in the set-up that each was read from. `made` is the first row's id. */
export const lookAgain = command("survey.lookAgain", (project, args: { shots: readonly string[] }): Edit => {
  let shots = project.survey.shots;
  const ids = new Set(args.shots);
  const looked = shots.filter(({ id }) => ids.has(id));
  if (looked.length === 0) return refuse("Those shots are gone.");
  let made: string | undefined;
  for (const { id: of, setup, name } of looked) {
    const id = nextId("s", shots);
    made ??= id;
    const again = `${name || `row ${project.survey.shots.findIndex((shot) => shot.id === of) + 1}`} again`;
    shots = [...shots, shotSchema.parse({ id, setup, name: again, kind: "check", of, reading: null })];
  }
  const survey = { ...project.survey, shots };
  return done({ ...project, survey }, "shoot again", made === undefined ? {} : { made });
});

export const removeBump = command("survey.removeBump", (project, args: { setup: string; check: string }) =>
  withSetup(
    project,
    args.setup,
    (setup) => ({ ...setup, bumps: setup.bumps.filter(({ check }) => check !== args.check) }),
    "take the bump back",
  ),
);

export const setLongSights = command("survey.setLongSights", (project, args: { on: boolean }) =>
  done(
    { ...project, survey: { ...project.survey, longSights: args.on } },
    args.on ? "correct long sights" : "leave long sights as read",
  ),
);

/** How strictly runs of levels are judged. */
export const setMisclosureClass = command(
  "survey.setMisclosureClass",
  (project, args: { id: Survey["misclosureClass"] }) =>
    done(
      { ...project, survey: { ...project.survey, misclosureClass: args.id } },
      "choose how exact the levels must be",
    ),
);

export interface NewGrid {
  readonly name?: string;
  readonly at: StakeGrid["at"];
  readonly turn?: number;
  readonly rows: number;
  readonly columns: number;
  readonly rowSpacing: string;
  readonly columnSpacing: string;
  readonly setup?: string;
}

/** Most stakes that one grid may have: more is an import. */
const MOST_STAKES = 5000;

/** Lays a grid of stakes and adds an empty row for each in the order they are walked, so that readings alone are typed. */
export const addGrid = command("survey.addGrid", (project, args: NewGrid): Edit => {
  const setup = args.setup ?? project.survey.setups.at(-1)?.id;
  if (!project.survey.setups.some(({ id }) => id === setup))
    return refuse("Add a set-up of the laser first.");
  const rowSpacing = spacing(args.rowSpacing, project);
  const columnSpacing = spacing(args.columnSpacing, project);
  if (typeof rowSpacing === "string") return refuse(rowSpacing);
  if (typeof columnSpacing === "string") return refuse(columnSpacing);
  const id = nextId("g", project.survey.grids);
  const grid = stakeGridSchema.safeParse({ ...args, id, rowSpacing, columnSpacing });
  if (!grid.success || grid.data.rows * grid.data.columns > MOST_STAKES)
    return refuse("A grid has 1 to 200 rows and columns, and at most 5,000 stakes.");
  const shots: Shot[] = [...project.survey.shots];
  const first = Number(nextId("s", shots).slice(1));
  stakeOrder(grid.data).forEach(({ row, column }, i) => {
    shots.push(
      shotSchema.parse({
        id: `s${first + i}`,
        name: `${row + 1}-${column + 1}`,
        setup,
        reading: null,
        place: { kind: "stake", grid: id, row, column },
      }),
    );
  });
  const survey = { ...project.survey, shots, grids: [...project.survey.grids, grid.data] };
  return done({ ...project, survey }, "lay a grid of stakes", { made: id });
});

export const changeGrid = command(
  "survey.changeGrid",
  (project, args: { id: string; patch: Partial<Omit<StakeGrid, "id">> }): Edit => {
    const grid = project.survey.grids.find(({ id }) => id === args.id);
    if (!grid) return refuse("That grid is gone.");
    const next = patched<StakeGrid>(stakeGridSchema, grid, args.patch);
    if (!next.ok) return refuse(next.why);
    const grids = replaced(project.survey.grids, args.id, () => next.value);
    return grids
      ? done({ ...project, survey: { ...project.survey, grids } }, "change the grid", {
          mergeKey: `grid ${args.id}`,
        })
      : refuse("That grid is gone.");
  },
);

/** Takes a grid away with its rows that are still empty; refused while one of its stakes was read. */
export const removeGrid = command("survey.removeGrid", (project, args: { id: string }): Edit => {
  const on = (shot: Shot) => shot.place.kind === "stake" && shot.place.grid === args.id;
  if (project.survey.shots.some((shot) => on(shot) && shot.reading !== null))
    return refuse("Some of its stakes have readings. Remove those rows first, or give them another place.");
  const survey = {
    ...project.survey,
    grids: project.survey.grids.filter(({ id }) => id !== args.id),
    shots: project.survey.shots.filter((shot) => !on(shot)),
  };
  return done({ ...project, survey }, "remove the grid");
});

function spacing(text: string, project: Project): StakeGrid["rowSpacing"] | string {
  const parsed = parseLength(text, project.display.length);
  if (!parsed.ok) return parsed.message;
  return parsed.m > 0
    ? { text: text.trim(), m: parsed.m }
    : "Stakes stand some way apart: type a length of more than nothing.";
}
