/** A demo project, opened. */
import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { openProject, type Project } from "../../src/document";

export function demoProject(id: string): Project {
  const file = resolve(import.meta.dirname, `../../demo-projects/${id}.drysill.json`);
  const opened = openProject(readFileSync(file, "utf8"));
  if (!opened.ok) throw new Error(`${id} does not open: ${opened.problems[0]?.message}`);
  return opened.project;
}
