/** The four laws of every edit: it does what it says, never touches its input, survives the file, and is one undo step. */
import { expect } from "vitest";
import {
  type EditCommand,
  openProject,
  type Project,
  present,
  projectText,
  record,
  startHistory,
  undo,
} from "../../src/document";

export function freezeDeep<T>(value: T): T {
  if (typeof value === "object" && value !== null && !Object.isFrozen(value)) {
    Object.freeze(value);
    for (const part of Object.values(value)) freezeDeep(part);
  }
  return value;
}

/** Runs the edit on a frozen copy, checks the laws and returns the new project. */
export function checkEdit<Args>(project: Project, command: EditCommand<Args>, args: Args): Project {
  const before = freezeDeep(project);
  const text = projectText(before);
  const edit = command.run(before, args);
  if (!edit.ok) throw new Error(`${command.name} refused: ${edit.why}`);
  expect(projectText(before)).toBe(text);

  const history = record(startHistory(before), edit.project, edit.label);
  expect(present(undo(history))).toBe(before);

  const again = openProject(projectText(edit.project));
  if (!again.ok)
    throw new Error(`${command.name} made a project that doesn't open: ${JSON.stringify(again.problems)}`);
  expect(again.project).toEqual(edit.project);

  expect(command.run(before, args)).toEqual(edit);
  return edit.project;
}

/** The reason an edit is refused with; fails when it isn't. */
export function refusal<Args>(project: Project, command: EditCommand<Args>, args: Args): string {
  const edit = command.run(freezeDeep(project), args);
  if (edit.ok) throw new Error(`${command.name} should have been refused`);
  return edit.why;
}
