/**
 * Pieces of the grading whose figures make no sense (a drive of one point, a side slope of 0 : 1): the document keeps
 * them as they were typed, and whoever reckons sets them aside.
 */
import type { z } from "zod";
import {
  bermSchema,
  driveSchema,
  type Grading,
  gradePointSchema,
  groundPadSchema,
  retainingWallSchema,
  swaleSchema,
} from "./schema";
import { isRun } from "./sideSlopes";

/** The lists of the grading, and what one piece of them is called. */
export const gradingLists = {
  drives: { schema: driveSchema, word: "drive" },
  swales: { schema: swaleSchema, word: "swale" },
  pads: { schema: groundPadSchema, word: "pad" },
  berms: { schema: bermSchema, word: "berm" },
  walls: { schema: retainingWallSchema, word: "retaining wall" },
  points: { schema: gradePointSchema, word: "grade point" },
} as const;

export type GradingList = keyof typeof gradingLists;
export type GradingPiece = Grading[GradingList][number];

/** What keeps a piece from being built; `field` as the document names it, within the piece. */
export type PieceFault =
  | { readonly why: "too-few-points"; readonly found: number; readonly needed: number }
  | { readonly why: "no-run"; readonly field: string; readonly found: number }
  | {
      readonly why: "too-small";
      readonly field: string;
      readonly found: number;
      readonly least: number;
      /** Is the least itself allowed? */
      readonly orIt: boolean;
    };

/** The first thing that keeps a piece from being built; null where it is sound. */
export function pieceFault(list: GradingList, piece: GradingPiece): PieceFault | null {
  const issue = gradingLists[list].schema.safeParse(piece).error?.issues[0];
  if (issue?.code !== "too_small") return null;
  const found = valueAt(piece, issue.path);
  const least = Number(issue.minimum);
  if (Array.isArray(found)) return { why: "too-few-points", found: found.length, needed: least };
  if (typeof found !== "number") return null;
  const field = issue.path.map(String).join(" ");
  if (isRun(issue.path.at(-1)) && least === 0) return { why: "no-run", field, found };
  return { why: "too-small", field, found, least, orIt: issue.inclusive === true };
}

/** Figures of the apron that the usual ones stand in for. */
export const apronFigures = ["showing", "fall", "width", "fill", "cut"] as const;

/** Can the file be opened in spite of it, since the rest goes on without that piece or figure? */
export function canBeSetAside(issue: z.core.$ZodIssue): boolean {
  if (issue.code !== "too_small" || !["number", "int", "array"].includes(issue.origin)) return false;
  const path = issue.path[0] === "options" ? issue.path.slice(2) : issue.path;
  if (path[0] !== "grading") return false;
  const [, part, second] = path;
  if (part === "slopes") return isRun(second);
  if (part === "apron")
    return apronFigures.some((figure) => figure === (second === "sides" ? path.at(-1) : second));
  return String(part) in gradingLists;
}

/**
 * Lays stand-ins that the schema takes over figures without sense.
 * @returns what puts those figures back, into the file as read and into what was parsed from it
 */
export function withStandIns(file: unknown, issues: readonly z.core.$ZodIssue[]): (parsed: unknown) => void {
  const typed = issues.map(({ path }) => ({ path, value: valueAt(file, path) }));
  for (const { path, value } of typed) put(file, path, Array.isArray(value) ? standInLine : standInNumber);
  return (parsed) => {
    for (const { path, value } of typed) {
      put(file, path, value);
      put(parsed, path, value);
    }
  };
}

const standInNumber = 1;
const standInLine = [
  [0, 0],
  [1, 0],
  [0, 1],
];

type Branch = Record<PropertyKey, unknown>;

function valueAt(value: unknown, path: readonly PropertyKey[]): unknown {
  return path.reduce((inner, step) => (inner as Branch | undefined)?.[step], value);
}

function put(into: unknown, path: readonly PropertyKey[], value: unknown): void {
  const last = path.at(-1);
  const holder = valueAt(into, path.slice(0, -1));
  if (last !== undefined) (holder as Branch)[last] = value;
}
