/** What a person typed as a length, kept beside its value. */
import { parseLength } from "../../units";
import type { Measure, Project } from "../schema";

export function measure(
  text: string,
  project: Project,
  column: "length" | "reading",
): { ok: true; measure: Measure } | { ok: false; why: string } {
  const parsed = parseLength(text, project.display[column]);
  return parsed.ok
    ? { ok: true, measure: { text: text.trim(), m: parsed.m } }
    : { ok: false, why: parsed.message };
}
