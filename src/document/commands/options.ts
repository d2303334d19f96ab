/** Edits of the options kept by name: a copy of the building and the grading, to compare and to go back to. */
import { mostOptions, type Option, optionSchema } from "../optionsSchema";
import type { Project } from "../schema";
import { command, done, type Edit, nextId, patched, refuse, replaced } from "./command";

const gone = "That option is gone.";

/** Keeps the building and the grading as they are now under a name; without one, "option 1", "option 2" … */
export const keepOption = command("option.keep", (project, { name }: { name?: string }): Edit => {
  if (project.building === null) return refuse("There is nothing to keep yet: draw the building first.");
  if (project.options.length >= mostOptions)
    return refuse(`A plan keeps ${mostOptions} options: remove one that is no longer wanted.`);
  const id = nextId("o", project.options);
  const { building, grading } = project;
  const option = optionSchema.safeParse({ id, name: name?.trim() || freeName(project), building, grading });
  if (!option.success) return refuse("An option's name has at most 60 characters.");
  if (named(project, option.data.name)) return refuse(taken(option.data.name));
  // The parts themselves, not their copies: what was reckoned for them holds for the option too.
  const kept: Option = { ...option.data, building, grading };
  return done({ ...project, options: [...project.options, kept] }, `keep “${kept.name}”`, { made: id });
});

/** Puts the building and the grading back as they were in an option. */
export const takeOption = command("option.take", (project, args: { id: string }): Edit => {
  const option = project.options.find(({ id }) => id === args.id);
  if (!option) return refuse(gone);
  const { building, grading } = option;
  return done({ ...project, building, grading }, `go back to “${option.name}”`);
});

/** Keeps the building and the grading as they are now under the name of an option that is there. */
export const renewOption = command("option.renew", (project, args: { id: string }): Edit => {
  const { building, grading } = project;
  if (building === null) return refuse("There is nothing to keep yet: draw the building first.");
  const options = replaced(project.options, args.id, (option) => ({ ...option, building, grading }));
  const name = project.options.find(({ id }) => id === args.id)?.name;
  return options ? done({ ...project, options }, `keep “${name}” as it is now`) : refuse(gone);
});

export const renameOption = command("option.rename", (project, args: { id: string; name: string }): Edit => {
  const option = project.options.find(({ id }) => id === args.id);
  if (!option) return refuse(gone);
  const name = args.name.trim();
  if (name === "") return refuse("An option needs a name.");
  if (name !== option.name && named(project, name)) return refuse(taken(name));
  const next = patched<Option>(optionSchema, option, { name });
  if (!next.ok) return refuse("An option's name has at most 60 characters.");
  const options = replaced(project.options, args.id, () => next.value);
  return options ? done({ ...project, options }, `name an option “${name}”`) : refuse(gone);
});

export const removeOption = command("option.remove", (project, args: { id: string }): Edit => {
  const option = project.options.find(({ id }) => id === args.id);
  if (!option) return refuse(gone);
  return done(
    { ...project, options: project.options.filter(({ id }) => id !== args.id) },
    `remove “${option.name}”`,
  );
});

const named = (project: Project, name: string): boolean =>
  project.options.some((option) => option.name === name);

const taken = (name: string): string => `There is an option “${name}” already: give this one another name.`;

function freeName(project: Project): string {
  for (let n = project.options.length + 1; ; n++) if (!named(project, `option ${n}`)) return `option ${n}`;
}
