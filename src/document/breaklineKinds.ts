/** What breaklines are called, and which of them go round an area. */
import type { Breakline } from "./schema";

export type BreaklineKind = Breakline["kind"];

const words: Readonly<Record<BreaklineKind, string>> = {
  ditch: "ditch",
  ridge: "ridge",
  "bank-top": "top of bank",
  "bank-toe": "toe of bank",
  "road-edge": "road edge",
  wall: "wall",
  hole: "hole",
  edge: "edge of the ground",
};

/** A kind of breakline in plain words: "top of bank". */
export function breaklineWord(kind: BreaklineKind): string {
  return words[kind];
}

/** Does the line close onto its first place? */
export function isClosedBreakline(kind: BreaklineKind): boolean {
  return kind === "hole" || kind === "edge";
}
