/**
 * Upward steps between file formats, plain JSON to plain JSON. Step i brings version i + 1 to i + 2.
 * A released step is never edited; a new one comes with a file of the old version in the tests.
 */
type Json = Record<string, unknown>;

const steps: readonly ((file: Json) => Json)[] = [];

export const newestVersion = steps.length + 1;

/** Brings a file of `version` (1 … newestVersion) up to the newest format. */
export function migrate(file: Json, version: number): Json {
  return steps.slice(version - 1).reduce((current, step) => step(current), file);
}
