/** One command of the command line. Everything from outside comes in through `Io`, so tests need no process. */
export interface Io {
  /** Reads a whole text file. Throws `InputError` with a message for people when it can't. */
  readText(path: string): string;
  readBytes(path: string): Uint8Array;
  writeBytes(path: string, bytes: Uint8Array): void;
  /** Results, on standard output. */
  out(text: string): void;
  /** Messages, on standard error. */
  say(text: string): void;
}

export interface Command {
  readonly name: string;
  /** Shown by --help: one line of usage, then what it does. */
  readonly usage: string;
  readonly about: string;
  /** Resolves to the exit code: 0 done, 2 bad input. */
  run(args: readonly string[], io: Io): Promise<number>;
}

/** Bad input, with a message in the user's words: what, where, and what was expected. Exit code 2. */
export class InputError extends Error {
  override readonly name = "InputError";
}
