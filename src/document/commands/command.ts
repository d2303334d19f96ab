/**
 * An edit: one named function for one act of a person, from project to project. It never changes its
 * input and never throws on bad arguments: it refuses, with the reason in words.
 */

import type { z } from "zod";
import type { Project } from "../schema";
import { isRun, noRun } from "../sideSlopes";
import { tooLarge } from "./tooLarge";

export type Edit =
  | {
      readonly ok: true;
      readonly project: Project;
      /** What was done, for the undo list: "move building". */
      readonly label: string;
      /** Edits in a row with the same key become one undo step. */
      readonly mergeKey?: string;
      /** Id of the thing that was made. */
      readonly made?: string;
    }
  | { readonly ok: false; readonly why: string };

export interface EditCommand<Args> {
  readonly name: string;
  run(project: Project, args: Args): Edit;
}

export function command<Args>(name: string, run: (project: Project, args: Args) => Edit): EditCommand<Args> {
  return {
    name,
    run(project, args) {
      const edit = run(project, args);
      const why = edit.ok ? tooLarge(project, edit.project) : null;
      return why === null ? edit : refuse(why);
    },
  };
}

export function refuse(why: string): Edit {
  return { ok: false, why };
}

export function done(project: Project, label: string, more: { mergeKey?: string; made?: string } = {}): Edit {
  return { ok: true, project, label, ...more };
}

/** The next free id of the form prefix + number: no clock, no chance, so edits replay the same. */
export function nextId(prefix: string, taken: readonly { readonly id: string }[]): string {
  let greatest = 0;
  for (const { id } of taken) {
    const number = id.startsWith(prefix) ? Number(id.slice(prefix.length)) : Number.NaN;
    if (Number.isInteger(number) && number > greatest) greatest = number;
  }
  return `${prefix}${greatest + 1}`;
}

/**
 * `value` with `patch` laid over it, if the schema accepts the outcome; else the reason in words. A bad figure that a
 * file brought keeps no other field from being changed.
 */
export function patched<T extends object>(
  schema: z.ZodType<T>,
  value: T,
  patch: Partial<T>,
): { readonly ok: true; readonly value: T } | { readonly ok: false; readonly why: string } {
  const next = { ...value, ...patch };
  const parsed = schema.safeParse(next);
  if (parsed.success) return { ok: true, value: next };
  const issue = parsed.error.issues.find(({ path }) => !untouched(value, next, path));
  if (!issue) return { ok: true, value: next };
  const field = issue.path
    .map((part) => (typeof part === "number" ? `row ${part + 1}` : String(part)))
    .join(" ");
  if (issue.code === "too_small" && isRun(issue.path.at(-1))) return { ok: false, why: noRun };
  if (issue.code === "too_small") {
    return {
      ok: false,
      why: `${spaced(field)} must be ${issue.inclusive ? "at least" : "more than"} ${issue.minimum}.`,
    };
  }
  if (issue.code === "too_big") {
    return {
      ok: false,
      why: `${spaced(field)} must be ${issue.inclusive ? "at most" : "less than"} ${issue.maximum}.`,
    };
  }
  return { ok: false, why: `${spaced(field)}: ${issue.message}.` };
}

/** Whether the figure stands as it stood before. */
function untouched(before: object, after: object, path: readonly PropertyKey[]): boolean {
  if (path.length === 0) return false;
  const at = (whole: unknown) =>
    path.reduce<unknown>((inner, step) => (inner as Record<PropertyKey, unknown> | undefined)?.[step], whole);
  return at(before) === at(after);
}

function spaced(field: string): string {
  return field.replace(/([A-Z])/g, (capital) => ` ${capital.toLowerCase()}`);
}

/** The list with the item of this id replaced, or null where there is none. */
export function replaced<T extends { readonly id: string }>(
  list: readonly T[],
  id: string,
  change: (item: T) => T,
): T[] | null {
  const index = list.findIndex((item) => item.id === id);
  const item = list[index];
  if (item === undefined) return null;
  const copy = list.slice();
  copy[index] = change(item);
  return copy;
}
