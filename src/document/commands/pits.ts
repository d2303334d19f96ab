/** Edits of test pits. */
import { type Project, type TestPit, testPitSchema } from "../schema";
import { command, done, type Edit, nextId, patched, refuse, replaced } from "./command";
import { measure } from "./measure";

export const pitDepths = ["topsoil", "oldFill", "rock", "water", "depth"] as const;
export type PitDepth = (typeof pitDepths)[number];

function withPits(project: Project, pits: TestPit[], label: string, made?: string): Edit {
  return done({ ...project, survey: { ...project.survey, pits } }, label, made === undefined ? {} : { made });
}

export const addPit = command("pit.add", (project, args: Partial<Omit<TestPit, "id">>): Edit => {
  const id = nextId("p", project.survey.pits);
  const pit = testPitSchema.safeParse({ name: `pit ${project.survey.pits.length + 1}`, ...args, id });
  if (!pit.success) return refuse("A test pit needs a place on the plan.");
  return withPits(project, [...project.survey.pits, pit.data], "add a test pit", id);
});

export const changePit = command(
  "pit.change",
  (project, args: { id: string; patch: Partial<Omit<TestPit, "id">>; what?: string }): Edit => {
    const pit = project.survey.pits.find(({ id }) => id === args.id);
    if (!pit) return refuse("That test pit is gone.");
    const next = patched<TestPit>(testPitSchema, pit, args.patch);
    if (!next.ok) return refuse(next.why);
    const pits = replaced(project.survey.pits, args.id, () => next.value);
    return pits
      ? withPits(project, pits, args.what ?? "change a test pit")
      : refuse("That test pit is gone.");
  },
);

/** A depth from the ground down, as typed; an empty text takes it away. */
export const setPitDepth = command(
  "pit.setDepth",
  (project, args: { id: string; which: PitDepth; text: string }): Edit => {
    const typed = args.text.trim() === "" ? null : measure(args.text, project, "length");
    if (typed && !typed.ok) return refuse(typed.why);
    if (typed && typed.measure.m < 0)
      return refuse("Depths are measured down from the ground: type one that isn't negative.");
    const patch = { [args.which]: typed ? typed.measure : null };
    return changePit.run(project, { id: args.id, patch, what: "type a depth in a pit" });
  },
);

export const removePit = command("pit.remove", (project, args: { id: string }) =>
  withPits(
    project,
    project.survey.pits.filter(({ id }) => id !== args.id),
    "remove a test pit",
  ),
);
