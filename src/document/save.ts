/** A project → the text of its file: readable JSON, with points and other short lists kept on one line. */
import type { Project } from "./schema";

export const fileEnding = ".drysill.json";

/** From so many on each item of a list is one line: nobody reads through a cloud of points, and every program does. */
const crowd = 5000;
/** Items of a crowd in one piece. */
const together = 250;

export function projectText(project: Project): string {
  return [...projectPieces(project)].join("");
}

/** The same text in pieces, each worked out when it is asked for: a million shots are written while the window goes on. */
export function* projectPieces(project: Project): Generator<string, void> {
  yield* pieces(project, "");
  yield "\n";
}

function* pieces(value: unknown, indent: string): Generator<string, void> {
  if (!holdsCrowd(value)) yield write(value, indent);
  else if (Array.isArray(value)) yield* crowdPieces(value, indent);
  else {
    const inner = `${indent}  `;
    let before = "{\n";
    for (const [key, part] of entriesOf(value as object)) {
      yield `${before}${inner}${JSON.stringify(key)}: `;
      yield* pieces(part, inner);
      before = ",\n";
    }
    yield `\n${indent}}`;
  }
}

function* crowdPieces(list: readonly unknown[], indent: string): Generator<string, void> {
  const inner = `${indent}  `;
  for (let i = 0; i < list.length; i += together) {
    const lines = list.slice(i, i + together).map((item) => inner + JSON.stringify(item));
    yield `${i === 0 ? "[" : ","}\n${lines.join(",\n")}`;
  }
  yield `\n${indent}]`;
}

/** Is there a crowd in it, in a record of a record? */
function holdsCrowd(value: unknown): boolean {
  if (Array.isArray(value)) return value.length >= crowd;
  return typeof value === "object" && value !== null && Object.values(value).some(holdsCrowd);
}

function write(value: unknown, indent: string): string {
  if (Array.isArray(value)) return writeList(value, indent);
  if (typeof value === "object" && value !== null) return writeRecord(value, indent);
  return JSON.stringify(value);
}

function entriesOf(record: object): readonly (readonly [string, unknown])[] {
  return Object.entries(record).filter(([, value]) => value !== undefined);
}

function writeRecord(record: object, indent: string): string {
  const entries = entriesOf(record);
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
