/** Words after a command → files and options; what doesn't fit is an InputError in words. */
import { InputError } from "./command";

export interface ArgsShape {
  /** The files it takes, by the names that its usage line shows, in order. All must be there. */
  readonly files: readonly string[];
  /** Options with a value (`--at Q.csv` or `--at=Q.csv`), by name without dashes, and what the value is. */
  readonly values?: Readonly<Record<string, string>>;
  /** Options without a value, by name without dashes. */
  readonly flags?: readonly string[];
}

export interface Args {
  readonly files: readonly string[];
  /** Undefined where the option wasn't given. */
  value(name: string): string | undefined;
  has(flag: string): boolean;
}

export function readArgs(words: readonly string[], shape: ArgsShape): Args {
  const files: string[] = [];
  const values = new Map<string, string>();
  const flags = new Set<string>();
  for (let i = 0; i < words.length; i++) {
    const word = words[i] ?? "";
    if (!/^--?[a-z]/i.test(word)) {
      files.push(word);
      continue;
    }
    const [, name = "", joined] = /^--?([^=]+)(?:=([\s\S]*))?$/.exec(word) ?? [];
    if (shape.flags?.includes(name) && joined === undefined) {
      flags.add(name);
      continue;
    }
    const what = Object.hasOwn(shape.values ?? {}, name) ? shape.values?.[name] : undefined;
    if (what === undefined) throw new InputError(`The option ${word} isn't known here.${known(shape)}`);
    const value = joined ?? words[++i];
    if (value === undefined || value === "" || value.startsWith("--")) {
      throw new InputError(`The option --${name} stands alone. Expected ${what} after it.`);
    }
    if (values.has(name)) throw new InputError(`The option --${name} is there twice. Expected it once.`);
    values.set(name, value);
  }
  checkFiles(files, shape.files);
  return { files, value: (name) => values.get(name), has: (flag) => flags.has(flag) };
}

function checkFiles(found: readonly string[], expected: readonly string[]): void {
  const missing = expected[found.length];
  if (missing !== undefined) throw new InputError(`Expected ${missing}, found nothing.`);
  const extra = found[expected.length];
  if (extra !== undefined) {
    throw new InputError(`Expected ${expected.join(" ") || "no file"}, found "${extra}" besides.`);
  }
}

function known(shape: ArgsShape): string {
  const names = [...Object.keys(shape.values ?? {}), ...(shape.flags ?? [])];
  return names.length === 0
    ? " It takes no options."
    : ` It takes ${names.map((name) => `--${name}`).join(", ")}.`;
}
