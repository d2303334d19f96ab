import { readJson, writeJson } from "./jsonFile";

const greatestLength = 10;

/** Paths of the projects opened or saved last, newest first, kept in one JSON file. */
export class RecentFiles {
  /** Told after every change. */
  onChange: () => void = () => undefined;
  readonly #file: string;
  #paths: readonly string[] = [];
  #last: Promise<void> = Promise.resolve();

  private constructor(file: string) {
    this.#file = file;
  }

  static async load(file: string): Promise<RecentFiles> {
    const recent = new RecentFiles(file);
    recent.#paths = asPaths(await readJson(file));
    return recent;
  }

  get paths(): readonly string[] {
    return this.#paths;
  }

  add(path: string): Promise<void> {
    return this.#set([path, ...this.#paths.filter((other) => other !== path)].slice(0, greatestLength));
  }

  remove(path: string): Promise<void> {
    return this.#set(this.#paths.filter((other) => other !== path));
  }

  /** The list is a convenience: where it can't be written it lasts until the program ends. */
  #set(paths: readonly string[]): Promise<void> {
    this.#paths = paths;
    this.onChange();
    this.#last = this.#last.then(() => writeJson(this.#file, this.#paths)).catch(() => undefined);
    return this.#last;
  }
}

function asPaths(value: unknown): readonly string[] {
  if (!Array.isArray(value)) return [];
  return value
    .filter((path): path is string => typeof path === "string" && path !== "")
    .slice(0, greatestLength);
}
