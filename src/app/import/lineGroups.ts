/** The lines of a file in groups that are chosen for: what the file says they are, else by their layer or name. */
import { type BreaklineKind, breaklineWord } from "../../document";
import type { IncomingLine } from "../../files/incoming";

/** What becomes of a group of lines. */
export type LineUse = BreaklineKind | "leave out";

export interface LineGroup {
  readonly key: string;
  readonly words: string;
  readonly count: number;
  /** What it is before anybody chooses. */
  readonly usual: LineUse;
}

/** Chosen uses by the group's key. */
export type LineChoices = Readonly<Record<string, LineUse>>;

/** More layers than this are chosen for together. */
const mostGroups = 6;

const contours = "contours";
const unnamed = "lines";

/** Contours are drawn from a surface: as breaklines they would only repeat it, so they stay out unless asked for. */
export function lineGroups(lines: readonly IncomingLine[]): LineGroup[] {
  const key = keying(lines);
  const groups = new Map<string, LineGroup>();
  for (const line of lines) {
    const own = key(line);
    const count = (groups.get(own)?.count ?? 0) + 1;
    groups.set(own, { key: own, count, words: wordsOf(line, own), usual: usualOf(line) });
  }
  return [...groups.values()];
}

/** Each line that joins, with its kind; those left out are gone. Lines of one layer get numbers, to be told apart. */
export function linesToJoin(
  lines: readonly IncomingLine[],
  choices: LineChoices,
): [IncomingLine, BreaklineKind][] {
  const key = keying(lines);
  const kept = lines.flatMap((line): [IncomingLine, BreaklineKind][] => {
    const use = choices[key(line)] ?? usualOf(line);
    return use === "leave out" ? [] : [[line, use]];
  });
  const shared = new Map<string, number>();
  for (const [{ name, kind }] of kept) if (!kind) shared.set(name, (shared.get(name) ?? 0) + 1);
  const seen = new Map<string, number>();
  return kept.map(([line, kind]) => {
    if (line.kind || (shared.get(line.name) ?? 0) < 2) return [line, kind];
    const number = (seen.get(line.name) ?? 0) + 1;
    seen.set(line.name, number);
    return [{ ...line, name: `${line.name || breaklineWord(kind)}, line ${number}` }, kind];
  });
}

function keying(lines: readonly IncomingLine[]): (line: IncomingLine) => string {
  const layers = new Set(lines.filter(({ kind }) => !kind).map(({ name }) => name));
  const together = layers.size > mostGroups;
  return ({ kind, name }) =>
    kind === "contour" ? contours : kind ? `kind ${kind}` : together ? unnamed : `layer ${name}`;
}

function usualOf({ kind }: IncomingLine): LineUse {
  if (kind === "contour") return "leave out";
  return kind ?? "ridge";
}

function wordsOf({ kind, name }: IncomingLine, key: string): string {
  if (kind === "contour") return "Its contours";
  if (kind) return `Lines called ${breaklineWord(kind)}`;
  return key === unnamed || name === "" ? "Its lines" : `Lines “${name}”`;
}
