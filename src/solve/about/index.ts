/**
 * About every figure of the results as JSON: its unit, the rule that it comes by, and how much of it rests on guessed ground.
 *
 * A table keyed by the figure's path, every item of a list as `[]`: `earthwork.inside.cut`, `drives[].stations[].grade`. Only
 * figures that are there have an entry.
 */
import type { Results } from "../results";
import type { Entry, Unit } from "./entry";
import { floorEntries } from "./floor";
import { foundationEntries } from "./foundation";
import { earthEntries, gradingEntries, surveyEntries } from "./ground";
import { type GuessedShare, guessedShareOf } from "./shares";
import { waterEntries } from "./water";

export interface AboutFigure {
  readonly unit: Unit;
  readonly rule: string;
  /** 0 to 1; a list where the figure's first list has a share for each item; missing: it doesn't lean on the ground. */
  readonly guessedShare?: GuessedShare;
}

const entries = [
  ...surveyEntries,
  ...earthEntries,
  ...gradingEntries,
  ...floorEntries,
  ...foundationEntries,
  ...waterEntries,
].map(([path, unit, rule]: Entry) => ({ fits: patternOf(path), unit, rule }));

/** `json`: the results as plain values. A figure that no entry fits is left out: the tests allow none. */
export function aboutFigures(json: unknown, results: Results): Record<string, AboutFigure> {
  const shares = guessedShareOf(results);
  return Object.fromEntries(
    numberPaths(json).flatMap((path): [string, AboutFigure][] => {
      const entry = entries.find(({ fits }) => fits.test(path));
      if (!entry) return [];
      const { unit, rule } = entry;
      const guessedShare = shares(path);
      return [[path, guessedShare === undefined ? { unit, rule } : { unit, rule, guessedShare }]];
    }),
  );
}

/** Paths of all numbers, each once, in the order in which they come. */
export function numberPaths(json: unknown): string[] {
  const found = new Set<string>();
  const walk = (value: unknown, path: string): void => {
    if (typeof value === "number") found.add(path);
    else if (Array.isArray(value)) for (const item of value) walk(item, `${path}[]`);
    else if (typeof value === "object" && value !== null)
      for (const [name, item] of Object.entries(value)) walk(item, path === "" ? name : `${path}.${name}`);
  };
  walk(json, "");
  return [...found];
}

/** `*`: anything but a point or a list; `**`: anything. */
function patternOf(path: string): RegExp {
  const escaped = path.replace(/[.[\]]/g, "\\$&");
  return new RegExp(`^${escaped.replace(/\*\*|\*/g, (stars) => (stars === "**" ? ".*" : "[^.[\\]]*"))}$`);
}
