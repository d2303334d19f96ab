/** A project → the text of its file: readable JSON, with points and other short lists kept on one line. */
import type { Project } from "./schema";

export const fileEnding = ".drysill.json";

export function projectText(project: Project): string {
  return `${write(project, "")}\n`;
}

function write(value: unknown, indent: string): string {
  if (Array.isArray(value)) return writeList(value, indent);
  if (typeof value === "object" && value !== null) return writeRecord(value, indent);
  return JSON.stringify(value);
}

function writeRecord(record: object, indent: string): string {
  const entries = Object.entries(record).filter(([, value]) => value !== undefined);
  if (entries.length === 0) return "{}";
  const flat = entries.every(([, value]) => typeof value !== "object" || value === null);
  if (flat) {
    const line = `{ ${entries.map(([key, value]) => `${JSON.stringify(key)}: ${JSON.stringify(value)}`).join(", ")} }`;
    if (line.length < 100) return line;
  }
  const inner = `${indent}  `;
  const lines = entries.map(([key, value]) => `${inner}${JSON.stringify(key)}: ${write(value, inner)}`);
  return `{\n${lines.join(",\n")}\n${indent}}`;
}

function writeList(list: readonly unknown[], indent: string): string {
  if (list.length === 0) return "[]";
  if (list.every((item) => typeof item !== "object" || item === null))
    return `[${list.map((item) => JSON.stringify(item)).join(", ")}]`;
  const inner = `${indent}  `;
  return `[\n${list.map((item) => inner + write(item, inner)).join(",\n")}\n${indent}]`;
}
